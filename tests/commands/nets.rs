//! calibrate, as a person and as another program use it.

use super::once::ran;
use super::{backlift, refused};
use serde_json::Value;
use std::path::Path;

const NETS: &str = include_str!("../../assets/nets/junior.csv");
/// The demo's readings and player.
pub const CALIBRATE: [&str; 2] = ["calibrate", "--json"];
const JUNIOR: &str = include_str!("../../scenarios/junior.ron");

/// The junior who plays the pull alone, and the readings of it: for what does not hang on the strokes.
fn pull_alone() -> [String; 2] {
    let mix = "mix: \"drive 50 %, pull 35 %, hook 15 %\"";
    assert!(JUNIOR.contains(mix));
    let junior = JUNIOR.replace(mix, "mix: \"pull 1\"");
    let junior = junior.replace("    innings: (", "    strokes: [\"pull\"],\n\n    innings: (");
    let others = |line: &&str| line.contains(",drive,") || line.contains(",hook,");
    let readings = NETS.lines().filter(|it| !others(it)).map(|it| it.to_owned() + "\n");
    [junior, readings.collect()]
}

fn said(arguments: &[&str], folder: &Path) -> String {
    let run = backlift().current_dir(folder).args(arguments).assert().success();
    String::from_utf8(run.get_output().stdout.clone()).unwrap()
}

fn figures(arguments: &[&str], folder: &Path) -> Value {
    serde_json::from_str(&said(&[arguments, &["--json"]].concat(), folder)).unwrap()
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn calibrate_tells_what_moved_what_got_surer_and_what_it_doubts() {
    let run = ran(&CALIBRATE);
    let value = run.figures();
    assert_eq!(value["schema"], "backlift/calibrate/1");
    let sd = |pointer: &str| value.pointer(pointer).unwrap().as_f64().unwrap();
    for figure in ["fresh_m_s", "at_end_m_s", "lost_share"] {
        let [before, after] =
            ["by_tables", "with_readings"].map(|it| sd(&format!("/pull/{figure}/{it}/sd")));
        assert!(after < 0.7 * before, "{figure}: {before} before, {after} after");
    }
    assert_eq!(value["strength"].as_array().unwrap().len(), 3);
    assert_eq!(value["in_time"].as_array().unwrap().len(), 4);
    for i in 0..3 {
        let log_sd = sd(&format!("/strength/{i}/with_readings/log_sd"));
        let variance = sd(&format!("/covariance/{i}/{i}"));
        assert!((variance - log_sd * log_sd).abs() < 1e-6, "{i}: {variance} {log_sd}");
        for j in 0..3 {
            let root = |row: usize, k: usize| sd(&format!("/spread/{row}/{k}"));
            let product: f64 = (0..3).map(|k| root(i, k) * root(j, k)).sum();
            assert!((sd(&format!("/covariance/{i}/{j}")) - product).abs() < 1e-6, "{i} {j}");
        }
    }
    let doubted: Vec<&Value> =
        value["readings"].as_array().unwrap().iter().filter(|it| it["doubted"] == true).collect();
    // The demo's table has one swing counted wrong, on its ninth line.
    assert_eq!(doubted.len(), 1, "{doubted:?}");
    assert_eq!(doubted[0]["line"], 9);
    let told = &ran(&["calibrate", "--out", "calibrated.ron"]).said;
    assert!(told.contains("line 9: pull with Old faithful"), "{told}");
    assert!(told.lines().all(|it| it.chars().count() <= 80), "{told}");
    let left = std::fs::read_dir(&run.folder).unwrap().map(|it| it.unwrap().file_name());
    assert_eq!(left.collect::<Vec<_>>(), ["fitting"]);
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn a_kept_calibration_leaves_the_notes_and_changes_what_the_other_commands_say() {
    let folder = tempfile::tempdir().unwrap();
    let file = |name: &str| folder.path().join(name);
    let [junior, readings] = pull_alone();
    std::fs::write(file("nets.csv"), readings).unwrap();
    std::fs::write(file("mine.ron"), &junior).unwrap();
    let before = figures(&["swing", "mine.ron"], folder.path());
    let nets = figures(&["calibrate", "nets.csv", "mine.ron", "--keep"], folder.path());
    let once = std::fs::read_to_string(file("mine.ron")).unwrap();
    for line in junior.lines() {
        assert!(once.contains(line), "{line} is gone");
    }
    // Again: the old calibration gives way, it is not built upon.
    said(&["calibrate", "nets.csv", "mine.ron", "--keep"], folder.path());
    assert_eq!(std::fs::read_to_string(file("mine.ron")).unwrap(), once);
    let after = figures(&["swing", "mine.ron"], folder.path());
    let speed = |it: &Value| it["bat_speed_m_s"].as_f64().unwrap();
    let found = nets.pointer("/pull/fresh_m_s/with_readings/value").unwrap().as_f64().unwrap();
    assert!((speed(&after) / found - 1.0).abs() < 1e-3, "{} {found}", speed(&after));
    assert!((speed(&after) / speed(&before) - 1.0).abs() > 1e-3);
    let innings = said(&["innings", "mine.ron"], folder.path());
    let innings = innings.replace('\n', " ");
    assert!(innings.contains("tired swings in the nets"), "{innings}");
    // Another grip makes another estimate: it is said, and the work goes on.
    let other = ["weigh", "mine.ron", "--set", "player.grip_top=30 kg"];
    let run = backlift().current_dir(folder.path()).args(other).assert().success();
    let warned = String::from_utf8_lossy(&run.get_output().stderr).into_owned();
    assert!(warned.contains("when the nets were read"), "{warned}");
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn what_is_written_into_a_scenario_while_its_readings_are_fitted_is_not_lost() {
    use std::io::BufRead;
    use std::process::Stdio;
    let folder = tempfile::tempdir().unwrap();
    let file = |name: &str| folder.path().join(name);
    let [junior, readings] = pull_alone();
    std::fs::write(file("nets.csv"), readings).unwrap();
    std::fs::write(file("mine.ron"), &junior).unwrap();
    let mut run = std::process::Command::new(assert_cmd::cargo::cargo_bin!("backlift"))
        .current_dir(folder.path())
        .args(["calibrate", "nets.csv", "mine.ron", "--keep"])
        .stdout(Stdio::null())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // It has read the file when it says how far it is.
    let mut told = std::io::BufReader::new(run.stderr.take().unwrap()).lines();
    told.next().unwrap().unwrap();
    let edited = junior + "// a note made meanwhile\n";
    std::fs::write(file("mine.ron"), &edited).unwrap();
    let said: String = told.map(|it| it.unwrap() + "\n").collect();
    assert_eq!(run.wait().unwrap().code(), Some(2), "{said}");
    assert!(said.contains("mine.ron was changed while this ran"), "{said}");
    assert_eq!(std::fs::read_to_string(file("mine.ron")).unwrap(), edited);
}

#[test]
fn a_new_table_names_the_scenarios_bat_and_is_refused_until_it_is_filled_in() {
    let folder = tempfile::tempdir().unwrap();
    said(&["calibrate", "--new", "nets.csv"], folder.path());
    let text = std::fs::read_to_string(folder.path().join("nets.csv")).unwrap();
    assert!(text.contains("Old faithful,pull,,240,,,0,fastest"), "{text}");
    for it in ["Warm up", "an adult is there", "the ball is soft", "rest", "Not below 10 years"] {
        assert!(text.contains(it), "forty full swings of a child: {it:?} is missing in\n{text}");
    }
    std::fs::write(folder.path().join("mine.ron"), JUNIOR).unwrap();
    let words = refused(&["calibrate", "nets.csv", "mine.ron"], folder.path());
    assert!(words.contains("no frames, no time and no speed"), "{words}");
    assert!(refused(&["calibrate", "--new", "nets.csv"], folder.path()).contains("there already"));
}

const GOOD: &str = "bat,stroke,frames,frame_rate,time,speed,runs,asked\n\
    Old faithful,pull,110,240,,,0,fastest\n\
    Old faithful,pull,,240,0.46 s,,0,fastest\n\
    Big edges,pull,,,,42 km/h,0,fastest\n\
    Old faithful,pull,118,240,,,50,fastest\n";

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn a_swing_no_player_like_this_has_is_refused_at_its_place() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("mine.ron"), &pull_alone()[0]).unwrap();
    let slow = GOOD.replacen("110,240", "330,240", 1);
    std::fs::write(folder.path().join("nets.csv"), slow).unwrap();
    let words = refused(&["calibrate", "nets.csv", "mine.ron"], folder.path());
    for it in ["nets.csv:2:19]", "times the", "taken, not played"] {
        assert!(words.contains(it), "{it:?} is missing in\n{words}");
    }
}

#[test]
fn nonsense_is_refused_at_its_line_and_column_with_its_mend() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("mine.ron"), JUNIOR).unwrap();
    // What is replaced by what; then line:column, what is said, the mend.
    let table: &[(&str, &str, &str, &str, &str)] = &[
        ("Old faithful,pull,110", "Old fatihful,pull,110", "2:1", "no bat", "\"Old faithful\"?"),
        ("pull,110", "pul,110", "2:14", "no stroke \"pul\"", "did you mean \"pull\"?"),
        ("110,240", "110,", "2:1", "frame_rate: it is missing", "240"),
        ("110,240", "110,25 fps", "2:19", "is outside 0.08 to 1.6 s", "taken, not played"),
        ("110,240", "9,25", "2:21", "9.0 pictures long at 25", "slow motion"),
        ("110,240", "one,240", "2:19", "not a number of pictures", "above zero"),
        ("0.46 s", "0.46", "3:24", "0.46 has no unit", "with its unit"),
        ("0.46 s", "46 s", "3:24", "is outside 0.08 to 1.6 s", "top of the backlift"),
        ("42 km/h", "42 kg", "4:19", "measures", "with its unit"),
        ("42 km/h", "420 km/h", "4:19", "is outside 2 to 45 m/s", "unit"),
        (",,,42 km/h", ",90,240,,42 km/h", "4:1", "has 9 values", "quotation marks"),
        ("118,240,,,50", "118,240,,,-5", "5:29", "-5", "0 for a fresh player"),
        ("118,240,,,50", "118,240,,,many", "5:29", "not a number of runs", "runs so far"),
        ("50,fastest", "50,slowly", "5:32", "\"slowly\" is not known", "own pace"),
        ("118,240,,,50,fastest\n", "11", "5:1", "this line has 3 values", "saved only half"),
        ("118,240,,,50,fastest\n", "\"11", "5:19", "never closed", "saved only half"),
        ("frame_rate", "framerate", "1:19", "no column \"framerate\"", "\"frame_rate\"?"),
        ("time,speed", "time,time", "1:35", "two columns", "leave out one"),
        ("bat,stroke", "bat,bat", "1:5", "two columns", "leave out one"),
        ("Old faithful,pull,110,240,,,0,fastest\n", "", "1:1", "2 readings", "film a few more"),
    ];
    for (old, new, at, message, help) in table {
        assert!(GOOD.contains(old), "{old}");
        std::fs::write(folder.path().join("nets.csv"), GOOD.replacen(old, new, 1)).unwrap();
        let words = refused(&["calibrate", "nets.csv", "mine.ron"], folder.path());
        for it in [&*format!("nets.csv:{at}]"), message, help] {
            assert!(words.contains(it), "{old} → {new}: {it:?} is missing in\n{words}");
        }
    }
    let other: [(&str, &[u8], &str); 3] = [
        ("empty", b"", "the file is empty"),
        ("only notes", b"# nothing yet\n", "the file is empty"),
        ("latin", b"bat,stroke\nAndr\xe9,pull\n", "is not UTF-8"),
    ];
    for (what, bytes, message) in other {
        std::fs::write(folder.path().join("nets.csv"), bytes).unwrap();
        let words = refused(&["calibrate", "nets.csv", "mine.ron"], folder.path());
        assert!(words.contains(message), "{what}: {words}");
    }
    assert!(refused(&["calibrate", "."], folder.path()).contains("is a folder"));
    assert!(refused(&["calibrate", "net.csv", "mine.ron"], folder.path()).contains("nets.csv?"));
}

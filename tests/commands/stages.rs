//! stages, as a person and as another program use it.

use super::{backlift, refused};
use serde_json::Value;

const LOG: &str = include_str!("../../scenarios/bench-log.ron");

#[test]
fn a_new_log_is_written_read_and_kept_as_a_table_that_says_the_same() {
    let folder = tempfile::tempdir().unwrap();
    let run = |arguments: &[&str]| {
        let run = backlift().current_dir(folder.path()).arg("stages").args(arguments).assert();
        String::from_utf8(run.success().stderr("").get_output().stdout.clone()).unwrap()
    };
    assert_eq!(run(&["--new", "log.ron"]), "Wrote log.ron\n");
    let text = run(&["log.ron", "--csv", "log.csv", "--ron", "again.ron"]);
    assert!(text.ends_with("Wrote log.csv\nWrote again.ron\n"), "{text}");
    assert!(text.lines().all(|it| it.chars().count() <= 80), "{text}");
    for said in [
        "can go on now",
        "has to wait",
        "common practice, no source",
        "assumption",
        "invented",
        "Local safety codes",
    ] {
        assert!(text.replace('\n', " ").contains(said), "{said:?} is missing in\n{text}");
    }
    let figures = run(&["log.ron", "--json"]);
    assert_eq!(figures, run(&["log.csv", "--json"]));
    assert_eq!(figures, run(&["again.ron", "--json"]));
    // Nothing that is there is written over.
    for arguments in [["log.ron", "--csv", "log.csv"], ["log.ron", "--ron", "log.ron"]] {
        let words = refused(&[&["stages"][..], &arguments].concat(), folder.path());
        assert!(words.contains("is there already"), "{words}");
    }
    let both = ["stages", "log.ron", "--csv", "other.csv", "--ron", "again.ron"];
    assert!(refused(&both, folder.path()).contains("again.ron is there already"));
    assert!(!folder.path().join("other.csv").exists(), "the other was refused");
    assert_eq!(std::fs::read_to_string(folder.path().join("log.ron")).unwrap(), LOG);
    assert!(refused(&["stages", "--new", "log.ron"], folder.path()).contains("is there already"));
}

#[test]
fn the_wait_runs_down_as_the_clock_goes_on() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("log.ron"), LOG).unwrap();
    let at = |now: &[&str]| -> Value {
        let run = backlift()
            .current_dir(folder.path())
            .args(["stages", "log.ron", "--json"])
            .args(now)
            .assert()
            .success();
        serde_json::from_slice(&run.get_output().stdout).unwrap()
    };
    let last = at(&[]);
    assert_eq!(last["schema"], "backlift/stages/1");
    assert_eq!(last["now"], "2026-11-26 10:40", "that of the last weighing");
    let bat = &last["bats"][1];
    assert_eq!(bat["next"], "shaped");
    assert_eq!(bat["wait_s"], 24 * 3600);
    assert_eq!(bat["next_not_before"], "2026-11-27 10:40");
    assert_eq!(bat["not_played_before"], "2026-11-28 10:40");
    assert_eq!(at(&["--now", "2026-11-27 09:40"])["bats"][1]["wait_s"], 3600);
    assert_eq!(at(&["--now", "2026-11-27 10:40"])["bats"][1]["wait_s"], 0);
    let sd = |n: usize| last["bats"][n]["mass_sd_kg"].as_f64().unwrap();
    assert!(sd(0) < 0.5 * sd(1) && sd(1) < sd(2), "{last:#}");
    assert_eq!(last["cautions"].as_array().unwrap().len(), 4);
}

#[test]
fn wrong_logs_and_times_are_refused_with_their_place() {
    let folder = tempfile::tempdir().unwrap();
    let file = |name: &str, text: &str| std::fs::write(folder.path().join(name), text).unwrap();
    file("log.ron", LOG);
    file("heavy.ron", &LOG.replace("956 g", "1956 g"));
    file("half.ron", &LOG[..LOG.len() / 2]);
    file("empty.csv", "");
    let table: &[(&[&str], &str)] = &[
        (&["heavy.ron"], "[heavy.ron:18:66]"),
        (&["half.ron"], "not a whole log"),
        (&["empty.csv"], "the file is empty"),
        (&["lgo.ron"], "did you mean log.ron?"),
        (&["log.ron", "--now", "tomorrow"], "2026-11-26 14:00"),
        (&["."], "no bat has its own file"),
        (&[], "LOG"),
    ];
    let words = refused(&["weigh", "log.ron"], folder.path());
    assert!(words.contains("this is a log of the bench, not a scenario"), "{words}");
    for (arguments, said) in table {
        let words = refused(&[&["stages"][..], *arguments].concat(), folder.path());
        assert!(words.contains(said), "{arguments:?}: {said:?} is missing in\n{words}");
    }
}

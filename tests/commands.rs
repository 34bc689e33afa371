//! The program as a person uses it.
#![allow(missing_docs)]
#![allow(
    clippy::disallowed_methods,
    reason = "edge: tests read files and compare with the standard library"
)]

#[path = "commands/agree.rs"]
mod agree;
#[path = "commands/bats.rs"]
mod bats;
#[path = "commands/beside.rs"]
mod beside;
#[path = "commands/cut_short.rs"]
mod cut_short;
#[path = "commands/hit.rs"]
mod hit;
#[path = "commands/hostile.rs"]
mod hostile;
#[path = "commands/keys.rs"]
mod keys;
#[path = "commands/matters.rs"]
mod matters;
#[path = "commands/nets.rs"]
mod nets;
#[path = "commands/once.rs"]
mod once;
#[path = "commands/orders.rs"]
mod orders;
#[path = "commands/own_file.rs"]
mod own_file;
#[path = "commands/pairs.rs"]
mod pairs;
#[path = "commands/plane.rs"]
mod plane;
#[path = "commands/season.rs"]
mod season;
#[path = "commands/shape.rs"]
mod shape;
#[path = "commands/stages.rs"]
mod stages;
#[path = "commands/strokes.rs"]
mod strokes;
#[path = "commands/unchanged.rs"]
mod unchanged;
#[path = "commands/validate.rs"]
mod validate;

use std::path::Path;

use assert_cmd::Command;

fn backlift() -> Command {
    let mut command = Command::cargo_bin("backlift").unwrap();
    command.env("NO_COLOR", "1");
    command
}

/// The pull alone: for what does not hang on the strokes, at a third of the work.
const PULL_ALONE: [&str; 4] = ["--set", "strokes=pull", "--set", "innings.mix=pull 1"];

/// Runs with wrong input: exit 2, nothing on standard output. Returns what was said.
fn refused(arguments: &[&str], folder: &Path) -> String {
    let output =
        backlift().current_dir(folder).args(arguments).assert().code(2).get_output().clone();
    assert_eq!(String::from_utf8_lossy(&output.stdout), "", "{arguments:?}");
    String::from_utf8(output.stderr).unwrap()
}

#[test]
fn a_new_scenario_has_notes_and_is_read_back() {
    let folder = tempfile::tempdir().unwrap();
    let here = |arguments: &[&str]| backlift().current_dir(folder.path()).args(arguments).assert();
    here(&["new", "mine.ron"]).success().stdout("Wrote mine.ron\n").stderr("");
    let text = std::fs::read_to_string(folder.path().join("mine.ron")).unwrap();
    assert!(text.contains("// Age, sex and stature are enough"));
    here(&["new", "older.ron", "mine.ron", "--set", "player.age=14"]).success();
    let text = std::fs::read_to_string(folder.path().join("older.ron")).unwrap();
    assert!(text.contains("age: \"14\""), "{text}");
}

#[test]
fn the_demo_is_in_the_program_and_needs_no_file() {
    let folder = tempfile::tempdir().unwrap();
    backlift()
        .current_dir(folder.path())
        .args(["new", "copy.ron", "--set", "player.age=14"])
        .assert()
        .success();
    let text = std::fs::read_to_string(folder.path().join("copy.ron")).unwrap();
    assert!(text.contains("Hand-me-down"), "{text}");
}

#[test]
fn wrong_input_exits_with_two_says_where_and_writes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let file = |name: &str, text: &[u8]| std::fs::write(folder.path().join(name), text).unwrap();
    let good = include_str!("../scenarios/minimal.ron");
    file("unit.ron", good.replace("\"5 ft 2 in\"", "1.57").as_bytes());
    file("name.ron", good.replace("stature", "statrue").as_bytes());
    file("half.ron", &good.as_bytes()[..good.len() / 2]);
    file("latin.ron", b"(title: \"Andr\xe9\")");
    file("empty.ron", b"");
    file("huge.ron", &vec![b'x'; 2 << 20]);
    // Arguments after `new out.ron`, then what has to be said.
    let table: &[(&[&str], &[&str])] = &[
        (&["unit.ron"], &["[unit.ron:6:45]", "1.57 has no unit", "\"1.56 m\""]),
        (&["name.ron"], &["[name.ron:6:36]", "\"statrue\"", "did you mean \"stature\"?"]),
        (&["half.ron"], &["[half.ron:3:1]", "ends before", "opened here and never closed"]),
        (&["latin.ron"], &["[latin.ron:1:14]", "is not UTF-8", "save it as plain text"]),
        (&["empty.ron"], &["[empty.ron:1:1]", "the file is empty", "backlift new"]),
        (&["huge.ron"], &["huge.ron is larger than 1 MiB", "a page of text"]),
        (&["emty.ron"], &["there is no file emty.ron", "did you mean empty.ron?"]),
        (&["."], &["is a folder", "name a .ron file"]),
        (&["--set", "player.agee=3"], &["[--set:1:8]", "did you mean \"age\"?"]),
        (&["--set", "bats.0.mass=1180"], &["[--set:1:13]", "1180 has no unit", "1160 g"]),
    ];
    for (arguments, said) in table {
        let all = [&["new", "out.ron"], *arguments].concat();
        let words = refused(&all, folder.path());
        for it in *said {
            assert!(words.contains(it), "{all:?}: {it:?} is missing in\n{words}");
        }
        assert!(!folder.path().join("out.ron").exists(), "{all:?}");
    }
}

#[test]
fn an_existing_file_and_an_unwritable_place_are_left_as_they_are() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("mine.ron"), "mine").unwrap();
    assert!(refused(&["new", "mine.ron"], folder.path()).contains("is there already"));
    assert_eq!(std::fs::read(folder.path().join("mine.ron")).unwrap(), b"mine");
    assert!(refused(&["new", "no/mine.ron"], folder.path()).contains("its folder is not there"));
    assert!(refused(&["new", "mine.ron/a"], folder.path()).contains("a file stands where"));
    assert!(
        refused(&["new", "/proc/a.ron"], folder.path()).contains("nothing may be written there")
    );
}

#[test]
fn a_mistyped_command_gets_the_nearest_and_exits_with_two() {
    let folder = tempfile::tempdir().unwrap();
    assert!(refused(&["neww", "a.ron"], folder.path()).contains("'new'"));
    assert!(refused(&["new"], folder.path()).contains("<FILE>"));
}

/// Every command's help.
fn helps() -> Vec<String> {
    let said = |arguments: &[&str]| {
        let run = backlift().args(arguments).assert().success();
        String::from_utf8(run.get_output().stdout.clone()).unwrap()
    };
    let main = said(&["--help"]);
    let commands = main.split("Commands:").nth(1).unwrap().split("Options:").next().unwrap();
    let names = commands.lines().filter(|it| it.starts_with("  ") && !it.starts_with("   "));
    let names = names.filter_map(|it| it.split_whitespace().next()).filter(|it| *it != "help");
    names.map(|name| said(&[name, "--help"])).collect()
}

/// The example that a help ends with.
fn example(help: &str) -> &str {
    help.split("Example:").nth(1).unwrap_or_else(|| panic!("no example in\n{help}")).trim()
}

#[test]
fn each_commands_help_fits_a_terminal_and_ends_with_an_example() {
    let helps = helps();
    assert!(helps.len() >= 12, "{}", helps.len());
    for help in helps {
        assert!(help.lines().all(|it| it.chars().count() <= 80), "{help}");
        assert!(example(&help).starts_with("backlift "), "{help}");
    }
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn the_example_of_each_commands_help_runs() {
    for help in helps() {
        let arguments: Vec<String> = words(example(&help)).skip(1).collect();
        once::ran(&arguments);
    }
}

/// Splits a command line at spaces outside quotation marks.
fn words(line: &str) -> impl Iterator<Item = String> {
    let mut quoted = false;
    let parts = line.split(move |c: char| {
        quoted ^= c == '"';
        c == ' ' && !quoted
    });
    parts.map(|it| it.replace('"', "")).collect::<Vec<_>>().into_iter()
}

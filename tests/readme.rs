//! Every command the README shows runs, and exits as it says there.
#![allow(missing_docs)]
#![allow(clippy::disallowed_methods, reason = "edge: tests write files")]

use std::path::Path;

use assert_cmd::Command;

/// A command of a fenced `console` block: its arguments, and the exit code it is shown with.
struct Shown {
    line: String,
    arguments: Vec<String>,
    code: i32,
}

/// The commands of the README that start this program, in its order.
fn shown(readme: &str) -> Vec<Shown> {
    let mut in_console = false;
    let mut found = Vec::new();
    for line in readme.lines() {
        if let Some(kind) = line.strip_prefix("```") {
            in_console = kind == "console";
            continue;
        }
        let Some(typed) = line.strip_prefix("$ ").filter(|_| in_console) else { continue };
        let (typed, code) = match typed.split_once("# exit code ") {
            Some((typed, code)) => (typed, code.trim().parse().unwrap()),
            None => (typed, 0),
        };
        let program = ["cargo run --release -- ", "backlift "];
        if let Some(rest) = program.iter().find_map(|it| typed.strip_prefix(it)) {
            found.push(Shown { line: line.to_owned(), arguments: words(rest), code });
        }
    }
    found
}

/// Parted at spaces, but not within quotation marks.
fn words(typed: &str) -> Vec<String> {
    let mut words = vec![String::new()];
    for (n, part) in typed.split('"').enumerate() {
        let mut pieces =
            if n % 2 == 1 { vec![part] } else { part.split(' ').collect() }.into_iter();
        if let (Some(last), Some(first)) = (words.last_mut(), pieces.next()) {
            last.push_str(first);
        }
        words.extend(pieces.map(str::to_owned));
    }
    words.retain(|it| !it.is_empty());
    words
}

/// An empty folder with the scenarios in it, as a clone has them.
fn clone_with_scenarios() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let scenarios = folder.path().join("scenarios");
    std::fs::create_dir(&scenarios).unwrap();
    for entry in std::fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios")).unwrap()
    {
        let file = entry.unwrap();
        std::fs::copy(file.path(), scenarios.join(file.file_name())).unwrap();
    }
    folder
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn every_command_of_the_readme_runs_and_exits_as_shown() {
    let commands = shown(include_str!("../README.md"));
    let names = [
        "weigh",
        "swing",
        "innings",
        "compare",
        "fit",
        "trial",
        "check",
        "matters",
        "calibrate",
        "new",
        "stroke",
        "validate",
        "season",
        "stages",
    ];
    for name in names {
        assert!(commands.iter().any(|it| it.arguments[0] == name), "the README shows no {name}");
    }
    let folder = clone_with_scenarios();
    for it in commands {
        let mut command = Command::cargo_bin("backlift").unwrap();
        let run = command.current_dir(folder.path()).args(&it.arguments).output().unwrap();
        let said = String::from_utf8_lossy(&run.stderr);
        assert_eq!(run.status.code(), Some(it.code), "{}\n{said}", it.line);
    }
}

#[test]
fn every_picture_and_file_the_readme_points_at_is_there() {
    let readme = include_str!("../README.md");
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let targets: Vec<&str> = readme
        .split("](")
        .skip(1)
        .filter_map(|it| it.split(')').next())
        .filter(|it| !it.starts_with('#') && !it.contains("://"))
        .collect();
    assert!(targets.len() >= 4, "{targets:?}");
    for it in targets {
        let size = std::fs::metadata(root.join(it)).map(|file| file.len());
        assert!(size.is_ok(), "{it} is not there");
        assert!(size.unwrap() < 300_000, "{it} is too large for a README");
    }
}

#[test]
fn the_scenario_of_the_readme_is_read_without_a_question() {
    let folder = tempfile::tempdir().unwrap();
    let readme = include_str!("../README.md");
    let (_, rest) = readme.split_once("```ron\n").unwrap();
    let (scenario, _) = rest.split_once("```").unwrap();
    std::fs::write(folder.path().join("all.ron"), scenario).unwrap();
    let mut command = Command::cargo_bin("backlift").unwrap();
    command.current_dir(folder.path()).args(["weigh", "all.ron"]).assert().success().stderr("");
}

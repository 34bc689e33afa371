//! Data flows one way: a stage uses the stages before it, never one after.
#![allow(missing_docs)]
#![allow(clippy::disallowed_methods, reason = "edge: reads the sources")]

use std::path::{Path, PathBuf};

const ORDER: &[&str] = &[
    "frames",
    "uncertain",
    "source",
    "normal",
    "measurement",
    "bat",
    "player",
    "dynamics",
    "stroke",
    "swing",
    "innings",
    "ounce",
    "calibration",
    "comparison",
    "worth",
    "impact",
    "sensitivity",
    "fit",
    "units",
    "card",
    "workshop",
    "files",
    "validation",
    "questions",
    "drawing",
];

/// A word that only an edge may use, and where it belongs.
const EDGE: &[(&str, &str)] = &[
    ("bevy", "bin/studio"),
    ("egui", "bin/studio"),
    ("clap", "bin/backlift"),
    ("miette", "files"),
    ("ron::", "files"),
    ("serde", "files"),
    ("std::fs", "files"),
    ("std::env", "bin"),
    ("std::time", "bin"),
    ("println!", "bin"),
    ("indicatif", "bin/backlift"),
    ("files::save", "bin"),
];

/// Names under which anything could be hidden.
const VAGUE: &[&str] = &["util", "common", "misc", "manager", "helper"];

fn rust_files(folder: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            files.extend(rust_files(&path));
        } else if path.extension().is_some_and(|it| it == "rs") {
            files.push(path);
        }
    }
    files.sort();
    files
}

fn rank(name: &str) -> Option<usize> {
    ORDER.iter().position(|it| *it == name)
}

#[test]
fn each_stage_uses_only_the_stages_before_it() {
    let mut faults = Vec::new();
    for file in rust_files(Path::new("src")) {
        let first = file.iter().nth(1).unwrap().to_str().unwrap();
        let stage = first.strip_suffix(".rs").unwrap_or(first);
        if matches!(stage, "lib" | "bin") {
            continue;
        }
        assert!(rank(stage).is_some(), "{}: give `{stage}` its place in ORDER", file.display());
        for (n, line) in std::fs::read_to_string(&file).unwrap().lines().enumerate() {
            let code = line.split("//").next().unwrap();
            let mut fault =
                |what: String| faults.push(format!("{}:{}: {what}", file.display(), n + 1));
            for used in code.split("crate::").skip(1) {
                let used = used.split(|c: char| !c.is_alphanumeric() && c != '_').next().unwrap();
                if rank(used).is_none_or(|it| Some(it) > rank(stage)) {
                    fault(format!("`{stage}` may not use `{used}`"));
                }
            }
            let inner = rank(stage) <= rank("workshop") || stage == "questions";
            for (word, home) in EDGE.iter().filter(|_| inner) {
                if code.contains(word) {
                    fault(format!("`{word}` belongs in {home}"));
                }
            }
        }
    }
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

#[test]
fn no_file_has_a_name_that_could_hide_anything() {
    for file in rust_files(Path::new("src")) {
        let name = file.file_stem().unwrap().to_str().unwrap();
        assert!(!VAGUE.iter().any(|it| name.contains(it)), "{}: say what it holds", file.display());
    }
}

/// Files of the command line that any command may use; every other one is a command's own, or the window's.
const SHARED: &[&str] = &[
    "bat_figure",
    "bench",
    "beside",
    "figure",
    "given",
    "innings_picture",
    "json",
    "ounce",
    "outcome",
    "paragraph",
    "progress",
    "table",
    "written",
];

#[test]
fn no_command_uses_another() {
    let folder = Path::new("src/bin/backlift");
    let others = |name: &String| {
        !SHARED.contains(&name.as_str()) && !["main", "studio"].contains(&name.as_str())
    };
    let of = |file: &Path| {
        let first = file.strip_prefix(folder).unwrap().iter().next().unwrap().to_str().unwrap();
        first.strip_suffix(".rs").unwrap_or(first).to_owned()
    };
    let files = rust_files(folder);
    let commands: Vec<String> = files.iter().map(|it| of(it)).filter(others).collect();
    let mut faults = Vec::new();
    for file in files.iter().filter(|it| !["studio", "main"].contains(&of(it).as_str())) {
        for (n, line) in std::fs::read_to_string(file).unwrap().lines().enumerate() {
            let code = line.split("//").next().unwrap();
            let other = |it: &&String| **it != of(file) && code.contains(&format!("crate::{it}::"));
            if let Some(other) = commands.iter().find(other) {
                faults.push(format!("{}:{}: uses the command {other}", file.display(), n + 1));
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

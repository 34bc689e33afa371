//! Data flows one way: a stage uses the stages before it, never one after.
#![allow(missing_docs)]
#![allow(clippy::disallowed_methods, reason = "edge: reads the sources")]

use std::collections::{BTreeMap, BTreeSet};
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
    "clock",
    "figure",
    "fitting_files",
    "given",
    "innings_picture",
    "json",
    "ounce",
    "outcome",
    "own",
    "paragraph",
    "progress",
    "sentences",
    "shape_files",
    "table",
    "written",
];

#[test]
fn no_command_uses_another_and_the_window_uses_none() {
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
    for file in files.iter().filter(|it| of(it) != "main") {
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

/// The window's files by their path within it, `["panels", "map"]`; its tests are no part of it.
fn window_files() -> BTreeMap<Vec<String>, PathBuf> {
    let folder = Path::new("src/bin/backlift/studio");
    let path = |file: &Path| {
        let within = file.strip_prefix(folder).unwrap().with_extension("");
        let steps = within.iter().map(|it| it.to_str().unwrap().to_owned());
        steps.filter(|it| it != "mod").collect::<Vec<_>>()
    };
    let files = rust_files(folder).into_iter().map(|file| (path(&file), file));
    files.filter(|(path, _)| path.first().is_none_or(|it| it != "tests")).collect()
}

/// Paths that a text names, `a::{b, c::d}` as `a::b` and `a::c::d`.
fn paths(text: &str) -> Vec<String> {
    let word = |c: char| c.is_alphanumeric() || c == '_' || c == ':';
    let (mut found, mut outer, mut path) = (Vec::new(), Vec::new(), String::new());
    for c in text.chars() {
        match c {
            '{' if path.ends_with("::") => outer.push(std::mem::take(&mut path)),
            // What stands before an opened bracket of paths stands before each of them.
            _ if word(c) => path.push(c),
            _ => {
                if !path.is_empty() {
                    found.push(outer.concat() + &std::mem::take(&mut path));
                }
                if c == '}' {
                    outer.pop();
                }
            }
        }
    }
    found
}

/// The files that one of the window's files names.
fn named_files(
    files: &BTreeMap<Vec<String>, PathBuf>,
    of: &[String],
    file: &Path,
) -> BTreeSet<Vec<String>> {
    let text = std::fs::read_to_string(file).unwrap();
    let code: String =
        text.lines().map(|it| it.split("//").next().unwrap().to_owned() + "\n").collect();
    let whole = |path: &str| {
        let mut from = of.to_vec();
        let mut steps: Vec<&str> = path.split("::").collect();
        if steps.starts_with(&["crate", "studio"]) {
            (from, steps) = (Vec::new(), steps.split_off(2));
        }
        while steps.first() == Some(&"super") {
            from.pop();
            steps.remove(0);
        }
        from.extend(steps.into_iter().map(str::to_owned));
        from
    };
    let known = |path: Vec<String>| {
        (1..=path.len()).rev().map(|n| path[..n].to_vec()).find(|it| files.contains_key(it))
    };
    let named = paths(&code).into_iter().filter(|it| it.contains("::"));
    named.filter_map(|it| known(whole(&it))).filter(|it| it != of).collect()
}

#[test]
fn no_file_of_the_window_uses_another_in_a_circle() {
    let files = window_files();
    let mut uses: BTreeMap<_, _> =
        files.iter().map(|(path, file)| (path.clone(), named_files(&files, path, file))).collect();
    assert!(uses.values().map(BTreeSet::len).sum::<usize>() > uses.len(), "the uses are not read");
    // What uses nothing that is left is in no circle; what is left at last is one, and what leads into it.
    while let Some(free) = uses.iter().find(|it| it.1.is_empty()).map(|it| it.0.clone()) {
        uses.remove(&free);
        uses.values_mut().for_each(|it| {
            it.remove(&free);
        });
    }
    let told: Vec<String> =
        uses.iter().map(|(path, used)| format!("{} uses {used:?}", path.join("/"))).collect();
    assert!(told.is_empty(), "{} files:\n{}", told.len(), told.join("\n"));
}

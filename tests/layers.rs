//! Data flows one way: a stage uses the stages before it, never one after.
#![allow(missing_docs)]
#![allow(clippy::disallowed_methods, reason = "edge: reads the sources")]

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

const ORDER: &[&str] = &[
    "frames",
    "uncertain",
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

/// Files below a folder by their path within it, `["panels", "map"]`; tests are no part of them.
fn files_below(folder: &Path, without: &str) -> BTreeMap<Vec<String>, PathBuf> {
    let path = |file: &Path| {
        let within = file.strip_prefix(folder).unwrap().with_extension("");
        let steps = within.iter().map(|it| it.to_str().unwrap().to_owned());
        steps.filter(|it| !["mod", "lib", "main"].contains(&it.as_str())).collect::<Vec<_>>()
    };
    let files = rust_files(folder).into_iter().map(|file| (path(&file), file));
    files.filter(|(path, _)| path.first().is_none_or(|it| it != without)).collect()
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

/// Files that use one another: those below a folder, whose paths in the code begin with `root`.
struct Sources<'a> {
    files: BTreeMap<Vec<String>, PathBuf>,
    root: &'a [&'a str],
    /// What a file hands on of another's names, `card::CardFault` of `card::fault::CardFault`.
    handed_on: BTreeMap<Vec<String>, Vec<String>>,
}

impl<'a> Sources<'a> {
    fn new(folder: &str, without: &str, root: &'a [&'a str]) -> Self {
        let files = files_below(Path::new(folder), without);
        let mut it = Self { files, root, handed_on: BTreeMap::new() };
        let handed_on = it.files.iter().flat_map(|(of, file)| {
            let code = code(file);
            let uses: Vec<_> =
                code.split_inclusive(';').filter_map(handing_on).flat_map(paths).collect();
            let whole =
                uses.into_iter().filter(|it| it.contains("::")).map(|used| it.whole(of, &used));
            whole.map(|it| ([of.as_slice(), &it[it.len() - 1..]].concat(), it)).collect::<Vec<_>>()
        });
        it.handed_on = handed_on.collect();
        it
    }

    /// A path as it stands in a file, from the root.
    fn whole(&self, of: &[String], path: &str) -> Vec<String> {
        let mut from = of.to_vec();
        let mut steps: Vec<&str> = path.split("::").collect();
        if steps.starts_with(self.root) {
            (from, steps) = (Vec::new(), steps.split_off(self.root.len()));
        }
        while steps.first() == Some(&"super") {
            from.pop();
            steps.remove(0);
        }
        from.extend(steps.into_iter().filter(|it| *it != "self").map(str::to_owned));
        from
    }

    /// The file in which the name at the end of a path stands, whoever hands it on.
    fn home(&self, mut path: Vec<String>) -> Option<Vec<String>> {
        let mut followed = BTreeSet::new();
        while let Some((n, to)) = (1..=path.len()).rev().find_map(|n| {
            let to = self.handed_on.get(&path[..n]).filter(|_| !followed.contains(&path[..n]))?;
            Some((n, to))
        }) {
            followed.insert(path[..n].to_vec());
            path = [to, &path[n..]].concat();
        }
        (1..=path.len()).rev().map(|n| path[..n].to_vec()).find(|it| self.files.contains_key(it))
    }

    /// The files that each names.
    fn uses(&self) -> BTreeMap<Vec<String>, BTreeSet<Vec<String>>> {
        let named = |of: &Vec<String>, file: &PathBuf| {
            let named = paths(&code(file)).into_iter().filter(|it| it.contains("::"));
            named.filter_map(|it| self.home(self.whole(of, &it))).filter(|it| it != of).collect()
        };
        self.files.iter().map(|(of, file)| (of.clone(), named(of, file))).collect()
    }
}

/// The names that a statement hands on, where it is one that does.
fn handing_on(statement: &str) -> Option<&str> {
    let heads = ["pub use ", "pub(super) use ", "pub(crate) use "];
    heads.iter().find_map(|it| Some(statement.split_once(it)?.1))
}

fn code(file: &Path) -> String {
    let text = std::fs::read_to_string(file).unwrap();
    text.lines().map(|it| it.split("//").next().unwrap().to_owned() + "\n").collect()
}

fn no_circle(mut uses: BTreeMap<Vec<String>, BTreeSet<Vec<String>>>) {
    assert!(uses.values().map(BTreeSet::len).sum::<usize>() > uses.len(), "the uses are not read");
    // What uses nothing that is left, or is used by nothing that is left, is in no circle.
    while let Some(free) = uses.iter().find_map(|(path, used)| {
        let is_used = || uses.values().any(|it| it.contains(path));
        (used.is_empty() || !is_used()).then(|| path.clone())
    }) {
        uses.remove(&free);
        uses.values_mut().for_each(|it| {
            it.remove(&free);
        });
    }
    let told: Vec<String> =
        uses.iter().map(|(path, used)| format!("{} uses {used:?}", path.join("/"))).collect();
    assert!(told.is_empty(), "{} files:\n{}", told.len(), told.join("\n"));
}

#[test]
fn no_file_of_the_window_uses_another_in_a_circle() {
    no_circle(Sources::new("src/bin/backlift/studio", "tests", &["crate", "studio"]).uses());
}

/// A file that stands over a folder uses what is in it: that is not counted, what the folder's files use of each other
/// and of any other file is.
#[test]
fn no_file_of_the_library_or_a_command_uses_another_in_a_circle() {
    for (folder, without) in [("src", "bin"), ("src/bin/backlift", "studio")] {
        let mut uses = Sources::new(folder, without, &["crate"]).uses();
        for (of, used) in &mut uses {
            used.retain(|it| !it.starts_with(of));
        }
        no_circle(uses);
    }
}

/// Each package of the tree with every set of features that it is built with.
#[cfg(feature = "studio")]
fn packages(arguments: &[&str]) -> BTreeMap<String, BTreeSet<String>> {
    let told = std::process::Command::new(env!("CARGO"))
        .args(["tree", "--prefix=none", "--no-dedupe", "--format={p}|{f}"])
        .args(arguments)
        .output()
        .unwrap();
    assert!(told.status.success(), "{}", String::from_utf8_lossy(&told.stderr));
    let mut all = BTreeMap::<String, BTreeSet<String>>::new();
    // An empty line parts the members of the workspace.
    for line in String::from_utf8(told.stdout).unwrap().lines().filter(|it| !it.is_empty()) {
        let (package, features) = line.split_once('|').unwrap();
        all.entry(package.to_owned()).or_default().insert(features.trim_end_matches(" (*)").into());
    }
    all
}

/// Asked where the window is built: without it its crates need not be on the machine.
#[cfg(feature = "studio")]
#[test]
fn the_library_is_built_once_for_the_program_with_the_window_and_without() {
    let all = ["--workspace", "--edges=normal,build,dev"];
    let without = packages(&all);
    let with = packages(&[&all[..], &["--features=studio"]].concat());
    for package in packages(&["--package=backlift-core", "--edges=normal,build"]).keys() {
        let (without, with) = (&without[package], &with[package]);
        assert!(
            without.is_subset(with),
            "{package}: the window asks for {with:?}, the library for {without:?}; turn on what is missing in \
             .ci/one-build/Cargo.toml, or both are built twice"
        );
    }
}

//! Every command that README and the guide show runs, exits and prints as shown there.
//!
//! `BACKLIFT_RENEW=1 cargo test --test pages -- --ignored` writes what is printed now into the pages.
#![allow(missing_docs)]
#![allow(clippy::disallowed_methods, reason = "edge: tests read and write files")]

#[path = "pages/shown.rs"]
mod shown;

use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Mutex, OnceLock};

use assert_cmd::Command;
use shown::{GAP, Shown, agree, renewed, shown};

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// README, then the pages of the guide.
fn pages() -> Vec<PathBuf> {
    let entries = std::fs::read_dir(root().join("assets/guide")).unwrap();
    let mut pages: Vec<PathBuf> = entries.map(|it| it.unwrap().path()).collect();
    pages.sort();
    pages.insert(0, root().join("README.md"));
    pages
}

fn text(page: &Path) -> String {
    std::fs::read_to_string(page).unwrap()
}

/// An empty folder with the scenarios in it, as a clone has them.
fn clone_with_scenarios() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    copy(&root().join("scenarios"), &folder.path().join("scenarios"));
    folder
}

fn copy(from: &Path, to: &Path) {
    std::fs::create_dir(to).unwrap();
    for entry in std::fs::read_dir(from).unwrap() {
        let file = entry.unwrap();
        std::fs::copy(file.path(), to.join(file.file_name())).unwrap();
    }
}

/// The whole fit of the demo, what it said and where. Three pages show it and it reads no file: it is run once.
type Fitted = OnceLock<(Result<String, String>, tempfile::TempDir)>;

/// What a command of a page says in the page's folder.
fn said(it: &Shown, folder: &Path, fitted: &Fitted) -> Result<String, String> {
    if it.arguments != ["fit"] {
        return printed(it, folder);
    }
    let (said, fitted) = fitted.get_or_init(|| {
        let folder = clone_with_scenarios();
        (printed(it, folder.path()), folder)
    });
    if said.is_ok() {
        copy(&fitted.path().join("fitting"), &folder.join("fitting"));
    }
    said.clone()
}

/// What a command says: its result, or why there is none.
fn printed(it: &Shown, folder: &Path) -> Result<String, String> {
    let mut command = Command::cargo_bin("backlift").unwrap();
    let run = command.current_dir(folder).env("NO_COLOR", "1").args(&it.arguments);
    let run = run.output().unwrap();
    let [result, refusal] = [run.stdout, run.stderr].map(|it| String::from_utf8(it).unwrap());
    match run.status.code() == Some(it.code) {
        true => Ok(if result.is_empty() { refusal } else { result }),
        false => Err(format!("{}: exits with {}\n{refusal}", it.typed, run.status)),
    }
}

/// Runs a page's commands one after another in one folder. Gives its faults, and the page renewed if it shall be:
/// then what is shown otherwise is no fault.
fn run(page: &str, renew: bool, fitted: &Fitted) -> (Vec<String>, String) {
    let folder = clone_with_scenarios();
    let lines: Vec<&str> = page.lines().collect();
    let (mut faults, mut anew, mut done) = (Vec::new(), Vec::<String>::new(), 0);
    for it in shown(page) {
        let said = match said(&it, folder.path(), fitted) {
            Ok(said) => said,
            Err(fault) => {
                faults.push(fault);
                continue;
            }
        };
        let said: Vec<&str> = said.lines().map(str::trim_end).collect();
        let here = &lines[it.output.clone()];
        if renew {
            anew.extend(lines[done..it.output.start].iter().map(|it| (*it).to_owned()));
            anew.extend(renewed(here, &said));
            done = it.output.end;
        } else if here.iter().all(|it| *it == GAP) {
            faults.push(format!("{}: nothing that it prints is shown", it.typed));
        } else if !agree(here, &said) {
            let (here, said) = (here.join("\n"), said.join("\n"));
            faults.push(format!("{}\n-- shown:\n{here}\n-- printed:\n{said}\n", it.typed));
        }
    }
    anew.extend(lines[done..].iter().map(|it| (*it).to_owned()));
    (faults, anew.join("\n") + "\n")
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn every_command_of_the_pages_runs_exits_and_prints_as_shown() {
    let renew = std::env::var_os("BACKLIFT_RENEW").is_some();
    let (pages, faults) = (pages(), Mutex::new(Vec::new()));
    let (next, fitted) = (AtomicUsize::new(0), Fitted::new());
    let two_pages_at_a_time = || {
        while let Some(page) = pages.get(next.fetch_add(1, Ordering::Relaxed)) {
            let (found, anew) = run(&text(page), renew, &fitted);
            if renew {
                std::fs::write(page, anew).unwrap();
            }
            let name = page.display();
            faults.lock().unwrap().extend(found.iter().map(|it| format!("{name}: {it}")));
        }
    };
    std::thread::scope(|scope| {
        scope.spawn(two_pages_at_a_time);
        scope.spawn(two_pages_at_a_time);
    });
    let faults = faults.into_inner().unwrap();
    assert!(faults.is_empty(), "{} faults:\n{}", faults.len(), faults.join("\n"));
}

#[test]
fn every_command_of_the_program_is_shown_on_a_page() {
    let all: Vec<Shown> = pages().iter().flat_map(|it| shown(&text(it))).collect();
    let help = Command::cargo_bin("backlift").unwrap().arg("--help").output().unwrap();
    let help = String::from_utf8(help.stdout).unwrap();
    let commands = help.split("Commands:").nth(1).unwrap().split("Options:").next().unwrap();
    let names: Vec<&str> = commands
        .lines()
        .filter(|line| line.starts_with("  ") && !line.starts_with("   "))
        .filter_map(|line| line.split_whitespace().next())
        .filter(|name| !["help", "studio"].contains(name))
        .collect();
    assert!(names.len() >= 20, "{names:?}");
    for name in names {
        assert!(all.iter().any(|it| it.arguments[0] == name), "no page shows {name}");
    }
}

#[test]
fn every_picture_and_file_the_pages_point_at_is_there() {
    for page in pages().into_iter().chain([root().join("DEVELOPERS.md")]) {
        let text = text(&page);
        let targets = text.split("](").skip(1).filter_map(|it| it.split(')').next());
        for it in targets.filter(|it| !it.starts_with('#') && !it.contains("://")) {
            let file = std::fs::metadata(page.parent().unwrap().join(it));
            let size = file.map_or(u64::MAX, |it| it.len());
            assert!(size < 300_000, "{}: {it} is not there, or too large", page.display());
        }
    }
}

#[test]
fn every_page_is_short_and_the_program_prints_it() {
    for page in pages() {
        let (text, topic) = (text(&page), page.file_stem().unwrap().to_str().unwrap());
        let lines = text.lines().count();
        if topic == "README" {
            assert!(lines <= 250, "README has {lines} lines");
            continue;
        }
        assert!(lines <= 170, "{topic} has {lines} lines: part it by topic");
        let mut command = Command::cargo_bin("backlift").unwrap();
        command.args(["guide", topic]).assert().success().stdout(text);
    }
}

#[test]
fn the_scenario_of_the_guide_is_read_without_a_question() {
    let folder = tempfile::tempdir().unwrap();
    let page = text(&root().join("assets/guide/scenario.md"));
    let (_, rest) = page.split_once("```ron\n").unwrap();
    let (scenario, _) = rest.split_once("```").unwrap();
    std::fs::write(folder.path().join("all.ron"), scenario).unwrap();
    let mut command = Command::cargo_bin("backlift").unwrap();
    command.current_dir(folder.path()).args(["weigh", "all.ron"]).assert().success().stderr("");
}

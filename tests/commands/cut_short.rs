//! A command that is stopped, or whose disk fills up, leaves what was there before.
#![cfg(unix)]

use std::io::{BufRead, BufReader, Read};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use super::PULL_ALONE;

const OLD: &str = "a card of last year";

/// Of the pull alone: a fit goes through the same stages.
fn fit(folder: &Path) -> Command {
    let mut command = Command::new(assert_cmd::cargo::cargo_bin!("backlift"));
    command.current_dir(folder).args(["fit", "--out", "mine"]).args(PULL_ALONE);
    command.env("NO_COLOR", "1");
    command
}

/// A folder with an old card in it.
fn folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    std::fs::create_dir(folder.path().join("mine")).unwrap();
    std::fs::write(folder.path().join("mine/card.ron"), OLD).unwrap();
    folder
}

fn only_the_old_card_is_there(folder: &Path) {
    let names: Vec<_> = std::fs::read_dir(folder.join("mine"))
        .unwrap()
        .map(|entry| entry.unwrap().file_name())
        .collect();
    assert_eq!(names, ["card.ron"]);
    assert_eq!(std::fs::read_to_string(folder.join("mine/card.ron")).unwrap(), OLD);
}

#[test]
fn ctrl_c_in_the_middle_of_a_fit_leaves_the_old_files_and_exits_with_130() {
    let folder = folder();
    let mut fit = fit(folder.path()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    // No terminal, and yet it is told how far the work is.
    let mut told = BufReader::new(fit.stderr.take().unwrap());
    let mut line = String::new();
    told.read_line(&mut line).unwrap();
    assert!(line.contains(" %  swinging"), "{line}");
    let pressed = Command::new("kill").args(["-INT", &fit.id().to_string()]).status().unwrap();
    assert!(pressed.success());
    let output = fit.wait_with_output().unwrap();
    told.read_to_string(&mut line).unwrap();
    assert_eq!(output.status.code(), Some(130), "{line}");
    assert_eq!(String::from_utf8_lossy(&output.stdout), "");
    only_the_old_card_is_there(folder.path());
}

/// Half a second is little for a person; a busy machine is given twice that.
#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn ctrl_c_is_answered_within_a_second_wherever_a_fit_is() {
    for after_s in [0.1, 0.7, 1.8, 3.2, 5.0, 7.1, 9.6] {
        let folder = folder();
        let mut fit =
            fit(folder.path()).stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap();
        std::thread::sleep(Duration::from_secs_f64(after_s));
        if fit.try_wait().unwrap().is_some() {
            break; // A fast machine has done it.
        }
        let pressed = Instant::now();
        Command::new("kill").args(["-INT", &fit.id().to_string()]).status().unwrap();
        assert_eq!(fit.wait().unwrap().code(), Some(130), "after {after_s} s");
        assert!(pressed.elapsed() < Duration::from_secs(1), "after {after_s} s");
        only_the_old_card_is_there(folder.path());
    }
}

/// The bench's own commands, stopped as early and as late as it comes.
#[test]
fn ctrl_c_ends_the_benchs_commands_with_130_and_leaves_nothing_half_done() {
    let folder = tempfile::tempdir().unwrap();
    let bench = folder.path().join("bench");
    let shape = || {
        let mut shape = Command::new(assert_cmd::cargo::cargo_bin!("backlift"));
        shape.current_dir(folder.path()).args(["shape", "--out", "bench"]);
        shape.stdout(Stdio::null()).stderr(Stdio::null());
        shape
    };
    assert!(shape().status().unwrap().success());
    let whole = names(&bench);
    let mut cancelled = 0;
    for after_ms in [20, 40, 60, 80, 120, 160, 200, 300] {
        std::fs::remove_dir_all(&bench).unwrap();
        let mut shape = shape().spawn().unwrap();
        std::thread::sleep(Duration::from_millis(after_ms));
        Command::new("kill").args(["-INT", &shape.id().to_string()]).status().unwrap();
        match shape.wait().unwrap().code() {
            Some(130) => cancelled += 1,
            other => assert_eq!(other, Some(0), "after {after_ms} ms"),
        }
        assert!(!bench.exists() || names(&bench) == whole, "after {after_ms} ms");
        std::fs::create_dir_all(&bench).unwrap();
    }
    assert!(cancelled > 0);
}

fn names(folder: &Path) -> Vec<std::ffi::OsString> {
    let mut all: Vec<_> =
        std::fs::read_dir(folder).unwrap().map(|it| it.unwrap().file_name()).collect();
    all.sort();
    all
}

/// Killed as soon as the first of its files has changed, a run leaves its folder to the next, which finds all
/// of one run there or all of the other.
#[test]
fn a_run_killed_between_two_files_is_ended_by_the_next() {
    use std::os::unix::fs::MetadataExt;
    let folder = tempfile::tempdir().unwrap();
    let bench = folder.path().join("bench");
    let run = |edge: &str| {
        let mut shape = Command::new(assert_cmd::cargo::cargo_bin!("backlift"));
        shape.current_dir(folder.path()).args(["shape", "--out", "bench", "--set"]);
        shape.arg(format!("blade.edge={edge}")).stdout(Stdio::null());
        shape
    };
    let all = || -> Vec<Vec<u8>> {
        names(&bench).iter().map(|it| std::fs::read(bench.join(it)).unwrap()).collect()
    };
    assert!(run("36 mm").status().unwrap().success());
    let thin = all();
    assert!(run("38 mm").status().unwrap().success());
    let thick = all();
    for _ in 0..6 {
        assert!(run("36 mm").status().unwrap().success());
        let inodes = || -> Vec<_> {
            let it = |name: &std::ffi::OsString| {
                std::fs::metadata(bench.join(name)).map(|it| it.ino()).ok()
            };
            ["bat.glb", "bat.stl", "sections.pdf"].map(Into::into).iter().map(it).collect()
        };
        let before = inodes();
        let mut killed = run("38 mm").spawn().unwrap();
        while inodes() == before && killed.try_wait().unwrap().is_none() {}
        let _ = killed.kill();
        killed.wait().unwrap();
        // Any save into the folder mends it.
        let note = Command::new(assert_cmd::cargo::cargo_bin!("backlift"))
            .current_dir(&bench)
            .args(["new", "note.ron"])
            .output()
            .unwrap();
        assert!(note.status.success());
        std::fs::remove_file(bench.join("note.ron")).unwrap();
        let found = all();
        assert!(found == thin || found == thick, "{:?}", names(&bench));
    }
}

/// A limit on the size of files stands for the full disk: writing fails in the middle in the same way.
#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn a_disk_that_fills_up_leaves_the_old_files_and_exits_with_2() {
    let folder = folder();
    let program = assert_cmd::cargo::cargo_bin!("backlift");
    let output = Command::new("sh")
        .arg("-c")
        .arg("trap '' XFSZ; ulimit -f 16; exec \"$0\" fit --out mine \"$@\"")
        .arg(program)
        .args(PULL_ALONE)
        .current_dir(folder.path())
        .env("NO_COLOR", "1")
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(2), "{said}");
    assert!(said.contains("mine"), "{said}");
    only_the_old_card_is_there(folder.path());
}

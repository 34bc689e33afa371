//! The real window at rest.

use std::time::{Duration, Instant};

use tempfile::tempdir;

use super::display::{Display, pause};

/// Share of one processor that a window may take in which nothing happens.
const AT_REST: f64 = 0.02;
/// Watched for so long, s.
const WATCHED_S: f64 = 5.0;
/// Until then everything must have been worked out, on two shared cores.
const SETTLED: Duration = Duration::from_secs(240);

/// Processor time that a program has taken, s.
fn taken_s(program: u32) -> f64 {
    let told = std::fs::read_to_string(format!("/proc/{program}/stat")).unwrap();
    let (_, after_name) = told.rsplit_once(')').unwrap();
    let ticks =
        |n: usize| -> f64 { after_name.split_whitespace().nth(n).unwrap().parse().unwrap() };
    (ticks(11) + ticks(12)) / 100.0
}

/// Waits until the window rests.
fn comes_to_rest(program: u32) -> bool {
    let started = Instant::now();
    while started.elapsed() < SETTLED {
        let before = taken_s(program);
        pause((1e3 * WATCHED_S) as u64);
        let share = (taken_s(program) - before) / WATCHED_S;
        eprintln!(
            "{:.0} s: {:.1} % of a processor",
            started.elapsed().as_secs_f64(),
            100.0 * share
        );
        if share < AT_REST {
            return true;
        }
    }
    false
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn a_window_in_which_nothing_happens_takes_no_processor() {
    let folder = tempdir().unwrap();
    let display = Display::start(folder.path());
    let mut program = display.open(&["studio"], folder.path());
    display.tool(&["search", "--sync", "--onlyvisible", "--name", "Backlift"]);
    display.tool(&["search", "--name", "Backlift", "windowfocus"]);
    pause(3_000);
    // A swing that nobody sees, and one that stands.
    display.tool(&["key", "F2"]);
    assert!(comes_to_rest(program.id()), "the bench");
    display.tool(&["key", "space"]);
    display.tool(&["key", "F3"]);
    assert!(comes_to_rest(program.id()), "a swing that stands");
    program.kill().unwrap();
    program.wait().unwrap();
}

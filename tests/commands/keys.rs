//! The keys that `backlift keys` lists are those that the commands print.

use std::collections::BTreeSet;

use serde_json::Value;

use super::once::ran;
use super::{PULL_ALONE, backlift, beside, matters, nets, pairs, plane, unchanged};

/// The keys that are listed for a command, each `{a,b}` taken apart.
fn listed(command: &str) -> Vec<String> {
    let said = backlift().args(["keys", command]).output().unwrap();
    let text = String::from_utf8(said.stdout).unwrap();
    let keys = text.lines().filter(|it| !it.starts_with(' ')).flat_map(apart);
    keys.map(|it| any_stroke(&it)).collect()
}

fn apart(key: &str) -> Vec<String> {
    let Some((before, rest)) = key.split_once('{') else { return vec![key.to_owned()] };
    let (choices, after) = rest.split_once('}').unwrap();
    choices.split(',').flat_map(|it| apart(&format!("{before}{it}{after}"))).collect()
}

/// The key with STROKE for the name of a stroke.
fn any_stroke(key: &str) -> String {
    let stroke = |it| if ["drive", "pull", "hook"].contains(&it) { "STROKE" } else { it };
    key.split('.').map(stroke).collect::<Vec<_>>().join(".")
}

/// Every key of a result down to its figures; what is empty or null stands for whatever may be in it.
fn printed(value: &Value, path: &str, found: &mut BTreeSet<(String, bool)>) {
    match value {
        Value::Object(all) => {
            for (key, value) in all {
                let dot = if path.is_empty() { "" } else { "." };
                printed(value, &format!("{path}{dot}{key}"), found);
            }
        }
        Value::Array(all) => {
            let path = format!("{path}[]");
            all.iter().for_each(|value| printed(value, &path, found));
            if all.is_empty() {
                found.insert((any_stroke(&path), true));
            }
        }
        _ => drop(found.insert((any_stroke(path), value.is_null()))),
    }
}

/// Whether a printed key is listed; one that is empty may be listed with what would be in it.
fn is_listed(key: &str, empty: bool, listed: &[String]) -> bool {
    let inside = |it: &str| it.is_empty() || it.starts_with(['.', '[']);
    listed.iter().any(|it| {
        it == key || empty && it.strip_prefix(key.trim_end_matches("[]")).is_some_and(inside)
    })
}

/// Runs a command in ways that together print all its keys.
fn the_keys_of(command: &str, ways: &[&str]) {
    are_those_listed(command, ways.iter().map(|way| figures(command, way, &[])));
}

fn figures(command: &str, way: &str, more: &[&str]) -> Value {
    let mut run = backlift();
    run.current_dir(env!("CARGO_MANIFEST_DIR")).arg(command).args(way.split_whitespace());
    let said = run.args(more).arg("--json").output().unwrap();
    serde_json::from_slice(&said.stdout).unwrap_or_else(|it| panic!("{command} {way}: {it}"))
}

/// The keys that are in some of these results of a command and those that are listed for it.
fn are_those_listed(command: &str, figures: impl IntoIterator<Item = Value>) {
    let mut found = BTreeSet::new();
    for value in figures {
        printed(&value, "", &mut found);
    }
    let listed = listed(command);
    assert!(listed.len() > 10, "{command}: {listed:?}");
    for (key, empty) in &found {
        assert!(is_listed(key, *empty, &listed), "{command} prints {key}, which is not listed");
    }
    for key in &listed {
        assert!(
            found.iter().any(|(it, _)| it == key),
            "{command} lists {key}, which is not printed"
        );
    }
}

const CARD: &str = "tests/commands/card.ron";

#[test]
fn the_keys_of_quick_commands_are_those_listed() {
    the_keys_of("weigh", &["", "--set bats.0.width=11cm", "--set bats.0.pendulum.time=12.5s"]);
    the_keys_of(
        "shape",
        &[
            "scenarios/blade.ron",
            "tests/commands/three-heights.ron",
            &format!("--to {CARD}"),
            &format!("--to {CARD} --hold edge=60mm"),
        ],
    );
    the_keys_of("plane", &[&format!("{CARD} --mass 1.3kg --balance 540mm --time 43s")]);
    let airs = "--from 18C,55% --to 30C,75%";
    the_keys_of(
        "season",
        &[&format!("{CARD} {airs}"), &format!("--size 6 --mass 894g --pressed 2mm {airs}")],
    );
    the_keys_of("stages", &["scenarios/bench-log.ron"]);
    let folder = tempfile::tempdir().unwrap();
    let unmakeable = folder.path().join("unmakeable.ron");
    std::fs::write(&unmakeable, super::orders::unmakeable()).unwrap();
    let both = format!("{CARD} {}", unmakeable.display());
    the_keys_of("orders", &[&format!("{both} --rack scenarios/rack.ron")]);
    the_keys_of("validate", &["--only pendulum"]);
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn the_keys_of_commands_that_swing_are_those_listed() {
    the_keys_of("swing", &[""]);
    are_those_listed("innings", [ran(&beside::INNINGS).figures()]);
    the_keys_of("hit", &["--speed 15m/s"]);
    are_those_listed("compare", [ran(&pairs::COMPARE).figures()]);
    the_keys_of(
        "check",
        &[&format!("{CARD} scenarios/club.ron --bat 0"), &format!("{CARD} --mass 1.2kg")],
    );
    are_those_listed("trial", [ran(&pairs::TRIAL).figures()]);
    are_those_listed("pickup", [ran(&plane::PICKUP).figures()]);
    are_those_listed("calibrate", [ran(&nets::CALIBRATE).figures()]);
    let out = tempfile::tempdir().unwrap();
    let out = format!("--out {}", out.path().display());
    let wished =
        "--set order.wish.middle=high --set order.wish.handle=oval --set order.wish.grips=1";
    // Every stroke's keys are in what others ask too; what only these print does not hang on the strokes.
    let ordered = figures("fit", &format!("{out} --order 17 --wish soft {wished}"), &PULL_ALONE);
    let plain = std::fs::read_to_string(ran(&beside::FIT).file("fitting/fit.json")).unwrap();
    let plain = serde_json::from_str(&plain).unwrap();
    are_those_listed("fit", [ordered, plain, unchanged::today("junior")]);
    let terms = figures("matters", "scenarios/club.ron --samples 2 --terms", &PULL_ALONE);
    are_those_listed("matters", [ran(&matters::STUDY).figures(), terms]);
}

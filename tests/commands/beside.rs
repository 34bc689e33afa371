//! What stands beside every result: a junior's cautions, and that players and bats are invented.

use super::bats::CARD;
use super::once::ran;
use super::{PULL_ALONE, backlift, matters, pairs, plane, unchanged};
use serde_json::Value;
use std::path::Path;

/// The whole fit of the demo, with its pictures.
pub const FIT: [&str; 3] = ["fit", "--out", "fitting"];
/// The innings of the demo's bats.
pub const INNINGS: [&str; 2] = ["innings", "--json"];

fn joined(lines: &str) -> String {
    lines.replace('\n', " ").replace("  ", " ")
}

/// What was said, its lines joined.
fn said(arguments: &[&str], folder: &Path) -> String {
    let run = backlift().current_dir(folder).args(arguments).output().unwrap();
    joined(&String::from_utf8(run.stdout).unwrap())
}

/// The same for another program.
fn figures(arguments: &[&str], folder: &Path) -> Value {
    let arguments = [arguments, &["--json"]].concat();
    let run = backlift().current_dir(folder).args(arguments).output().unwrap();
    serde_json::from_slice(&run.stdout).unwrap()
}

fn cautions(value: &Value) -> String {
    let all = value["cautions"].as_array().unwrap();
    all.iter().map(|it| it.as_str().unwrap()).collect::<Vec<_>>().join(" ")
}

const GROWN: [&str; 6] =
    ["--set", "player.age=30", "--set", "player.stature=1.75 m", "--set", "invented=no"];

/// The demo's junior in words and as JSON; of the same `command` a grown player is told nothing of growth, and what is
/// not invented is not called so.
fn stands_beside(words: &[&str], json: &[&str], command: &[&str]) {
    let told = joined(&ran(words).said);
    for it in ["With a hard ball: a helmet", "fit again at", "Invented player and bats"] {
        assert!(told.contains(it), "{words:?}: {it:?} is missing in {told}");
    }
    let junior = ran(json).figures();
    assert_eq!(junior["invented"], true, "{json:?}");
    assert!(cautions(&junior).contains("helmet"), "{json:?}: {junior:#}");
    let grown = [command, &GROWN].concat();
    let told = joined(&ran(&grown).said);
    assert!(!told.contains("fit again") && !told.contains("Invented"), "{grown:?}: {told}");
    let grown = ran(&[&grown[..], &["--json"]].concat()).figures();
    assert_eq!(grown["invented"], false);
    assert!(!cautions(&grown).contains("fit again"), "{grown:#}");
}

#[test]
fn a_juniors_cautions_and_invented_stand_beside_a_weighing_a_swing_and_a_trial() {
    let trial = [&["trial", "--like-bat", "Big edges"][..], &PULL_ALONE].concat();
    let commands: [&[&str]; 4] = [&["weigh"], &["swing"], &trial, &["hit", "--speed", "15 m/s"]];
    for it in commands {
        stands_beside(it, &[it, &["--json"]].concat(), it);
    }
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn a_juniors_cautions_and_invented_stand_beside_an_innings_a_comparison_and_all_else() {
    // Of the junior what other facts ask too; the grown player's is asked here alone.
    let pull_alone = |command: &[&'static str]| [command, &PULL_ALONE].concat();
    stands_beside(&["innings", "--units", "si"], &INNINGS, &pull_alone(&["innings"]));
    let two = ["compare", "--bat", "Old faithful", "--bat", "Big edges"];
    stands_beside(&two, &pairs::COMPARE, &pull_alone(&two));
    stands_beside(&["pickup", "--units", "si"], &plane::PICKUP, &pull_alone(&["pickup"]));
    let least = pull_alone(&["matters", "--samples", "2"]);
    stands_beside(&["matters", "--samples", "4", "--out", "matters"], &matters::STUDY, &least);
}

#[test]
fn a_juniors_card_brings_its_cautions_to_the_bench() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("card.ron"), CARD).unwrap();
    let bench = ["card.ron", "--mass", "930 g", "--balance", "527 mm", "--time", "42.3 s"];
    for command in [
        [&["check"][..], &bench].concat(),
        [&["plane"][..], &bench].concat(),
        vec!["shape", "--to", "card.ron"],
        vec!["orders", "card.ron"],
        vec!["season", "card.ron", "--from", "18 C, 55 %", "--to", "30 C, 75 %"],
    ] {
        let told = said(&command, folder.path());
        let value = figures(&command, folder.path());
        for it in ["With a hard ball: a helmet", "The player of this card is invented"] {
            assert!(told.contains(it), "{command:?}: {it:?} is missing in {told}");
        }
        assert!(cautions(&value).contains("helmet") && value["invented"] == true, "{value:#}");
    }
    let told = said(&["shape"], folder.path());
    assert!(told.contains("lungs") && !told.contains("helmet"), "no player, no cautions: {told}");
}

/// A figure that may be read as leave to face such a ball is not told to a junior.
#[test]
fn no_fastest_ball_is_told_to_a_junior_and_a_time_in_hand_only_with_what_it_hangs_on() {
    let junior = joined(&ran(&["swing"]).said);
    assert!(!junior.contains("fastest ball"), "{junior}");
    assert!(junior.contains("if the ball is read in 200\u{2009}ms, which is an assumption"));
    let grown = joined(&ran(&[&["swing"][..], &GROWN].concat()).said);
    assert!(grown.contains("fastest ball"), "{grown}");
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn pictures_say_that_what_they_show_is_invented() {
    let commands: [(&[&str], &[&str]); 4] = [
        (&["swing", "--out", "out"], &["out/swing-pull.svg"]),
        (&["hit", "--speed", "15 m/s", "--out", "out"], &["out/face.svg", "out/hands.svg"]),
        (&["innings", "--out", "out"], &["out/innings.svg"]),
        (&FIT, &["fitting/map.svg", "fitting/innings.svg"]),
    ];
    for (command, files) in commands {
        let run = ran(command);
        for file in files {
            let svg = std::fs::read_to_string(run.file(file)).unwrap();
            let words: String = svg.split('>').filter_map(|it| it.split('<').next()).collect();
            let words = words.split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(words.contains("Invented"), "{command:?} {file}: {words}");
        }
    }
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn compare_says_what_fit_says_of_the_same_bats() {
    let compared = ran(&pairs::COMPARE).figures();
    let fitted = unchanged::today("junior");
    let given = fitted["given"].as_array().unwrap();
    let worth = compared["worth"].as_array().unwrap();
    assert_eq!(worth.len(), 2);
    for it in worth {
        let same = given.iter().find(|of| of["label"] == it["label"]).unwrap();
        for key in ["worth_m_s", "worth_sd_m_s", "chance_in_time", "suits"] {
            assert_eq!(it[key], same[key], "{key}");
        }
    }
    let gain = &compared["worth_differences"][0];
    assert_eq!((&gain["first"], &gain["second"]), (&worth[0]["label"], &worth[1]["label"]));
    let of = |it: &Value, key: &str| it[key].as_f64().unwrap();
    let by_means = of(&worth[1], "worth_m_s") - of(&worth[0], "worth_m_s");
    assert!((of(gain, "gain_m_s") - by_means).abs() < 1e-9, "{gain}");
    let real = of(gain, "gain_m_s").abs() > 1.96 * of(gain, "gain_sd_m_s");
    assert_eq!(gain["real"], real);
    // What is in doubt about the player is shared: the difference is surer than either figure.
    assert!(of(gain, "gain_sd_m_s") < of(&worth[0], "worth_sd_m_s"), "{gain}");
}

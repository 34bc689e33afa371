//! compare and trial, as a person and as another program use them.

use super::bats::CARD;
use super::once::ran;
use super::{backlift, refused};
use serde_json::Value;
use std::path::Path;

/// Runs with `--json` and reads the result.
fn figures(arguments: &[&str], folder: &Path) -> Value {
    let run = backlift().current_dir(folder).args(arguments).arg("--json").assert().success();
    serde_json::from_slice(&run.get_output().stdout).unwrap()
}

/// Two of the demo's bats.
pub const COMPARE: [&str; 8] =
    ["compare", "--bat", "0", "--bat", "Big edges", "--out", "pair", "--json"];
/// The first taped to be like the second.
pub const TRIAL: [&str; 6] = ["trial", "--bat", "0", "--like-bat", "Big edges", "--json"];

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn compare_gives_every_difference_with_its_doubt_and_writes_a_picture() {
    let folder = tempfile::tempdir().unwrap();
    let run = ran(&COMPARE);
    let value = run.figures();
    assert_eq!(value["schema"], "backlift/compare/1");
    assert_eq!(value["bats"].as_array().unwrap().len(), 2);
    let differences = value["differences"].as_array().unwrap();
    for it in differences {
        assert!(it["value"].is_f64() && it["sd"].as_f64().unwrap() >= 0.0, "{it}");
        assert!(it["real"].is_boolean() && it["figure"].is_string(), "{it}");
        assert!(["yes", "unsure", "no"].contains(&it["felt"].as_str().unwrap()), "{it}");
        assert_eq!(it["bats"], serde_json::json!(["Old faithful", "Big edges"]));
    }
    let of = |figure: &str| differences.iter().find(|it| it["figure"] == figure).unwrap();
    assert_eq!(of("swing_moment_kg_m2")["real"], true);
    assert!(of("pull.at_fifty.bat_speed_m_s")["value"].as_f64().unwrap() < 0.0);
    let bat = &value["bats"][0]["figures"]["pull.fresh.bat_speed_m_s"];
    let swing = figures(&["swing", "--bat", "0", "--stroke", "pull"], folder.path());
    let [compared, swung] = [&bat["sd"], &swing["bat_speed_sd_m_s"]].map(|it| it.as_f64().unwrap());
    // `swing` searches each player to the end, `compare` nearly so (its facts).
    assert!((swung / compared - 1.0).abs() < 0.05, "one pull, two doubts: {swung} {compared}");
    assert!(run.file("pair/compare.svg").exists());
    assert!(run.file("pair/compare.png").exists());
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn trial_tapes_whole_grams_towards_another_bat_a_card_or_three_figures() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("card.ron"), CARD).unwrap();
    let of = |way: &[&str]| figures(&[&["trial", "--bat", "0"], way].concat(), folder.path());
    let ways = [
        ran(&TRIAL).figures(),
        of(&["--like", "card.ron"]),
        of(&["--mass", "1.08 kg", "--balance", "20 in", "--swing-moment", "0.18"]),
    ];
    for value in ways {
        assert_eq!(value["schema"], "backlift/trial/2");
        assert_eq!(value["bat"], "Old faithful");
        let mut added_kg = 0.0;
        for it in value["weights"].as_array().unwrap() {
            let grams = 1000.0 * it["mass_kg"].as_f64().unwrap();
            assert!(grams > 0.0 && (grams - grams.round()).abs() < 1e-9, "{it}");
            assert!((0.0..0.85).contains(&it["from_top_m"].as_f64().unwrap()), "{it}");
            added_kg += grams / 1000.0;
        }
        let mass = |which: &str| value[which]["mass_kg"].as_f64().unwrap();
        assert!((mass("reached") - mass("owned") - added_kg).abs() < 1e-9, "{value:#}");
        assert!(value["wanted"]["swing_moment_kg_m2"].is_f64());
        // Aimed at the late pull: as swung within the 0.5 % that count as the same, unless it says otherwise.
        assert_eq!(value["stroke"], "pull");
        let strokes = value["strokes"].as_array().unwrap();
        assert_eq!(strokes.len(), 3);
        let speed = |it: &Value, key: &str| it[key].as_f64().unwrap();
        for it in strokes {
            let reached = speed(it, "reached_bat_speed_m_s");
            assert!(reached <= speed(it, "owned_bat_speed_m_s"), "tape only slows: {it}");
            let off = reached / speed(it, "wanted_bat_speed_m_s") - 1.0;
            let near = ["alike", "swing_only"].contains(&value["near"].as_str().unwrap());
            assert!(it["stroke"] != "pull" || !near || off.abs() < 0.006, "{off}: {value:#}");
        }
    }
}

#[test]
fn trial_warns_that_taped_weights_are_not_for_play() {
    let folder = tempfile::tempdir().unwrap();
    let run = backlift()
        .current_dir(folder.path())
        .args(["trial", "--like-bat", "Big edges"])
        .assert()
        .success();
    let said = String::from_utf8(run.get_output().stdout.clone()).unwrap();
    assert!(said.contains("shadow swings and soft throws only"), "{said}");
    assert!(said.contains("nothing can fly off"), "{said}");
    assert!(said.contains("in the pull") && said.contains("in the hook"), "each stroke: {said}");
}

#[test]
fn what_cannot_be_compared_or_tried_is_refused_with_its_mend() {
    let folder = tempfile::tempdir().unwrap();
    let three = |mass, balance, swing| {
        vec!["trial", "--mass", mass, "--balance", balance, "--swing-moment", swing]
    };
    let table: [(Vec<&str>, &str); 8] = [
        (vec!["compare", "--bat", "0"], "name another with --bat"),
        (vec!["compare", "--bat", "Big edgs", "--bat", "0"], "did you mean"),
        (vec!["trial", "--like-bat", "0"], "this is the bat to be taped"),
        (vec!["trial", "--like", "none.ron"], "there is no file none.ron"),
        (three("1.1", "20 in", "0.2"), "1.1 has no unit"),
        (three("1.1 kg", "57 in", "0.2"), "between the pickup axis"),
        (three("1.1 kg", "20 in", "NaN"), "no bat has these three figures"),
        (three("−1 kg", "20 in", "0.2"), "not a positive number"),
    ];
    for (arguments, said) in table {
        let words = refused(&arguments, folder.path());
        assert!(words.contains(said), "{arguments:?}: {words}");
    }
}

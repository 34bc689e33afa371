//! season, as a person and as another program use it.

use super::bats::CARD;
use super::{backlift, refused};
use serde_json::Value;

const AIRS: [&str; 4] = ["--from", "18 C, 55 %", "--to", "30 C, 75 %"];

fn figures(arguments: &[&str]) -> Value {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("card.ron"), CARD).unwrap();
    let run = backlift()
        .current_dir(folder.path())
        .arg("season")
        .args(arguments)
        .args(AIRS)
        .arg("--json")
        .assert()
        .success();
    serde_json::from_slice(&run.get_output().stdout).unwrap()
}

fn number(value: &Value, pointer: &str) -> f64 {
    value
        .pointer(pointer)
        .and_then(Value::as_f64)
        .unwrap_or_else(|| panic!("{pointer} in {value:#}"))
}

#[test]
fn season_says_what_to_aim_for_today_in_si() {
    let it = figures(&["card.ron", "--days", "10", "--pressed", "2 mm"]);
    assert_eq!(it["schema"], "backlift/season/1");
    assert!((number(&it, "/moisture_from") - 0.1015).abs() < 0.001);
    assert!(number(&it, "/moisture_to") > number(&it, "/moisture_from"));
    let (change, aim) = (number(&it, "/mass_change_kg"), number(&it, "/aim_now/mass_kg"));
    assert!(change > 0.02 && (0.894 - aim - change).abs() < 0.002, "{change} {aim}");
    assert!(number(&it, "/swing_moment_change_kg_m2") > 0.0);
    assert!(number(&it, "/aim_now/ten_swings_s") > 10.0);
    assert!(number(&it, "/aim_now/swing_moment_kg_m2") < 0.1506);
    let days: Vec<u64> =
        it["course"].as_array().unwrap().iter().map(|it| it["days"].as_u64().unwrap()).collect();
    assert_eq!(days, [1, 3, 7, 10, 14, 30, 60, 120]);
    assert_eq!(it["oiled"], false, "as on the card");
    assert_eq!(it["card"]["within_there"], false);
    assert!(number(&it, "/pressing/com_change_m") < 0.0);
}

#[test]
fn season_takes_a_bat_from_the_bench_without_a_card() {
    let it =
        figures(&["--size", "6", "--mass", "894 g", "--balance", "502 mm", "--time", "13.94 s"]);
    assert!(it["card"].is_null());
    assert_eq!(it["oiled"], true);
    assert_eq!(it["estimated"].as_array().unwrap().len(), 0);
    let guessed = figures(&["--size", "6", "--mass", "894 g"]);
    assert_eq!(guessed["estimated"], serde_json::json!(["balance_m", "swing_moment_kg_m2"]));
    assert!((number(&it, "/here/balance_m") - 0.502).abs() < 1e-12);
}

#[test]
fn season_puts_the_advice_first_and_says_what_it_rests_on() {
    let folder = tempfile::tempdir().unwrap();
    let run = backlift()
        .current_dir(folder.path())
        .args(["season", "--size", "6", "--mass", "894g", "--units", "si", "--pressed", "2mm"])
        .args(AIRS)
        .assert()
        .success()
        .stderr("");
    let text = String::from_utf8(run.get_output().stdout.clone()).unwrap().replace('\u{2009}', " ");
    assert!(
        text.starts_with("For 0.894 kg where it will live, the scale must read 0.86"),
        "{text}"
    );
    assert!(text.lines().all(|it| it.chars().count() <= 80), "{text}");
    for said in ["assumption", "common practice, no source", "Wood Handbook", "± 0.0"] {
        assert!(text.contains(said), "{said:?} is missing in\n{text}");
    }
}

#[test]
fn wrong_airs_and_bats_are_refused_with_their_mend() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("card.ron"), CARD).unwrap();
    let bat = ["season", "--size", "6", "--mass", "894g"];
    let table: &[(&[&str], &str)] = &[
        (&["--from", "18 C, 100 %", "--to", "18 C, 50 %"], "outside 5 to 95 % humidity"),
        (&["--from", "18 C, 50 %", "--to", "70 C, 50 %"], "outside -1 to 55 °C"),
        (&["--from", "warm", "--to", "18 C, 50 %"], "18 C, 55 %"),
        (&["--from", "18 C, 50 %", "--to", "18 C, 60 %", "--pressed", "20 mm"], "--pressed"),
        (&["--from", "18 C, 50 %", "--to", "18 C, 60 %", "--days", "0"], "--days"),
        (&["--from", "18 C, 50 %", "--to", "18 C, 60 %", "--oiled", "--bare"], "--bare"),
        (&["--from", "18 C, 50 %"], "--to"),
    ];
    for (arguments, said) in table {
        let words = refused(&[&bat, *arguments].concat(), folder.path());
        assert!(words.contains(said), "{said:?} is missing in\n{words}");
    }
    let words = refused(
        &[&["season", "--size", "66", "--mass", "894g"][..], &AIRS].concat(),
        folder.path(),
    );
    assert!(words.contains("--size") && words.contains("Harrow"), "{words}");
    let words = refused(
        &[&["season", "--size", "6", "--mass", "89 kg"][..], &AIRS].concat(),
        folder.path(),
    );
    assert!(words.contains("--mass"), "{words}");
    let words =
        refused(&[&["season", "card.ron", "--mass", "1 kg"][..], &AIRS].concat(), folder.path());
    assert!(words.contains("cannot be used with"), "{words}");
}

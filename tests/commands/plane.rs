//! `backlift plane` and `pickup`, as a person and as another program use them.

use super::bats::CARD;
use super::once::ran;
use super::{backlift, refused};
use serde_json::Value;

fn figures(arguments: &[&str], folder: &std::path::Path, code: i32) -> Value {
    let run = backlift().current_dir(folder).args(arguments).arg("--json").assert().code(code);
    serde_json::from_slice(&run.get_output().stdout).unwrap()
}

const BENCH: [&str; 8] =
    ["plane", "card.ron", "--mass", "900g", "--balance", "523mm", "--time", "42.6s"];

#[test]
fn plane_tells_each_pass_with_the_reading_after_it() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("card.ron"), CARD).unwrap();
    let found = figures(&BENCH, folder.path(), 0);
    let passes = found["passes"].as_array().unwrap();
    assert!(!passes.is_empty());
    let mut before = 0.900;
    for pass in passes {
        let then = &pass["then"];
        let mass = then["mass_kg"].as_f64().unwrap();
        let grams = pass["grams"].as_f64().unwrap();
        assert!((before - mass - 1e-3 * grams).abs() < 1e-6, "{pass}");
        assert!(then["balance_m"].as_f64().is_some() && then["ten_swings_s"].as_f64().is_some());
        assert!(pass["where"].as_str().is_some_and(|it| !it.is_empty()));
        assert!(pass["overshoot_chance"].as_f64().unwrap() <= 0.05);
        before = mass;
    }
    assert_eq!(found["meets"].as_array().unwrap().len(), 3);
}

#[test]
fn what_is_on_the_bat_already_is_not_counted_again() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("card.ron"), CARD).unwrap();
    let found = figures(&BENCH, folder.path(), 0);
    let to_come = |it: &Value| it["to_come"].as_array().unwrap().len();
    assert!(to_come(&found) >= 3, "{:#}", found["to_come"]);
    let all = [&BENCH[..], &["--on", "all"]].concat();
    let run = backlift().current_dir(folder.path()).args(all).arg("--json").assert();
    let found: Value = serde_json::from_slice(&run.get_output().stdout).unwrap();
    assert_eq!(to_come(&found), 0);
}

#[test]
fn tape_to_come_is_planed_off_before_and_a_tape_off_the_bat_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("card.ron"), CARD).unwrap();
    let plain = figures(&BENCH, folder.path(), 0);
    let taped = [&BENCH[..], &["--tape", "12 g at 8 in"]].concat();
    let taped = figures(&taped, folder.path(), 0);
    let off = |it: &Value| -> f64 {
        it["passes"].as_array().unwrap().iter().map(|it| it["grams"].as_f64().unwrap()).sum()
    };
    assert!((off(&taped) - off(&plain) - 12.0).abs() < 6.0, "{} {}", off(&plain), off(&taped));
    let tape = taped["to_come"].as_array().unwrap().last().unwrap();
    assert_eq!((tape["what"].as_str(), tape["mass_kg"].as_f64()), (Some("tape"), Some(0.012)));
    // 12 g, 0.806 - 0.2032 - 0.1524 m from the pickup axis.
    let arm_m = 0.8060 - 0.2032 - 0.1524;
    let swing = tape["swing_moment_kg_m2"].as_f64().unwrap();
    assert!((swing / (0.012 * arm_m * arm_m) - 1.0).abs() < 2e-3, "{swing}");
    for wrong in ["12 g", "12 g at 3 m", "twelve at 8 in"] {
        let arguments = [&BENCH[..], &["--tape", wrong]].concat();
        let said = refused(&arguments, folder.path());
        assert!(said.contains("no tape on this bat") && said.contains("12 g at 8 in"), "{said}");
    }
}

#[test]
fn a_bat_too_light_already_is_no_answer_and_wrong_words_are_pointed_at() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("card.ron"), CARD).unwrap();
    let light = ["plane", "card.ron", "--mass", "600g", "--balance", "500mm", "--time", "42s"];
    let run = backlift().current_dir(folder.path()).args(light).assert().code(1);
    let said = String::from_utf8_lossy(&run.get_output().stderr).into_owned();
    assert!(said.contains("wood cannot go back"), "{said}");
    let said = refused(&["plane", "card.ron"], folder.path());
    assert!(said.contains("nothing was measured"), "{said}");
    let on = [&BENCH[..], &["--on", "grap"]].concat();
    let said = refused(&on, folder.path());
    assert!(said.contains("not known here"), "{said}");
}

/// The demo's pickup, with its page.
pub const PICKUP: [&str; 4] = ["pickup", "--out", "page", "--json"];

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn pickup_shows_both_pairs_and_what_an_ounce_costs_where_and_prints_a_page() {
    let run = ran(&PICKUP);
    let found = run.figures();
    let speed = |it: &Value| it["pull_at_fifty"]["bat_speed_m_s"].as_f64().unwrap();
    let number = |it: &Value, key: &str| it[key].as_f64().unwrap();
    let scale = found["same_scale"].as_array().unwrap();
    assert!((number(&scale[0], "mass_kg") - number(&scale[1], "mass_kg")).abs() < 1e-9);
    assert!(speed(&scale[0]) > speed(&scale[1]), "the one easier to move is faster late on");
    let hand = found["same_hand"].as_array().unwrap();
    let swing = |it: &Value| number(it, "swing_moment_kg_m2");
    assert!((swing(&hand[0]) / swing(&hand[1]) - 1.0).abs() < 1e-5);
    assert!(number(&hand[1], "mass_kg") > number(&hand[0], "mass_kg"));
    assert_eq!(found["schema"], "backlift/pickup/2");
    let costs = found["ounce_cost"].as_array().unwrap();
    for stroke in ["drive", "pull", "hook"] {
        let along: Vec<(f64, f64)> = costs
            .iter()
            .filter(|it| it["stroke"] == stroke)
            .map(|it| (number(it, "from_top_m"), number(it, "speed_change_m_s_per_kg")))
            .collect();
        assert!(along.len() >= 9, "{along:?}");
        assert!(along.windows(2).all(|it| it[1].0 > it[0].0 && it[1].1 < it[0].1), "{along:?}");
        assert!(number(&found["axis_above_top_m"], stroke) > 0.0, "{stroke}");
        assert!(number(&found["axis_residual_share"], stroke) < 0.1, "{stroke}");
    }
    for file in ["pickup.svg", "pickup.pdf", "pickup.png", "ounce.svg", "ounce.png"] {
        assert!(run.file("page").join(file).exists(), "{file}");
    }
}

#[test]
fn a_plan_that_leaves_edges_thinner_than_makers_leave_them_says_so_and_one_that_does_not_is_silent()
{
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("card.ron"), CARD).unwrap();
    let of = |mass: &str| {
        let read = ["plane", "card.ron", "--balance", "523mm", "--time", "42.6s", "--mass", mass];
        let run = backlift().current_dir(folder.path()).args(read).output().unwrap();
        let said = String::from_utf8(run.stdout).unwrap();
        let run = backlift().current_dir(folder.path()).args(read).arg("--json").output().unwrap();
        let found: Value = serde_json::from_slice(&run.stdout).unwrap();
        (said.split_whitespace().collect::<Vec<_>>().join(" "), found)
    };
    let thin = |it: &Value| -> Vec<[f64; 2]> {
        let passes = it["passes"].as_array().unwrap().iter();
        let edge =
            |it: &Value| Some([it["thin_edge_m"].as_f64()?, it["thin_edge_makers_m"].as_f64()?]);
        passes.filter_map(edge).collect()
    };
    let (said, found) = of("900g");
    assert!(thin(&found).is_empty() && !said.contains("thinner than makers"), "{said}");
    let (said, found) = of("980g");
    assert!(!thin(&found).is_empty());
    assert!(thin(&found).iter().all(|[edge_m, makers_m]| edge_m < makers_m), "{found:#}");
    for words in ["edges get thinner than makers of size 6 leave them", "no source"] {
        assert!(said.contains(words), "{words:?} is missing in {said}");
    }
}

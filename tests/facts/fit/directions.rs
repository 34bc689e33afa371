//! Which way the advice moves when one thing does; each says what is held.

use super::demo::{fitted, junior, pickup, today};
use backlift::worth::expected::Worth;
use std::sync::LazyLock;

/// Most pulls of twenty were in time against 102 km/h, fresh, with the bat now used: held in all of these.
const SEEN: [&str; 3] = ["seen.0.stroke=pull", "seen.0.in_time=most", "seen.0.bowling=102 km/h"];

fn with(more: &[&str]) -> f64 {
    let set: Vec<&str> = SEEN.iter().chain(more).copied().collect();
    pickup(&fitted("junior", &set))
}

/// With nothing more than what was seen.
static USUAL: LazyLock<f64> = LazyLock::new(|| with(&[]));

/// To a bat of the map next to it: nothing smaller is told apart.
const NEXT: f64 = 1.004;

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn with_what_was_seen_held_a_weaker_grip_or_a_longer_innings_never_asks_for_a_heavier_pickup() {
    let usual = *USUAL;
    for more in [&["player.grip_top=18 kg", "player.grip_bottom=20 kg"][..], &["innings.runs=100"]]
    {
        let moved = with(more);
        assert!(moved <= usual * NEXT, "{more:?}: {usual} {moved}");
    }
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn with_what_was_seen_held_a_faster_spell_never_asks_for_a_heavier_pickup() {
    let usual = *USUAL;
    let faster = with(&["bowling.speed=112 km/h"]);
    assert!(faster <= usual * NEXT, "{usual} {faster}");
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn seen_in_time_less_often_the_same_bat_is_in_time_less_often_late_on() {
    let late = |how_often: &str| {
        let in_time = format!("seen.0.in_time={how_often}");
        let it = today("junior", &["seen.0.stroke=pull", &in_time]);
        it.today.given[0].worth.as_ref().map(|it| it.chance_in_time).unwrap()
    };
    let (nearly, half) = (late("nearly all"), late("half"));
    assert!(nearly > half + 0.2, "{nearly} {half}");
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn tired_is_never_more_often_in_time_than_fresh() {
    let worths = junior().now.today.given.iter().filter_map(|it| it.worth.as_ref());
    for stroke in worths.flat_map(|it: &Worth| &it.strokes) {
        assert!(stroke.in_time_late <= stroke.in_time_fresh, "{stroke:?}");
    }
}

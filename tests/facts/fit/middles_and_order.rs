//! The three middles, and the bat to order among them.

use super::demo::{fitted, junior};
use backlift::measurement::plan::Middle;

#[test]
fn a_higher_middle_has_its_swell_further_from_the_toe() {
    let swell = |middle: Middle| {
        let row = junior().middles.iter().find(|it| it.middle == middle).unwrap();
        row.best.made.shape.swell_from_toe_m()
    };
    assert!(swell(Middle::High) > swell(Middle::Usual));
    assert!(swell(Middle::Usual) > swell(Middle::Low));
}

#[test]
fn the_bat_to_order_is_the_best_of_the_middles_and_of_a_usual_weight() {
    let it = junior();
    let own = it.recommendation.worth.mean_m_s();
    let best = it.middles.iter().map(|row| row.best.worth.mean_m_s()).fold(0.0, f64::max);
    assert_eq!(own, best);
    let [low, high] = it.one.range.size.usual_kg;
    let mass_kg = it.recommendation.made.bat.mass_kg();
    assert!((low..=high).contains(&mass_kg), "{mass_kg}");
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn a_middle_that_was_asked_for_is_the_one_that_is_ordered() {
    let low = fitted("junior", &["fit.middle=low"]);
    let row = low.middles.iter().find(|it| it.middle == Middle::Low).unwrap();
    assert_eq!(row.best.made, low.recommendation.made);
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn beyond_the_usual_weights_nothing_is_worth_less_than_inside_them() {
    let open = fitted("junior", &["fit.beyond_usual=yes"]);
    let (open, usual) = (&open.recommendation, &junior().recommendation);
    assert!(open.worth.mean_m_s() >= 0.995 * usual.worth.mean_m_s());
}

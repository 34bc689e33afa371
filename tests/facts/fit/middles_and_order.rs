//! The three middles, and the bat to order among them.

use super::demo::{fitted, junior};
use backlift::bat::makeable::MadeBat;
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
fn the_bat_to_order_is_the_best_of_the_middles_or_one_as_good_that_picks_up_lighter_and_of_a_usual_weight()
 {
    let it = junior();
    let own = it.recommendation.worth.mean_m_s();
    let best = (it.middles.iter())
        .max_by(|a, b| a.best.worth.mean_m_s().total_cmp(&b.best.worth.mean_m_s()))
        .unwrap();
    let pickup = |made: &MadeBat| made.bat.swing_moment_kg_m2();
    assert!(own >= 0.995 * best.best.worth.mean_m_s());
    assert!(pickup(&it.recommendation.made) <= pickup(&best.best.made));
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

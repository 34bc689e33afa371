//! Facts about the stage `comparison`.

mod bats;
mod published;

use approx::assert_relative_eq;
use backlift::bat::Bat;
use backlift::comparison::difference::{difference, toe_mass_kg, toe_words};
use backlift::comparison::noticeable::{Felt, MOMENT_OF_INERTIA, WEIGHT, felt};
use backlift::frames::{DMat3, DVec3};
use backlift::uncertain::Uncertain;

fn bat(length_m: f64, mass_kg: f64, balance_m: f64, com_moment_kg_m2: f64) -> Bat {
    let moments = DVec3::new(0.0012, com_moment_kg_m2, com_moment_kg_m2 + 0.001);
    Bat::new(
        "rod",
        length_m,
        mass_kg,
        DVec3::new(balance_m, 0.0, 0.0),
        DMat3::from_diagonal(moments),
    )
    .unwrap()
}

#[test]
fn a_gram_at_the_toe_is_worth_a_gram_at_the_toe() {
    let (length_m, mass_kg, balance_m, com_moment) = (0.85, 1.2, 0.53, 0.08);
    let plain = bat(length_m, mass_kg, balance_m, com_moment);
    let tape_kg = 0.035;
    // The taped bat put together by hand: common centre, both parts moved to it.
    let total_kg = mass_kg + tape_kg;
    let centre_m = (mass_kg * balance_m + tape_kg * length_m) / total_kg;
    let moment = com_moment
        + mass_kg * (centre_m - balance_m) * (centre_m - balance_m)
        + tape_kg * (length_m - centre_m) * (length_m - centre_m);
    let taped = bat(length_m, total_kg, centre_m, moment);
    let change = taped.swing_moment_kg_m2() - plain.swing_moment_kg_m2();
    assert_relative_eq!(toe_mass_kg(change, length_m), tape_kg, max_relative = 1e-12);
    assert_eq!(toe_words(change, length_m), "as if 35 g were taped to the toe");
    assert_eq!(toe_words(-change, length_m), "as if 35 g were taken off the toe");
    assert_eq!(toe_words(1e-5, length_m), "picks up the same, to the gram at the toe");
}

#[test]
fn errors_of_two_bats_that_were_weighed_apart_add() {
    let (a, b) = (Uncertain::computed(15.0, 0.8), Uncertain::computed(15.3, 0.8));
    let apart = difference(a, b);
    assert_relative_eq!(apart.sd, 0.8 * 2.0_f64.sqrt(), max_relative = 1e-12);
    assert!(!apart.real);
    assert_relative_eq!(apart.value, 0.3, max_relative = 1e-12);
    let exact = Uncertain::computed(15.0, 0.0);
    assert!(!difference(exact, exact).real, "a bat is not different from itself");
}

#[test]
fn a_difference_is_real_beyond_one_point_nine_six_standard_deviations() {
    let a = Uncertain::measured(1.0, 0.003);
    let sd = 0.003 * 2.0_f64.sqrt();
    assert!(difference(a, Uncertain::measured(1.0 + 1.97 * sd, 0.003)).real);
    assert!(!difference(a, Uncertain::measured(1.0 + 1.95 * sd, 0.003)).real);
}

/// Weight: 0.025 to 0.067 by source; moment of inertia 0.025 to 0.28, tenfold apart.
#[test]
fn published_thresholds_that_disagree_leave_the_answer_unsure_between_them() {
    assert_eq!(felt(0.02, 1.2, &WEIGHT), Felt::No);
    assert_eq!(felt(-0.05, 1.2, &WEIGHT), Felt::Unsure);
    assert_eq!(felt(0.09, 1.2, &WEIGHT), Felt::Yes);
    assert_eq!(felt(0.005, 0.25, &MOMENT_OF_INERTIA), Felt::No);
    assert_eq!(felt(-0.02, 0.25, &MOMENT_OF_INERTIA), Felt::Unsure);
    assert_eq!(felt(0.08, 0.25, &MOMENT_OF_INERTIA), Felt::Yes);
}

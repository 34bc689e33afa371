//! Size and strength of people against what was measured on people.

use crate::outside::{agrees, disagrees_only_in};
use backlift::validation::checks;

#[test]
fn published_segments_come_back() {
    agrees(&checks(), "segments");
}

#[test]
fn published_proportions_agree_within_a_standard_deviation() {
    agrees(&checks(), "proportions");
}

#[test]
fn published_growth_reference_is_met_between_whole_years_too() {
    agrees(&checks(), "growth");
}

/// Another handle, and the shoulder of one study beside the wrist of another.
#[test]
fn published_torques_of_men_agree_but_for_two_that_the_table_explains() {
    let known = [
        "adults: forearm pronation on a T-handle",
        "adults: shoulder adduction over wrist extension",
    ];
    disagrees_only_in(&checks(), "strength", &known);
}

#[test]
fn published_torques_of_boys_girls_and_women_agree() {
    agrees(&checks(), "strength by age and sex");
}

#[test]
fn published_torque_at_speed_comes_back() {
    agrees(&checks(), "torque and speed");
}

/// 30 ms for everyone; a torque raised from rest takes three times as long.
#[test]
fn published_rise_of_torque_from_rest_is_slower_than_ours_in_a_stroke() {
    disagrees_only_in(
        &checks(),
        "torque rise",
        &["men: steepest rise", "boys of 9.7: steepest rise"],
    );
}

#[test]
fn published_grips_come_back_by_age_sex_and_stature() {
    agrees(&checks(), "grip");
}

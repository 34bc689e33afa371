//! The advice by its outside checks.

use crate::outside::{agrees, disagrees_only_in};
use backlift::validation::checks;

/// A weaker boy is asked to order a pickup heavier by 0.3 %, a step of the search; 1.0 at most is asked.
/// 0.1 % was asked of the surrogate when it knew one strength. Over all strengths that may be it misses by more, where a
/// bat moves the strength at which the limit passes from one joint to another: that stays in the table.
#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn advice_moves_the_right_way_but_for_a_step_of_the_search_and_the_surrogate_misses_more_than_was_asked_for()
 {
    let known = [
        "boy of 12 a fifth weaker in both hands",
        "boy of 12: surrogate's largest error",
        "man of 25: surrogate's largest error",
    ];
    disagrees_only_in(&checks(), "advice", &known);
}

#[test]
fn published_moisture_of_wood_comes_back_at_every_point() {
    agrees(&checks(), "wood moisture");
}

#[test]
fn published_half_time_of_a_wooden_sheet_comes_back() {
    agrees(&checks(), "season");
}

//! Swings against what was measured on batters and on other implements.

use crate::outside::{agrees, disagrees_only_in};
use backlift::validation::people::checks;

/// The bottom hand pushes without a couple of its own and so needs twice the grip that was measured.
#[test]
fn published_drives_agree_but_for_the_grip_of_the_bottom_hand() {
    let known = ["men: grip of the bottom hand in that drive"];
    disagrees_only_in(&checks(), "published strokes", &known);
}

#[test]
fn where_no_stroke_was_published_the_table_says_so() {
    agrees(&checks(), "unpublished strokes");
}

/// The stride gives the drive speed that the bat does not slow.
#[test]
fn published_exponents_of_speed_on_swing_moment_agree_but_for_the_strided_drive() {
    let known = ["man of 25: exponent of drive speed on swing moment, moving the balance"];
    disagrees_only_in(&checks(), "speed and swing moment", &known);
}

#[test]
fn published_exponents_agree_for_every_stroke_with_the_hips_still() {
    agrees(&checks(), "speed and swing moment, hips still");
}

#[test]
fn a_childs_exponents_stand_in_the_table_without_a_verdict() {
    agrees(&checks(), "speed and swing moment, junior");
}

#[test]
fn published_dead_weight_at_the_same_swing_moment_hardly_matters() {
    agrees(&checks(), "dead weight");
}

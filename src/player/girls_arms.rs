//! How much weaker girls' arms are than grip and stature say.
//!
//! Torques are scaled by grip and stature, and by both girls come nearer to boys of their age than measured
//! torques of the arms do: 0.77 at 15.5 years. Whether the grip was read or taken from the table makes no
//! difference: it is the same girl.

use super::grip_by_age::expected_grip_n;
use super::growth::{interpolate, median_stature_m};
use crate::measurement::person::Sex;

/// Age in years; arm torques of girls over those of boys of that age: 0.845 SD 0.082 at 5 to 10 years, 0.647 SD
/// 0.061 at 14 to 17, each at the middle of its band, evenly between them (assumption), constant beyond.
/// Source: meta-analysis of 33 studies, 17,263 children, doi 10.51224/SRXIV.451 (preprint, read: abstract).
const OVER_BOYS: [[f64; 2]; 2] = [[7.5, 0.845], [15.5, 0.647]];

/// From this age on grip and stature alone say what a woman's arms can do, years: there they come to the last
/// figure of the children's by themselves (0.647), and later to the men over women of Axelsson et al. 2018.
const GROWN_Y: f64 = 20.0;

/// Arm torques of someone of this sex and age over what grip and stature say.
pub(super) fn share(sex: Sex, age_y: f64) -> f64 {
    if sex == Sex::Male || age_y >= GROWN_Y {
        return 1.0;
    }
    let [_, over_boys] = interpolate(&OVER_BOYS, age_y);
    let by_grip_and_stature = |sex: Sex| {
        let stature_m = median_stature_m(sex, age_y);
        expected_grip_n(sex, age_y, stature_m).value * stature_m
    };
    let said = by_grip_and_stature(Sex::Female) / by_grip_and_stature(Sex::Male);
    (over_boys / said).min(1.0)
}

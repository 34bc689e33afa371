//! Size, strength and swings of people against what was measured on people.

mod build;
mod contacts;
mod exponent;
mod grip;
mod growth;
mod one_arm;
mod strength;
mod strength_by_age;
mod strokes;
mod torque_speed;
pub(super) mod typical;

use super::Checks;

/// Half-years from 8 to 40, where curves by age are drawn.
fn ages_y() -> impl Iterator<Item = f64> {
    (16..=80).map(|half| 0.5 * f64::from(half))
}

/// Slope of y on x by least squares.
fn slope(points: &[(f64, f64)]) -> f64 {
    let count = points.len() as f64;
    let (x, y) = points.iter().fold((0.0, 0.0), |(a, b), (x, y)| (a + x / count, b + y / count));
    let (top, below) = points
        .iter()
        .fold((0.0, 0.0), |(a, b), (u, v)| (a + (u - x) * (v - y), b + (u - x) * (u - x)));
    top / below
}

pub(super) const CHECKS: Checks = &[
    ("segments", build::segments),
    ("proportions", build::proportions),
    ("growth", growth::check),
    ("strength", strength::check),
    ("strength by age and sex", strength_by_age::check),
    ("torque and speed", torque_speed::fall),
    ("torque rise", torque_speed::rise),
    ("grip", grip::check),
    ("published strokes", strokes::published),
    ("unpublished strokes", strokes::unpublished),
    ("speed and swing moment", exponent::adult),
    ("speed and swing moment, feet still", exponent::feet_still),
    ("speed and swing moment, junior", exponent::junior),
    ("good contacts", contacts::good),
    ("dead weight", exponent::dead_weight),
    ("one arm", one_arm::check),
];

//! Where a pass takes its wood: how much thinner the blade is there after it.

use crate::bat::blade::Blade;

/// How much thinner `after` is than `before`, m, at a share of the way from shoulder to toe and `u` of the way
/// from an edge (0) to the middle (1); nought where either has no wood to tell of.
pub fn thinner_m(before: &Blade, after: &Blade, from_shoulder: f64, u: f64) -> f64 {
    let thick_m = |blade: &Blade| {
        let (face_m, back_m) = blade.at(from_shoulder)?.face_and_back_m(0.0, u);
        Some(face_m - back_m)
    };
    match (thick_m(before), thick_m(after)) {
        (Some(before_m), Some(after_m)) => before_m - after_m,
        _ => 0.0,
    }
}

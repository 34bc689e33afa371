//! Which middle a blade has, by where its swell lies against the standard bat's of its size.

use crate::measurement::plan::Middle;
use crate::worth::constants::USUAL_MIDDLE;

/// The middle of a blade whose swell lies so high over the toe, where the standard bat's lies at `standard_m`.
pub fn middle_of(swell_from_toe_m: f64, standard_m: f64) -> Middle {
    match swell_from_toe_m - standard_m {
        further if further > USUAL_MIDDLE.value => Middle::High,
        nearer if nearer < -USUAL_MIDDLE.value => Middle::Low,
        _ => Middle::Usual,
    }
}

/// Lowest and highest swell of a middle over the toe, m, of those between `low_m` and `high_m`; the first is above the
/// last where none of them has it.
pub fn swells_m(middle: Middle, standard_m: f64, [low_m, high_m]: [f64; 2]) -> [f64; 2] {
    let [below_m, above_m] = [standard_m - USUAL_MIDDLE.value, standard_m + USUAL_MIDDLE.value];
    match middle {
        Middle::High => [low_m.max(above_m), high_m],
        Middle::Usual => [low_m.max(below_m), high_m.min(above_m)],
        Middle::Low => [low_m, high_m.min(below_m)],
    }
}

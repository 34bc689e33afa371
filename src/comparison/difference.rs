//! The difference of two figures with its doubt, and in words a hand understands.

use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use crate::uncertain::{Uncertain, independent_sd};

/// A difference counts as real beyond this many of its standard deviations: 1.96, so that two equal
/// bats are called different one time in twenty.
pub const REAL_BEYOND_SD: f64 = 1.96;

/// Second less first, with the doubt carried over.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Difference {
    /// Second less first, in the figure's unit.
    pub value: f64,
    /// Its standard deviation.
    pub sd: f64,
    /// Beyond [`REAL_BEYOND_SD`] standard deviations.
    pub real: bool,
}

impl Difference {
    /// A difference with its doubt.
    pub(super) fn new(value: f64, sd: f64) -> Self {
        Self { value, sd, real: value.abs() > REAL_BEYOND_SD * sd && value != 0.0 }
    }
}

/// Difference of two figures whose errors have nothing to do with each other.
pub fn difference(first: Uncertain, second: Uncertain) -> Difference {
    Difference::new(second.value - first.value, independent_sd(&[first.sd, second.sd]))
}

/// Mass at the toe that changes the swing moment by as much, kg; negative where it would have to come
/// off. `ΔI / (length − 0.1524 m)²`.
pub fn toe_mass_kg(swing_moment_change_kg_m2: f64, length_m: f64) -> f64 {
    let lever_m = length_m - PICKUP_AXIS_FROM_TOP_M;
    swing_moment_change_kg_m2 / (lever_m * lever_m)
}

/// The same in words, to the whole gram.
pub fn toe_words(swing_moment_change_kg_m2: f64, length_m: f64) -> String {
    let grams = libm::round(1000.0 * toe_mass_kg(swing_moment_change_kg_m2, length_m));
    if grams == 0.0 {
        "picks up the same, to the gram at the toe".into()
    } else if grams > 0.0 {
        format!("as if {grams} g were taped to the toe")
    } else {
        format!("as if {} g were taken off the toe", -grams)
    }
}

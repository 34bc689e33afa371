//! The difference of two figures with its doubt, and in words a hand understands.

use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use crate::uncertain::Uncertain;

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

/// Difference of two figures whose errors go together as `correlation` says (−1 to 1): two bats on one
/// scale, or swung by one player whose strength is uncertain, share most of their error, and it cancels.
///
/// `sd² = sd₁² + sd₂² − 2 ρ sd₁ sd₂`.
pub fn difference(first: Uncertain, second: Uncertain, correlation: f64) -> Difference {
    let rho = correlation.clamp(-1.0, 1.0);
    let value = second.value - first.value;
    let variance = first.sd * first.sd + second.sd * second.sd - 2.0 * rho * first.sd * second.sd;
    // Equal errors that cancel leave a rounding residue, which may be negative.
    let sd = libm::sqrt(variance.max(0.0));
    Difference { value, sd, real: value.abs() > REAL_BEYOND_SD * sd && value != 0.0 }
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

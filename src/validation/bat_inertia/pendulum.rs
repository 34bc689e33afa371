//! The formulas of the pendulum against worked figures.

use crate::bat::pendulum::{amplitude_factor, equivalent_length_m, pivot_moment_kg_m2};
use crate::validation::{Accept, CheckFault, Checked, Row};

const WORKED: &str =
    "compound pendulum with round inputs (1.2 kg, 0.40 m, 1.60 s, 9.81 m/s²), worked by two hands";
const AMPLITUDE: &str = "1/agm(1, cos θ/2), computed to nine digits";

/// Half-swing in degrees; period over that of small swings.
const AMPLITUDES: [(f64, f64); 6] = [
    (2.0, 1.000_076_16),
    (5.0, 1.000_476_172),
    (10.0, 1.001_907_188),
    (15.0, 1.004_300_579),
    (20.0, 1.007_669_026),
    (30.0, 1.017_408_798),
];
const INTEGRAL: &str = "2 K(sin 45°)/π, any table of elliptic integrals";
/// K(sin 45°), any table of elliptic integrals.
const K_OF_45_DEG: f64 = 1.854_074_677_301_372;

pub(super) fn check() -> Result<Checked, CheckFault> {
    let (m, d) = (1.2, 0.4);
    let pivot = pivot_moment_kg_m2(m, 9.81, d, 1.6);
    // Parallel axes: I = I_com + m d².
    let com = pivot - m * d * d;
    let moved = com + m * 0.25 * 0.25;
    let length = equivalent_length_m(9.81, 1.6);
    // To the printed digit.
    let worked = |what: &str, unit, expected, ours| {
        let accept = Accept::Within(5.1e-7);
        Row::compared(what, WORKED, unit, expected, ours, accept)
    };
    let mut rows = vec![
        worked("worked pendulum: moment about the pivot", "kg m²", 0.305_345, pivot),
        worked("worked pendulum: moment about the balance point", "kg m²", 0.113_345, com),
        worked("worked pendulum: moment 0.25 m from it", "kg m²", 0.188_345, moved),
        worked("worked pendulum: equivalent length", "m", 0.636_135, length),
    ];
    let largest = AMPLITUDES
        .iter()
        .map(|(degrees, factor)| (amplitude_factor(degrees.to_radians()) - factor).abs())
        .fold(0.0, f64::max);
    let what = "period of half-swings of 2° to 30° over a small one: largest error";
    rows.push(Row::compared(what, AMPLITUDE, "", 0.0, largest, Accept::Within(6e-10)));
    let what = "period of a 90° half-swing over a small one";
    let theirs = 2.0 * K_OF_45_DEG / std::f64::consts::PI;
    let ours = amplitude_factor(std::f64::consts::FRAC_PI_2);
    rows.push(Row::compared(what, INTEGRAL, "", theirs, ours, Accept::Share(1e-14)));
    Ok(rows.into())
}

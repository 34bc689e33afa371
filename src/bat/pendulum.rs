//! Pendulum test, the bat as a compound pendulum: from the time of a number of swings to the swing moment, with its
//! doubt.
//!
//! One swing is out and back, face first, so that every moment here is about an axis along y of B.

use std::f64::consts::PI;

use crate::frames::STANDARD_GRAVITY_M_S2;
use crate::measurement::bench::{
    PICKUP_AXIS_FROM_TOP_M, PIVOT_SD_M, PendulumReading, STOPWATCH_SD_S, USUAL_AMPLITUDE_RAD,
};

/// Moment of inertia of a bat about the pivot it swings from, from its small-swing period.
///
/// `I = m g d T² / 4π²`, kg m², transverse axis through the pivot; `pivot_to_com_m` is d.
/// Divide the period by [`amplitude_factor`] first: at 10° it is 0.19 % long, the result 0.38 % high.
///
/// Source: compound pendulum, any dynamics text; arrangement after ASTM F2398.
pub fn pivot_moment_kg_m2(
    mass_kg: f64,
    gravity_m_s2: f64,
    pivot_to_com_m: f64,
    small_swing_period_s: f64,
) -> f64 {
    mass_kg * equivalent_length_m(gravity_m_s2, small_swing_period_s) * pivot_to_com_m
}

/// Length of the simple pendulum with the same period, m: `g T² / 4π²`. It is also the distance from
/// the pivot to its centre of percussion.
pub fn equivalent_length_m(gravity_m_s2: f64, small_swing_period_s: f64) -> f64 {
    gravity_m_s2 * small_swing_period_s * small_swing_period_s / (4.0 * PI * PI)
}

/// Factor by which a half-swing of `amplitude_rad` lengthens the period:
/// `T/T₀ = 1 / agm(1, cos(θ/2))`, exact. Range: 0 to below π.
///
/// Source: the complete elliptic integral by Gauss's arithmetic–geometric mean, any text on it.
pub fn amplitude_factor(amplitude_rad: f64) -> f64 {
    let (mut a, mut g) = (1.0, libm::cos(0.5 * amplitude_rad));
    // The mean converges quadratically: five rounds are below rounding for any swing under 170°.
    for _ in 0..6 {
        (a, g) = (0.5 * (a + g), libm::sqrt(a * g));
    }
    1.0 / a
}

/// A swing moment with what moves it, so that doubt in mass and balance can be carried on jointly.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SwingMoment {
    /// Moment of inertia about the transverse axis through the pickup axis, kg m².
    pub value_kg_m2: f64,
    /// Change for each kilogram of dead weight at the same balance, m².
    pub per_mass_m2: f64,
    /// Change for each metre by which the balance point lies nearer the toe, kg m.
    pub per_balance_kg_m: f64,
    /// One standard deviation from everything but mass and balance, kg m².
    pub own_sd_kg_m2: f64,
}

impl SwingMoment {
    /// One standard deviation from all causes together, kg m², given those of mass and balance.
    pub fn sd_kg_m2(&self, mass_sd_kg: f64, balance_sd_m: f64) -> f64 {
        crate::uncertain::independent_sd(&[
            self.per_mass_m2 * mass_sd_kg,
            self.per_balance_kg_m * balance_sd_m,
            self.own_sd_kg_m2,
        ])
    }
}

/// Period of one small swing, s: the time shared out over the swings, freed of the amplitude.
pub fn small_swing_period_s(reading: &PendulumReading) -> f64 {
    reading.time_s / f64::from(reading.swings) / amplitude_factor(reading.amplitude_rad)
}

/// Swing moment from a pendulum test: moment about the pivot, moved to the pickup axis over the
/// centre of mass. With D from pivot to balance, s from pickup axis to balance and k the
/// [`equivalent_length_m`]: `I = m (k D − D² + s²)`.
///
/// Doubt of watch and pivot (see [`crate::measurement::bench`]) goes to first order into `own_sd_kg_m2`;
/// the count is taken as sure, and the doubt of the amplitude (0.1 % of the result for a quarter of 10°)
/// is left out. So is a rod that rolls ([`lost_to_roll_kg_m2`]), some 0.6 % on a rod of 3 mm: how thick it is and
/// whether it rolls is not asked, and the stated doubt holds the truth with such rods too (`validate --only "pendulum
/// bench"` draws them).
pub fn swing_moment(mass_kg: f64, balance_m: f64, reading: &PendulumReading) -> SwingMoment {
    let pivot_to_com_m = balance_m - reading.pivot_from_top_m;
    let pickup_to_com_m = balance_m - PICKUP_AXIS_FROM_TOP_M;
    let k = equivalent_length_m(STANDARD_GRAVITY_M_S2, small_swing_period_s(reading));
    let per_mass_m2 =
        k * pivot_to_com_m - pivot_to_com_m * pivot_to_com_m + pickup_to_com_m * pickup_to_com_m;
    let per_time = mass_kg * pivot_to_com_m * 2.0 * k / reading.time_s;
    let per_pivot = mass_kg * (2.0 * pivot_to_com_m - k);
    SwingMoment {
        value_kg_m2: mass_kg * per_mass_m2,
        per_mass_m2,
        per_balance_kg_m: mass_kg * (k - 2.0 * pivot_to_com_m + 2.0 * pickup_to_com_m),
        own_sd_kg_m2: crate::uncertain::independent_sd(&[
            per_time * STOPWATCH_SD_S,
            per_pivot * PIVOT_SD_M,
        ]),
    }
}

/// By how much [`swing_moment`] comes out too small on a round rod of this radius that rolls freely, kg m².
///
/// The bat turns about the line on which the rod touches its support, a radius r below the rod's centre, so that its
/// energy is that of `I_com + m (D − r)²`; the weight still pulls it back about the centre, which stays level:
/// `T² = 4π² (I_com + m (D − r)²) / (m g D)`. The formula takes `m D²` away where there is only `m (D − r)²`: it is
/// short by `m (2 D r − r²)`, for small swings. Derived here.
pub fn lost_to_roll_kg_m2(mass_kg: f64, pivot_to_com_m: f64, rod_radius_m: f64) -> f64 {
    mass_kg * rod_radius_m * (2.0 * pivot_to_com_m - rod_radius_m)
}

/// Time of `swings` swings of the given amplitude for a bat whose swing moment is known, s: what a
/// maker's watch must show. `None` when the pivot does not lie above the balance point.
pub fn time_for_swings_s(
    mass_kg: f64,
    balance_m: f64,
    swing_moment_kg_m2: f64,
    swings: u32,
    pivot_from_top_m: f64,
    amplitude_rad: f64,
) -> Option<f64> {
    let pivot_to_com_m = balance_m - pivot_from_top_m;
    let pickup_to_com_m = balance_m - PICKUP_AXIS_FROM_TOP_M;
    let pivot_moment_kg_m2 = swing_moment_kg_m2
        + mass_kg * (pivot_to_com_m * pivot_to_com_m - pickup_to_com_m * pickup_to_com_m);
    let ratio = pivot_moment_kg_m2 / (mass_kg * STANDARD_GRAVITY_M_S2 * pivot_to_com_m);
    (pivot_to_com_m > 0.0 && ratio > 0.0)
        .then(|| f64::from(swings) * 2.0 * PI * libm::sqrt(ratio) * amplitude_factor(amplitude_rad))
}

/// The same of swings about the pickup axis with the amplitude that the bench is told to use.
pub fn usual_swings_s(
    mass_kg: f64,
    balance_m: f64,
    swing_moment_kg_m2: f64,
    swings: u32,
) -> Option<f64> {
    let (pivot_m, amplitude_rad) = (PICKUP_AXIS_FROM_TOP_M, USUAL_AMPLITUDE_RAD);
    time_for_swings_s(mass_kg, balance_m, swing_moment_kg_m2, swings, pivot_m, amplitude_rad)
}

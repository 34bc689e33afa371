//! How fast a blade follows its air.
//!
//! Water creeps across the grain by diffusion, from face and back; along the grain it is quicker, but only
//! the toe is open there. The blade is taken as a slab of its mean thickness.

use std::f64::consts::PI;

use crate::bat::shape::BatShape;

/// Diffusion of water in wood across the grain, m²/s, near 10 % of moisture and room temperature.
/// Assumption: the order of magnitude that general pages give (1e-6 cm²/s); it grows several times with
/// moisture (eightfold from 2.5 to 18 % in aspen, Simpson, Wood and Fiber, abstract read), so a willow
/// blade may well be off by [`DIFFUSION_FACTOR`] either way.
pub const DIFFUSION_M2_S: f64 = 1e-10;
/// The factor by which [`DIFFUSION_M2_S`] may be off either way, one standard deviation. Assumption.
pub const DIFFUSION_FACTOR: f64 = 2.5;

/// Share of the bare wood's uptake that three coats of linseed oil keep out, by days.
///
/// Source: Wood Handbook, FPL-GTR-190 (2010), ch. 16, Table 16-3: linseed oil, three coats, ponderosa pine, 30 to 90 %,
/// read second-hand.
pub const OIL_KEEPS_OUT: [(f64, f64); 3] = [(1.0, 0.33), (7.0, 0.02), (14.0, 0.0)];

/// Seconds in a day.
pub const DAY_S: f64 = 86_400.0;

/// Mean thickness of a blade, m: its volume over the area of its face seen from the front.
pub fn mean_thickness_m(shape: &BatShape) -> f64 {
    shape.blade.volume_m3() / shape.blade.face_m2()
}

/// Time constant of the last, slowest part of the way, s: `L²/(π² D)`.
pub fn time_constant_s(thickness_m: f64, diffusion_m2_s: f64) -> f64 {
    thickness_m * thickness_m / (PI * PI * diffusion_m2_s)
}

/// Share of the way to the new equilibrium that bare wood has gone: a slab open on both faces,
/// `1 − 8/π² Σ exp(−(2n+1)² t/τ)/(2n+1)²`.
///
/// Source: Crank, The Mathematics of Diffusion (1956), plane sheet (from memory; a test holds it against the
/// law of the root of time, which is exact at the start).
pub fn bare_share(time_s: f64, time_constant_s: f64) -> f64 {
    let scaled = time_s / time_constant_s;
    if scaled <= 0.0 {
        return 0.0;
    }
    // Below this the root of time is exact to 1e-10, and the series would need hundreds of terms.
    if scaled < 0.05 {
        return 4.0 * libm::sqrt(scaled / PI) / PI;
    }
    let left: f64 = (0..40)
        .map(|n| {
            let odd = f64::from(2 * n + 1);
            libm::exp(-odd * odd * scaled) / (odd * odd)
        })
        .sum();
    1.0 - 8.0 / (PI * PI) * left
}

/// Share of the bare wood's uptake that oil keeps out at this age: through the published points, straight in
/// its logarithm up to the second, to nothing at the third.
pub fn oil_keeps_out(time_s: f64) -> f64 {
    let [(first, at_first), (second, at_second), (third, _)] = OIL_KEEPS_OUT;
    let days = time_s / DAY_S;
    if days <= second {
        let along = (days - first) / (second - first);
        at_first * libm::pow(at_second / at_first, along)
    } else {
        at_second * ((third - days) / (third - second)).max(0.0)
    }
}

/// Share of the way that a bat has gone, bare or oiled.
pub fn share(time_s: f64, time_constant_s: f64, oiled: bool) -> f64 {
    let kept_out = if oiled { oil_keeps_out(time_s) } else { 0.0 };
    bare_share(time_s, time_constant_s) * (1.0 - kept_out)
}

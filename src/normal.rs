//! The standard normal distribution.

use core::f64::consts::{FRAC_1_SQRT_2, PI};

/// Value below which a standard normal lies with probability `p`; minus and plus infinity at 0 and 1.
///
/// Start: Abramowitz & Stegun 26.2.23 (error below 4.5e-4), from memory (high); then Newton's method
/// on the exact integral.
pub fn quantile(p: f64) -> f64 {
    let tail = p.min(1.0 - p);
    if tail <= 0.0 {
        return f64::INFINITY.copysign(p - 0.5);
    }
    let t = libm::sqrt(-2.0 * libm::log(tail));
    let top = 2.515_517 + t * (0.802_853 + t * 0.010_328);
    let bottom = 1.0 + t * (1.432_788 + t * (0.189_269 + t * 0.001_308));
    let mut x = t - top / bottom;
    for _ in 0..2 {
        let density = libm::exp(-0.5 * x * x) / libm::sqrt(2.0 * PI);
        x += (0.5 * libm::erfc(x * FRAC_1_SQRT_2) - tail) / density;
    }
    if p < 0.5 { -x } else { x }
}

/// Probability that a standard normal lies below `x`.
pub fn below(x: f64) -> f64 {
    0.5 * libm::erfc(-x * FRAC_1_SQRT_2)
}

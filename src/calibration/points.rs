//! Points spread evenly over a normal distribution, without chance.

use core::f64::consts::{FRAC_1_SQRT_2, PI};

/// The `i`-th number of the van der Corput sequence in a prime base, in 0 to 1 (i from 1). Several
/// primes together are Halton's sequence. Source: Halton 1960, Numer Math 2:84, from memory (high).
fn radical_inverse(mut i: usize, base: usize) -> f64 {
    let (mut place, mut sum) = (1.0, 0.0);
    while i > 0 {
        place /= base as f64;
        sum += place * (i % base) as f64;
        i /= base;
    }
    sum
}

/// Value below which a standard normal lies with probability `p`.
///
/// Start: Abramowitz & Stegun 26.2.23 (error below 4.5e-4), from memory (high); then Newton's method
/// on the exact integral.
pub fn normal_quantile(p: f64) -> f64 {
    let tail = p.min(1.0 - p).max(1e-300);
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
pub fn normal_below(x: f64) -> f64 {
    0.5 * libm::erfc(-x * FRAC_1_SQRT_2)
}

/// Bases of Halton's sequence.
const BASES: [usize; 4] = [2, 3, 5, 7];

/// The `i`-th of evenly spread points of the unit cube (i from 0).
pub fn even_point(i: usize) -> [f64; 4] {
    // The first points lie on a line through the cube; they are left out.
    BASES.map(|base| radical_inverse(i + 20, base))
}

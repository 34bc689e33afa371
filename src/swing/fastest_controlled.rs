//! The fastest controlled swing: the shortest stroke time whose contact stays inside the tolerances.

use super::contact::Contact;
use super::run::Swinger;

/// The fastest controlled swing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fastest {
    /// Shortest stroke time with the contact error at its limit, s.
    pub stroke_time_s: f64,
    /// The swing at that time.
    pub contact: Contact,
    /// Swings simulated to find it.
    pub swings: usize,
}

/// Why there is none.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[error(
    "this player cannot bring this bat to the ball under control in any stroke time up to {longest_s:.1} s"
)]
pub struct NoControlledSwing {
    /// Longest stroke time tried, s.
    pub longest_s: f64,
}

/// Ratio by which stroke times are stepped while bracketing.
const STEP: f64 = 1.05;
/// Longest stroke time tried, s.
const LONGEST_S: f64 = 1.6;
/// Shortest stroke time tried, s.
const SHORTEST_S: f64 = 0.08;
/// Change of the stroke time, as a logarithm, that is sure to change the logarithm of the error by one:
/// its steepness lies between 4 and 30.
const REACH: f64 = 0.2;
/// Shortest and longest stride while bracketing near the answer, as logarithms.
const SHORTEST_STRIDE: f64 = 0.002;
const LONGEST_STRIDE: f64 = 0.08;
/// Bracket at which the search stops, as a share of the stroke time. Tight, so that where the search
/// started leaves no trace in the result.
const CONVERGED: f64 = 1e-8;
/// Logarithm of the error that counts as nought.
const SMALL: f64 = 1e-8;

/// Searches from slow to fast: steps of `STEP` until the error passes its limit, then Brent's method on
/// the logarithm of the error.
///
/// With `near`, the guess is close to the answer: the bracket is found by the usual steepness of
/// the error instead of by steps, in either direction.
pub fn fastest_controlled(
    swinger: &Swinger<'_>,
    guess_s: f64,
    near: bool,
) -> Result<Fastest, NoControlledSwing> {
    let mut swings = 0;
    let mut error = |t: f64| {
        swings += 1;
        let contact = swinger.swing(t, None);
        (libm::log(contact.error.max(f64::MIN_POSITIVE)), contact)
    };
    // How far to go from a swing with this error to be beyond the limit, as a factor.
    let stride = |error: f64, tries: i32| {
        if near {
            libm::exp((error.abs() * REACH).clamp(SHORTEST_STRIDE, LONGEST_STRIDE))
                * libm::pow(1.01, f64::from(tries * tries))
        } else if error > 1.0 {
            1.12
        } else {
            STEP
        }
    };
    let mut tries = 0;
    let mut slow = guess_s;
    let mut at_slow = error(slow);
    let mut beyond = None;
    while at_slow.0 > 0.0 {
        beyond = Some((slow, at_slow));
        slow *= stride(at_slow.0, tries);
        tries += 1;
        if slow > LONGEST_S {
            return Err(NoControlledSwing { longest_s: LONGEST_S });
        }
        at_slow = error(slow);
    }
    let (fast, at_fast) = match beyond {
        Some(it) => it,
        None => loop {
            let fast = slow / stride(at_slow.0, tries);
            tries += 1;
            if fast < SHORTEST_S {
                return Ok(Fastest { stroke_time_s: slow, contact: at_slow.1, swings });
            }
            let at_fast = error(fast);
            if at_fast.0 > 0.0 {
                break (fast, at_fast);
            }
            (slow, at_slow) = (fast, at_fast);
        },
    };
    // Brent's method: inverse quadratic interpolation inside the bracket, bisection where it fails.
    let (mut b, mut f_b, mut hit) = (slow, at_slow.0, at_slow.1);
    let (mut a, mut f_a) = (fast, at_fast.0);
    let (mut c, mut f_c) = (a, f_a);
    let (mut last, mut before_last) = (b - a, b - a);
    if f_a.abs() < f_b.abs() {
        (a, b, c) = (b, a, b);
        (f_a, f_b, f_c) = (f_b, f_a, f_b);
        hit = at_fast.1;
    }
    for _ in 0..60 {
        if f_b.signum() == f_c.signum() {
            (c, f_c) = (a, f_a);
            (last, before_last) = (b - a, b - a);
        }
        if f_c.abs() < f_b.abs() {
            (a, b, c) = (b, c, b);
            (f_a, f_b, f_c) = (f_b, f_c, f_b);
        }
        let half = 0.5 * (c - b);
        let width = CONVERGED * b;
        if half.abs() < width || f_b.abs() < SMALL {
            break;
        }
        if before_last.abs() > width && f_a.abs() > f_b.abs() {
            let s = f_b / f_a;
            let (mut p, mut q) = if a == c {
                (2.0 * half * s, 1.0 - s)
            } else {
                let (q, r) = (f_a / f_c, f_b / f_c);
                (
                    s * (2.0 * half * q * (q - r) - (b - a) * (r - 1.0)),
                    (q - 1.0) * (r - 1.0) * (s - 1.0),
                )
            };
            if p > 0.0 {
                q = -q;
            }
            p = p.abs();
            if 2.0 * p < (3.0 * half * q - (width * q).abs()).min((before_last * q).abs()) {
                (before_last, last) = (last, p / q);
            } else {
                (before_last, last) = (half, half);
            }
        } else {
            (before_last, last) = (half, half);
        }
        (a, f_a) = (b, f_b);
        b += if last.abs() > width { last } else { width.copysign(half) };
        (f_b, hit) = error(b);
    }
    if hit.stroke_time_s != b {
        hit = error(b).1;
    }
    Ok(Fastest { stroke_time_s: b, contact: hit, swings })
}

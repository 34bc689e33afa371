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
/// Bracket at which the search stops, as a share of the stroke time. Tight, so that where the search
/// started leaves no trace in the result.
const CONVERGED: f64 = 1e-9;

/// Searches from slow to fast, starting near `guess_s`.
///
/// Above the limit the error falls steadily with the stroke time, so the search widens from the
/// guess until it has one controlled and one uncontrolled swing, then closes in on the logarithm of
/// the error by a bracketed secant (Illinois).
pub fn fastest_controlled(
    swinger: &Swinger<'_>,
    guess_s: f64,
    step: Option<f64>,
) -> Result<Fastest, NoControlledSwing> {
    let step = step.unwrap_or(STEP);
    let mut swings = 0;
    let mut error = |t: f64| {
        swings += 1;
        let contact = swinger.swing(t, None);
        (libm::log(contact.error), contact)
    };
    let mut slow = guess_s;
    let mut at_slow = error(slow);
    while at_slow.0 > 0.0 {
        slow *= if at_slow.0 > 1.0 { 1.12_f64.max(step) } else { step };
        if slow > LONGEST_S {
            return Err(NoControlledSwing { longest_s: LONGEST_S });
        }
        at_slow = error(slow);
    }
    let mut fast = slow / step;
    let mut at_fast = error(fast);
    while at_fast.0 <= 0.0 {
        (slow, at_slow) = (fast, at_fast);
        fast = slow / step;
        if fast < SHORTEST_S {
            return Ok(Fastest { stroke_time_s: slow, contact: at_slow.1, swings });
        }
        at_fast = error(fast);
    }
    let (mut f_slow, mut f_fast) = (at_slow.0, at_fast.0);
    let mut side = 0;
    for _ in 0..40 {
        if (slow - fast) < CONVERGED * slow || at_slow.0.abs() < 1e-11 {
            break;
        }
        let t = (fast * f_slow - slow * f_fast) / (f_slow - f_fast);
        let edge = 1e-4 * (slow - fast);
        let t = t.clamp(fast + edge, slow - edge);
        let at = error(t);
        if at.0 > 0.0 {
            (fast, f_fast) = (t, at.0);
            if side == 1 {
                f_slow *= 0.5;
            }
            side = 1;
            if at.0 < 1e-11 {
                (slow, at_slow) = (t, at);
                break;
            }
        } else {
            (slow, f_slow, at_slow) = (t, at.0, at);
            if side == -1 {
                f_fast *= 0.5;
            }
            side = -1;
        }
    }
    Ok(Fastest { stroke_time_s: slow, contact: at_slow.1, swings })
}

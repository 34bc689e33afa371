//! The fastest controlled swing: the shortest stroke time whose contact stays inside the tolerances.
//!
//! A stroke is a fixed path scaled in time. The contact error is the root of the sum of squares of place/25 mm, face/4°
//! and line/5° where the bat crosses the plane through the planned contact, so that being late is not being off. It
//! grows as the time shrinks; the answer is where it is 1, found to 1e-8 of the time, so that where the search began
//! leaves no trace. There some joint is spent by construction: shares of capacity are compared at the *asked* time
//! instead, 1.15 × the fresh fastest with the size's reference bat.

use super::contact::Contact;
use super::root::Root;
use super::swinger::Swinger;

/// Why there is none.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[error(
    "this player cannot bring this bat to the ball under control in any stroke time up to {:.1} s",
    LONGEST_S
)]
pub struct NoControlledSwing;

/// Ratio by which stroke times are stepped from afar.
const STEP: f64 = 1.05;
/// The same while the error is far beyond its limit.
const LONG_STEP: f64 = 1.12;
/// Longest stroke time tried, s.
const LONGEST_S: f64 = 1.6;
/// Shortest stroke time tried, s.
const SHORTEST_S: f64 = 0.08;

/// Searches from slow to fast: steps of `STEP` until the error passes its limit, then for the root of
/// the logarithm of the error in the logarithm of the time.
///
/// With `near`, the guess is close to the answer and the root is sought from there at once.
pub fn fastest_controlled(
    swinger: &Swinger<'_>,
    guess_s: f64,
    near: bool,
) -> Result<Contact, NoControlledSwing> {
    let (shortest, longest) = (libm::log(SHORTEST_S), libm::log(LONGEST_S));
    let mut root = Root::default();
    let mut at = libm::log(guess_s);
    for _ in 0..MOST_SWINGS {
        let contact = swinger.swing(libm::exp(at), None);
        let error = libm::log(contact.error.max(f64::MIN_POSITIVE));
        root.saw(at, error);
        // The search ends with a swing whose error is at the limit, or whose time at the end of those tried.
        let next = if near || root.is_bracketed() {
            match root.next() {
                Some(next) => next,
                None => return Ok(contact),
            }
        } else if error > 0.0 {
            at + libm::log(if error > 1.0 { LONG_STEP } else { STEP })
        } else {
            at - libm::log(STEP)
        };
        if next > longest {
            return Err(NoControlledSwing);
        }
        if next < shortest {
            return Ok(contact);
        }
        at = next;
    }
    Err(NoControlledSwing)
}

/// More than any search needs: halving alone would be done.
const MOST_SWINGS: usize = 120;

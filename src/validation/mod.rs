//! How far the figures may be trusted: every outside check, one table.
//!
//! A [`Row`] holds an outside figure, ours, the difference and a verdict; the acceptance is written where
//! the check is and is never moved to make a row agree. `backlift validate` prints the rows, the tests of
//! `tests/facts/` ask the same functions.

mod accept;
pub mod bat_inertia;
mod chance;
mod check;
pub mod collision;
mod counted;
mod curve;
pub mod dynamics;
pub mod fatigue;
pub mod fitting;
pub mod people;
mod row;

pub use accept::Accept;
pub use check::{Check, CheckFault};
pub use counted::counted;
pub use curve::{Curve, Reading};
pub use row::{Checked, Group, Row, Verdict};

/// Every check, group by group.
pub fn checks() -> Vec<Check> {
    [
        dynamics::checks(),
        bat_inertia::checks(),
        people::checks(),
        fatigue::checks(),
        collision::checks(),
        fitting::checks(),
    ]
    .concat()
}

/// Checks that take more than some seconds, by name.
const SLOW: [&str; 4] = ["drawn chains finely", "pendulum bench", "one arm", "advice"];

/// Whether `validate --quick` asks a check.
pub fn is_quick(check: &Check) -> bool {
    !SLOW.contains(&check.name)
}

/// The greater, and not a number if either is not: a miss that is not a number agrees with nothing.
fn worse(a: f64, b: f64) -> f64 {
    if a.is_nan() || b.is_nan() { f64::NAN } else { a.max(b) }
}

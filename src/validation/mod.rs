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
mod curve;
pub mod fatigue;
pub mod fitting;
pub mod people;
mod row;

pub use accept::Accept;
pub use check::{Check, CheckFault};
pub use curve::{Curve, Reading};
pub use row::{Checked, Group, Row, Verdict};

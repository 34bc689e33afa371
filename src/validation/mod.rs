//! How far the figures may be trusted: every outside check, one table.
//!
//! A [`Row`] holds an outside figure, ours, the difference and a verdict; the acceptance is written where
//! the check is and is never moved to make a row agree. `backlift validate` prints the rows, the tests of
//! `tests/facts/` ask the same functions.

mod accept;
mod bat_inertia;
mod collision;
mod curve;
pub mod dynamics;
mod fatigue;
mod fitting;
mod people;
mod row;

pub use accept::Accept;
use curve::readings;
pub use curve::{Curve, Reading};
pub use row::{Checked, Expected, Group, Row, Verdict};

/// What kept a check from running; never a disagreement, which is a row.
pub type CheckFault = Box<dyn std::error::Error + Send + Sync>;

type Run = fn() -> Result<Checked, CheckFault>;
type Checks = &'static [(&'static str, Run)];

/// One check: a few rows that need the same computation.
#[derive(Clone, Copy, Debug)]
pub struct Check {
    /// Short name, for `--only` and progress.
    pub name: &'static str,
    /// What it and every row of it is about.
    pub group: Group,
    /// Computes ours and compares; deterministic, the same on one thread or many.
    pub run: Run,
}

/// The checks of every group by name, in the order of the report.
const GROUPS: [(Group, Checks); 6] = [
    (Group::Dynamics, dynamics::CHECKS),
    (Group::BatInertia, bat_inertia::CHECKS),
    (Group::People, people::CHECKS),
    (Group::Fatigue, fatigue::CHECKS),
    (Group::Collision, collision::CHECKS),
    (Group::Fitting, fitting::CHECKS),
];

/// Every check, group by group.
pub fn checks() -> Vec<Check> {
    let of = |(group, checks): (Group, Checks)| {
        checks.iter().map(move |&(name, run)| Check { name, group, run })
    };
    GROUPS.into_iter().flat_map(of).collect()
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

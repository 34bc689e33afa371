//! A check by name: what `validate` runs and the tests ask.

use super::{Checked, Group};

/// What kept a check from running; never a disagreement, which is a row.
pub type CheckFault = Box<dyn std::error::Error + Send + Sync>;

/// One check: a few rows that need the same computation.
#[derive(Clone, Copy, Debug)]
pub struct Check {
    /// Short name, for `--only` and progress.
    pub name: &'static str,
    /// What it is about.
    pub group: Group,
    /// Computes ours and compares; deterministic, the same on one thread or many.
    pub run: fn() -> Result<Checked, CheckFault>,
}

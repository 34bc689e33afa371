//! The outside checks run side by side, their rows collected in order.

use core::sync::atomic::{AtomicUsize, Ordering};
use std::panic::{AssertUnwindSafe, catch_unwind};

use rayon::prelude::*;

use super::{Progress, Stop};
use crate::validation::{Check, Checked, Curve, Group, Row, Verdict};

/// What one check found.
#[derive(Clone, Debug)]
pub struct Answer {
    /// Its name.
    pub check: &'static str,
    /// What it is about.
    pub group: Group,
    /// Its rows and plots.
    pub found: Checked,
}

/// What all of them found, in the order of the groups.
#[derive(Clone, Debug)]
pub struct Validated {
    /// The checks.
    pub answers: Vec<Answer>,
}

impl Validated {
    /// The groups that were asked about.
    pub fn groups(&self) -> Vec<Group> {
        let mut groups: Vec<Group> = self.answers.iter().map(|it| it.group).collect();
        groups.dedup();
        groups
    }

    /// The rows, each with its check; of one group, or all.
    pub fn rows(&self, group: Option<Group>) -> impl Iterator<Item = (&Answer, &Row)> {
        let asked = move |it: &&Answer| group.is_none_or(|group| it.group == group);
        let answers = self.answers.iter().filter(asked);
        answers.flat_map(|it| it.found.rows.iter().map(move |row| (it, row)))
    }

    /// The rows that disagree.
    pub fn disagreements(&self, group: Option<Group>) -> impl Iterator<Item = (&Answer, &Row)> {
        self.rows(group).filter(|(_, row)| row.verdict == Verdict::Disagrees)
    }

    /// How many rows have that verdict.
    pub fn count(&self, group: Option<Group>, verdict: Verdict) -> usize {
        self.rows(group).filter(|(_, row)| row.verdict == verdict).count()
    }

    /// The plots, each with its group.
    pub fn curves(&self) -> impl Iterator<Item = (Group, &Curve)> {
        self.answers.iter().flat_map(|it| it.found.curves.iter().map(|curve| (it.group, curve)))
    }
}

/// Runs the checks on all cores.
///
/// # Errors
/// If one of them cannot be made, or the work is cancelled.
pub fn validated(checks: &[Check], progress: &dyn Progress) -> Result<Validated, Stop> {
    let begun = AtomicUsize::new(0);
    let answer = |check: &Check| {
        let share = begun.fetch_add(1, Ordering::Relaxed) as f64 / checks.len() as f64;
        progress.step(check.name, share)?;
        let broken = |how: &str| Stop::OurMistake(format!("the check \"{}\" {how}", check.name));
        // Which check broke off must be told.
        let found = catch_unwind(AssertUnwindSafe(|| (check.run)()))
            .map_err(|_| broken("broke off"))?
            .map_err(|fault| broken(&format!("could not be made: {fault}")))?;
        Ok(Answer { check: check.name, group: check.group, found })
    };
    let mut answers =
        checks.par_iter().with_max_len(1).map(answer).collect::<Result<Vec<_>, Stop>>()?;
    answers.sort_by_key(|it| it.group);
    Ok(Validated { answers })
}

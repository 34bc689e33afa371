//! The checks run side by side, their rows collected in order.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::mpsc::{RecvTimeoutError, channel};
use std::time::Duration;

use backlift::validation::{Check, CheckFault, Checked, Curve, Group, Row, Verdict};

use crate::outcome::Stop;
use crate::progress::Progress;

/// What one check found.
pub struct Answer {
    /// Its name.
    pub check: &'static str,
    /// What it is about.
    pub group: Group,
    /// Its rows and plots.
    pub found: Checked,
}

/// What all of them found, in the order of the groups.
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

    /// The rows, each with the name of its check; of one group, or all.
    pub fn rows(&self, group: Option<Group>) -> impl Iterator<Item = (&'static str, &Row)> {
        let asked = move |it: &&Answer| group.is_none_or(|group| it.group == group);
        self.answers
            .iter()
            .filter(asked)
            .flat_map(|it| it.found.rows.iter().map(|row| (it.check, row)))
    }

    /// The rows that disagree.
    pub fn disagreements(
        &self,
        group: Option<Group>,
    ) -> impl Iterator<Item = (&'static str, &Row)> {
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

/// How often Ctrl-C is asked about.
const GLANCE: Duration = Duration::from_millis(100);

/// Runs the checks on all cores. Ctrl-C is heard at once: what still runs ends with the program.
pub fn validated(checks: &[Check], progress: &Progress) -> Result<Validated, Stop> {
    let (send, receive) = channel();
    for (place, check) in checks.iter().copied().enumerate() {
        let send = send.clone();
        rayon::spawn(move || {
            // A check that panics must be told of, and nobody is left to hear if this fails.
            let found = catch_unwind(AssertUnwindSafe(|| (check.run)()));
            let _ = send.send((place, found));
        });
    }
    drop(send);
    let mut found: Vec<Option<Checked>> = vec![None; checks.len()];
    let mut waiting: Vec<&str> = checks.iter().map(|it| it.name).collect();
    while !waiting.is_empty() {
        let share = 1.0 - waiting.len() as f64 / checks.len() as f64;
        let doing = waiting.first().map_or("", |it| *it);
        progress.step(doing, share)?;
        let (place, result) = match receive.recv_timeout(GLANCE) {
            Ok(it) => it,
            Err(RecvTimeoutError::Timeout) => continue,
            Err(RecvTimeoutError::Disconnected) => break,
        };
        let Some(check) = checks.get(place) else { continue };
        waiting.retain(|it| *it != check.name);
        if let Some(slot) = found.get_mut(place) {
            *slot = Some(answered(check, result)?);
        }
    }
    let mut answers = Vec::new();
    for (check, found) in checks.iter().zip(found) {
        let found = found.ok_or_else(|| broken(check, "gave no answer"))?;
        answers.push(Answer { check: check.name, group: check.group, found });
    }
    answers.sort_by_key(|it| it.group);
    Ok(Validated { answers })
}

fn answered(
    check: &Check,
    result: std::thread::Result<Result<Checked, CheckFault>>,
) -> Result<Checked, Stop> {
    match result {
        Ok(Ok(found)) => Ok(found),
        Ok(Err(fault)) => Err(broken(check, &format!("could not be made: {fault}"))),
        Err(_) => Err(broken(check, "broke off")),
    }
}

fn broken(check: &Check, how: &str) -> Stop {
    Stop::OurMistake(format!("the check \"{}\" {how}", check.name))
}

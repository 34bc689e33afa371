//! The coach's way on the bench: a step at a time from who bats to the answer.

use backlift::files::document::TextFile;
use backlift::files::scenario::{BatV1, ScenarioV1};

use super::action::Step;
use super::state::Studio;

impl Step {
    pub const ALL: [Self; 4] = [Self::Who, Self::Bats, Self::Seen, Self::Answer];

    pub fn name(self) -> &'static str {
        match self {
            Self::Who => "Who",
            Self::Bats => "Which bats",
            Self::Seen => "What was seen",
            Self::Answer => "The answer",
        }
    }

    /// The step so many further on.
    pub fn then(self, by: isize) -> Option<Self> {
        let now = Self::ALL.iter().position(|it| *it == self)?;
        Self::ALL.get(now.checked_add_signed(by)?).copied()
    }
}

/// Fields of the player without which nothing can be said.
const NEEDED: [&str; 3] = ["player.age", "player.sex", "player.stature"];

impl Studio {
    /// Fields that this step still needs, by their paths.
    pub fn needed(&self, step: Step) -> Vec<String> {
        let paths: Vec<String> = match step {
            Step::Who => NEEDED.map(str::to_owned).into(),
            Step::Bats => {
                let bats = 0..self.document.bat_count();
                let begun: Vec<usize> =
                    bats.filter(|bat| !is_empty(&self.document, *bat)).collect();
                // One bat at least.
                let all = if begun.is_empty() { vec![0] } else { begun };
                all.into_iter().map(|bat| format!("bats.{bat}.mass")).collect()
            }
            Step::Seen | Step::Answer => Vec::new(),
        };
        let is_wanting = |path: &String| {
            let has_fault = self.derived.about(path).any(|it| !it.is_warning);
            has_fault || self.document.at(path).is_empty()
        };
        paths.into_iter().filter(is_wanting).collect()
    }

    /// Whether a step is behind: nothing is missing, something was seen, the bat to order is found.
    pub fn is_done(&self, step: Step) -> bool {
        match step {
            Step::Who | Step::Bats => self.needed(step).is_empty(),
            Step::Seen => self.document.is_seen(),
            Step::Answer => !self.is_fit_stale(),
        }
    }

    /// The first step that is not behind; the answer, where what was seen is all that is missing.
    pub fn next_step(&self) -> Step {
        let open = [Step::Who, Step::Bats].into_iter().find(|it| !self.is_done(*it));
        open.unwrap_or(if self.is_done(Step::Seen) { Step::Answer } else { Step::Seen })
    }

    /// Goes to a step; what was left empty is no bat once the bats are behind.
    pub(super) fn go_to(&mut self, step: Option<Step>) {
        self.way = step;
        if matches!(step, Some(Step::Seen | Step::Answer)) {
            self.leave_out_empty_bats();
        }
        self.fit_awaited = step == Some(Step::Answer) && self.is_fit_stale();
    }

    /// To the next step, if this one needs nothing more.
    pub(super) fn onward(&mut self) {
        let Some(step) = self.way else { return };
        if self.needed(step).is_empty()
            && let Some(next) = step.then(1)
        {
            self.go_to(Some(next));
        }
    }

    fn leave_out_empty_bats(&mut self) {
        let bats = 0..self.document.bat_count();
        let empty: Vec<usize> = bats.filter(|bat| is_empty(&self.document, *bat)).collect();
        if empty.is_empty() || empty.len() == self.document.bat_count() {
            return;
        }
        let changed = self.document.change("leave out empty bats".to_owned(), |it| {
            Ok(empty.iter().rev().try_for_each(|bat| it.remove_bat(*bat))?)
        });
        match changed {
            Ok(_) => self.follow(),
            Err(faults) => self.say_faults(&faults),
        }
    }
}

/// Whether nothing at all is written of a bat.
fn is_empty(document: &TextFile<ScenarioV1>, bat: usize) -> bool {
    document.fields().bats.get(bat).is_some_and(|it| *it == BatV1::default())
}

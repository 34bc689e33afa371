//! Going to another document, or away: changes that no file holds are asked about first.

use super::action::{Action, Keep};
use super::state::{Ask, Studio};

/// A document that can have changes which no file holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// The scenario.
    Scenario,
    /// The described bat.
    Bat,
}

impl Studio {
    /// Goes to another document, or away, unless changes would be lost.
    pub(super) fn leave(&mut self, action: Action) {
        if self.in_the_way(&action).is_some() {
            self.waiting = Some(action);
            return;
        }
        self.go(action);
    }

    /// The document whose changes an action would lose, and of which nothing was decided yet.
    pub fn in_the_way(&self, action: &Action) -> Option<Paper> {
        let changed = |paper: Paper, is_changed: bool| {
            (is_changed && !self.let_go.contains(&paper)).then_some(paper)
        };
        let scenario = changed(Paper::Scenario, self.document.is_changed());
        let bat = changed(Paper::Bat, self.wood.file.is_changed());
        match action {
            Action::Wood(_) => bat,
            Action::Close => scenario.or(bat),
            _ => scenario,
        }
    }

    /// Does what waited, unless something else stands in its way.
    pub(super) fn go_on(&mut self) {
        if let Some(action) = self.waiting.take() {
            self.leave(action);
        }
    }

    /// Nothing waits any more, and nothing is let go.
    pub(super) fn stay(&mut self) {
        self.waiting = None;
        self.let_go.clear();
    }

    /// What becomes of the changes in the way.
    pub(super) fn decide(&mut self, keep: Keep) {
        let Some(action) = self.waiting.take() else { return };
        match (keep, self.in_the_way(&action)) {
            (Keep::Stay, _) => self.stay(),
            (_, None) => self.leave(action),
            (Keep::Drop, Some(paper)) => {
                self.let_go.push(paper);
                self.leave(action);
            }
            (Keep::Save, Some(Paper::Scenario)) => {
                self.waiting = Some(action);
                match self.document.path() {
                    None => self.asks.push_back(Ask::SaveAs),
                    Some(_) => self.save(None),
                }
            }
            (Keep::Save, Some(Paper::Bat)) => {
                self.waiting = Some(action);
                match self.wood.file.path() {
                    None => self.asks.push_back(Ask::SaveWood),
                    Some(_) => self.save_wood(None),
                }
            }
        }
    }
}

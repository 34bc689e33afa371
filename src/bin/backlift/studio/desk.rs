//! The papers on the desk: opened, saved, taken back, left; changes that no file holds are asked about first.

use std::path::Path;

use backlift::files::document::TextFile;
use backlift::files::fault::Faults;
use backlift::files::scenario::{BLANK, DEMO, ScenarioV1};

use super::action::{Action, Keep, Step, View, Which};
use super::paper::OnDesk;
use super::state::{Ask, Studio};
use super::wood::action::WoodAction;
use super::wood::started;

/// A maker's two pairs.
const MAKER: &str = include_str!("../../../../scenarios/maker.ron");

impl Studio {
    /// Saves a paper; asks where if it has no file.
    pub(super) fn save(&mut self, which: Which) {
        match self.paper(which).path() {
            None => self.asks.push_back(Ask::SaveAs(which)),
            Some(_) => self.save_as(which, None),
        }
    }

    /// Saves it over its file, or into another.
    pub(super) fn save_as(&mut self, which: Which, path: Option<&Path>) {
        if let Err(fault) = self.paper_mut(which).save(path) {
            self.stay();
            return self.say_fault(&fault);
        }
        match which {
            Which::Bat => self.wood.begin(),
            Which::Scenario => {
                self.document.path().into_iter().for_each(|it| self.recovery.used(it));
            }
        }
        self.recent = self.recovery.recent();
        self.say(format!("Saved {}", self.paper(which).name()));
        self.go_on();
    }

    pub(super) fn travel(&mut self, which: Which, forward: bool) {
        let came = self.paper_mut(which).travel(forward);
        self.came(which, came);
    }

    /// Takes up what an earlier window left of a paper.
    pub(super) fn rescue(&mut self, which: Which) {
        let before = self.paper(which).path().map(Path::to_path_buf);
        let came = self.paper_mut(which).rescue();
        if which == Which::Bat && self.wood.paper.path() != before.as_deref() {
            self.begin_bat();
        }
        self.came(which, came);
    }

    /// A paper has another text perhaps.
    fn came(&mut self, which: Which, came: Result<bool, Faults>) {
        match (came, which) {
            (Ok(false), _) => {}
            (Ok(true), Which::Scenario) => self.follow(),
            (Ok(true), Which::Bat) => self.wood.follow(),
            (Err(faults), _) => self.say_faults(&faults),
        }
    }

    /// Goes to another document, or away, unless changes would be lost.
    pub(super) fn leave(&mut self, action: Action) {
        if self.in_the_way(&action).is_some() {
            self.waiting = Some(action);
            return;
        }
        self.go(action);
    }

    /// Does what waited, unless something else stands in its way.
    fn go_on(&mut self) {
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
            (Keep::Save, Some(paper)) => {
                self.waiting = Some(action);
                self.save(paper);
            }
        }
    }

    fn go(&mut self, action: Action) {
        for paper in std::mem::take(&mut self.let_go) {
            self.paper(paper).forget_unsaved();
        }
        let taken_up = match &action {
            Action::Close => {
                self.closed = true;
                return;
            }
            Action::Wood(it) => self.take_up_bat(it),
            Action::Demo => TextFile::of("the demo", DEMO).map(|it| self.take_up(it, View::Swing)),
            Action::Maker => {
                TextFile::of("a maker's bench", MAKER).map(|it| self.take_up(it, View::Pickup))
            }
            Action::Open(path) => TextFile::open(path).map(|it| {
                self.recovery.used(path);
                self.recent = self.recovery.recent();
                self.take_up(it, View::Swing);
            }),
            _ => TextFile::of("a new player", BLANK).map(|it| {
                self.take_up(it, View::Bench);
                self.go_to(Some(Step::Who));
            }),
        };
        if let Err(faults) = taken_up {
            self.say_faults(&faults);
            // What is still here is unsaved as before.
            self.paper_mut(action.which()).keep_again();
        }
    }

    /// Another scenario, and a view of it.
    fn take_up(&mut self, document: TextFile<ScenarioV1>, view: View) {
        self.document.take_up(document);
        self.answers.forget(|it| it.is_of_scenario());
        self.work.cancel(|it| it.is_of_scenario() && !it.is_for_files());
        (self.tried, self.check) = (None, None);
        self.go_to(None);
        self.taps.clear();
        (self.playback.bats, self.bats_before) = ([0, 1], None);
        self.playback.second = true;
        self.follow();
        self.look_at(view);
    }

    /// A blade that nobody put a hand to is of the size of its card, or of the bats here.
    pub(super) fn blade_follows(&mut self) {
        let size = self.wood_size();
        let own = self.wood.worked.as_ref().map(|it| it.loaded.size.name.as_str());
        if size.is_some() && size.as_deref() != own && self.wood.paper.is_untouched() {
            self.go(Action::Wood(WoodAction::New));
        }
    }

    /// Another described bat: a file, or a blade of the size at hand.
    fn take_up_bat(&mut self, action: &WoodAction) -> Result<(), Faults> {
        let file = match action {
            WoodAction::Open(path) => TextFile::open(path),
            _ => started(self.wood_size().as_deref()),
        }?;
        self.wood.paper.take_up(file);
        self.begin_bat();
        Ok(())
    }

    /// Nothing of the described bat before is shown any more.
    fn begin_bat(&mut self) {
        self.answers.forget(|it| !it.is_of_scenario());
        self.wood.begin_anew();
    }
}

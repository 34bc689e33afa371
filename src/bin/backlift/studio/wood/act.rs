//! What each thing done at the maker's bench does to the state.

use std::path::Path;
use std::sync::Arc;

use backlift::files::fault::{Fault, Faults};
use backlift::files::shape_text::{mm, percent};

use super::action::{Part, WoodAction};
use super::{Wood, started};
use crate::studio::action::Action;
use crate::studio::playback::Orbit;
use crate::studio::state::{Ask, Studio};
use crate::studio::text_file::TextFile;
use crate::studio::work::Question;
use backlift::files::card_file;

impl Studio {
    /// Does it.
    pub(in crate::studio) fn do_wood(&mut self, action: WoodAction) {
        if !matches!(action, WoodAction::Grab(..)) {
            self.wood.let_go();
        }
        match action {
            WoodAction::New | WoodAction::Open(_) => self.leave(Action::Wood(action)),
            WoodAction::AskOpen => self.asks.push_back(Ask::OpenWood),
            WoodAction::AskSave => self.asks.push_back(Ask::SaveWood),
            WoodAction::Save if self.wood.file.path().is_none() => {
                self.asks.push_back(Ask::SaveWood);
            }
            WoodAction::Save => self.save_wood(None),
            WoodAction::SaveAs(path) => self.save_wood(Some(&path)),
            WoodAction::Rescue => self.rescue_wood(),
            WoodAction::DropRescued => {
                if let Some(rescued) = self.wood.rescued.take() {
                    self.wood.recovery.forget_rescued(&rescued);
                }
            }
            WoodAction::Set(path, value) => {
                let words = match value.trim().is_empty() {
                    true => format!("take away {path}"),
                    false => format!("{path} = {value}"),
                };
                self.change_wood(words, |it| it.wood.file.put(&path, &value));
            }
            WoodAction::Grab(path, value) => self.grab(&path, value),
            // Done above.
            WoodAction::LetGo => {}
            WoodAction::Take(n) => {
                self.change_wood("take a carved shape".to_owned(), |it| it.take_carved(n));
            }
            WoodAction::Work(work) => self.wood.work = work,
            WoodAction::See(face) => {
                (self.wood.seen, self.wood.orbit) = (face, Orbit::default());
            }
            WoodAction::Hold(what, on) => {
                self.wood.held.retain(|it| *it != what);
                self.wood.held.extend(on.then_some(what));
            }
            WoodAction::AskCard => self.asks.push_back(Ask::WoodCard),
            WoodAction::Card(path) => match card_file::read(&path) {
                Ok(card) => self.wood.card = Some(Arc::new(card)),
                Err(fault) => self.say_fault(&fault),
            },
            WoodAction::FittedCard => self.wood.card = None,
            WoodAction::Carve => self.carve(),
            WoodAction::CancelCarve => self.work.cancel(Question::Carve),
            WoodAction::On(part, on) => {
                let grips = self.wood_card().map_or(1, |it| it.condition.grips);
                self.wood.put_on(part, on, grips);
            }
            WoodAction::Done(passes) => {
                let plan = self.wood.planned.as_ref().and_then(|it| it.plan.as_ref().ok());
                self.wood.done = passes.min(plan.map_or(0, |it| it.passes.len()));
            }
            WoodAction::AskFolder => self.asks.push_back(Ask::WoodFolder),
            WoodAction::Write(folder) => self.write_wood(&folder),
        }
    }

    /// Goes to another described bat; changes were asked about before.
    pub(in crate::studio) fn go_to_wood(&mut self, action: &WoodAction) {
        let file = match action {
            WoodAction::Open(path) => TextFile::open(path),
            _ => started(self.wood_size().as_deref()),
        };
        match file {
            Ok(file) => self.wood.take_up(file),
            Err(Faults(faults)) => {
                faults.iter().for_each(|it| self.say_fault(it));
                self.wood.kept.clear();
            }
        }
    }

    /// The size of the card, else of the bat at the bench.
    pub(in crate::studio) fn wood_size(&self) -> Option<String> {
        let carded = self.wood_card().map(|it| it.size.clone());
        carded.or_else(|| self.at_bench().map(|it| it.size.clone()))
    }

    /// A step back or forward.
    pub(in crate::studio) fn travel_wood(&mut self, forward: bool) {
        self.wood.let_go();
        let now = self.wood.file.text().to_owned();
        let Some(text) = self.wood.history.travel(&now, forward) else { return };
        match self.wood.file.with_text(&text) {
            Ok(file) => {
                self.wood.file = file;
                self.wood.follow();
            }
            Err(Faults(faults)) => faults.iter().for_each(|it| self.say_fault(it)),
        }
    }

    /// Changes the description, and remembers how it was.
    fn change_wood(&mut self, words: String, change: impl FnOnce(&mut Self) -> Result<(), Fault>) {
        let before = self.wood.file.text().to_owned();
        match change(self) {
            Ok(()) if self.wood.file.text() == before => {}
            Ok(()) => {
                self.wood.history.changed(before, words);
                self.wood.follow();
            }
            Err(fault) => self.say_fault(&fault),
        }
    }

    fn grab(&mut self, path: &str, value: f64) {
        // Another point without a word that the last was let go: two drags.
        if self.wood.dragged.as_ref().is_some_and(|it| it.0 != path) {
            self.wood.let_go();
        }
        let before = self.wood.file.text().to_owned();
        let written = if path == "blade.hollow" { percent(value) } else { mm(value) };
        if let Err(fault) = self.wood.file.put(path, &written.0) {
            return self.say_fault(&fault);
        }
        self.wood.dragged.get_or_insert((path.to_owned(), before));
        self.wood.follow();
    }

    pub(in crate::studio) fn save_wood(&mut self, path: Option<&Path>) {
        let old = self.wood.file.path().map(Path::to_path_buf);
        let saved = match path {
            Some(path) => self.wood.file.save_as(path),
            None => self.wood.file.save(),
        };
        if let Err(fault) = saved {
            self.stay();
            return self.say_fault(&fault);
        }
        self.wood.recovery.forget(old.as_deref(), self.wood.rescued.as_ref());
        self.wood.forget_unsaved();
        self.wood.kept = self.wood.file.text().to_owned();
        self.wood.begin();
        self.say(format!("Saved {}", self.wood.name()));
        self.go_on();
    }

    fn rescue_wood(&mut self) {
        let Some(rescued) = self.wood.rescued.clone() else { return };
        if rescued.path.as_deref() != self.wood.file.path() {
            if self.wood.file.is_changed() {
                let fault = Fault::new("the bat on the bench has unsaved changes");
                return self.say_fault(&fault.help("save it first, then take the other up"));
            }
            if let Some(path) = &rescued.path {
                match TextFile::open(path) {
                    Ok(file) => self.wood.take_up(file),
                    Err(Faults(faults)) => {
                        return faults.iter().for_each(|it| self.say_fault(it));
                    }
                }
            }
        }
        self.change_wood("take up unsaved work".to_owned(), |it| {
            it.wood.file = it.wood.file.with_text(&rescued.text).map_err(first)?;
            Ok(())
        });
        self.wood.rescued = None;
    }

    /// Templates, solid and figures, as `backlift shape --out` writes them.
    fn write_wood(&mut self, folder: &Path) {
        let Some(worked) = self.wood.worked.clone().filter(|_| self.wood.faults.is_empty()) else {
            let fault = Fault::new("the bat's description has faults");
            return self.say_fault(&fault.help("mend them first"));
        };
        let folder = folder.to_path_buf();
        let key = self.wood.key.rotate_left(17);
        self.results.failed.remove(&key);
        let task = move |_: &crate::progress::Progress, _: &dyn Fn(crate::studio::work::Answer)| {
            let files = crate::shape::write(&folder, worked.loaded.clone(), worked.bat.clone())?;
            Ok(crate::studio::work::Answer::Written(files, folder))
        };
        self.work.start(Question::WoodFiles, key, Box::new(task));
    }
}

impl Wood {
    /// A drag that ends is one step back.
    pub(in crate::studio) fn let_go(&mut self) {
        if let Some((path, before)) = self.dragged.take()
            && before != self.file.text()
        {
            let words = format!("{path} = {}", self.file.at(&path));
            self.history.changed(before, words);
        }
    }

    /// Nothing of it is unsaved any more, but for what an earlier window left and is still offered.
    pub(in crate::studio) fn forget_unsaved(&self) {
        self.recovery.forget(self.file.path(), self.rescued.as_ref());
    }

    /// Whether a ring is held.
    pub(in crate::studio) fn is_dragged(&self) -> bool {
        self.dragged.is_some()
    }

    /// Puts a part on or takes it off; of grips so many as the card asks.
    fn put_on(&mut self, part: Part, on: bool, grips: u32) {
        let it = &mut self.on;
        match part {
            Part::Twine => it.bound = on,
            // A grip goes over the twine.
            Part::Grip if on => (it.grips, it.bound) = (grips.max(1), true),
            Part::Grip => it.grips = 0,
            Part::ToeGuard => it.toe_guard = on,
            Part::Labels => it.labels = on,
            Part::Oil => it.oiled = on,
        }
    }
}

/// The first of the faults.
pub(super) fn first(Faults(faults): Faults) -> Fault {
    faults.into_iter().next().unwrap_or_else(|| Fault::new("it cannot be read"))
}

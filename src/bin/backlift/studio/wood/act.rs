//! What each thing done at the maker's bench does to the state.

use std::path::Path;

use backlift::files::card_file;

use super::Opened;
use super::action::WoodAction;
use crate::studio::answers::{key, key_of};
use crate::studio::fields::name;
use crate::studio::paper::{OnDesk, of_field};
use crate::studio::playback::Orbit;
use crate::studio::state::{Ask, Studio};
use crate::studio::work::{Question, Written};

impl Studio {
    /// Does it; what is done to the paper is done as to any other.
    pub(in crate::studio) fn do_wood(&mut self, action: WoodAction) {
        if !matches!(action, WoodAction::Grab(..)) {
            self.wood.paper.let_go();
        }
        // Why a drag stopped can be read until something else is done.
        if !matches!(action, WoodAction::Grab(..) | WoodAction::LetGo) {
            self.wood.stop = None;
        }
        match action {
            WoodAction::Set(path, value) => {
                let words = of_field(name(&path).unwrap_or(&path), &value);
                let changed = self.wood.change(words, |it| {
                    it.put(&path, &value)?;
                    // What the plan asked for it asked for elsewhere.
                    if let Some(reading) = path.strip_suffix(".planed") {
                        it.put(&format!("{reading}.asked"), "")?;
                    }
                    Ok(())
                });
                changed.unwrap_or_else(|faults| self.say_faults(&faults));
            }
            WoodAction::Grab(path, value) => self.grab(&path, value),
            WoodAction::Take(n) => self.take_carved(n),
            WoodAction::Work(work) => self.wood.work = work,
            WoodAction::See(face) => {
                (self.wood.seen, self.wood.orbit) = (face, Orbit::default());
            }
            WoodAction::Hold(what, on) => {
                self.wood.held.retain(|it| *it != what);
                self.wood.held.extend(on.then_some(what));
            }
            WoodAction::AskCard => self.asks.push_back(Ask::WoodCard),
            WoodAction::Card(_) if self.wood.own_card().is_some() => {
                let why = "this bat is made for the card in its own file";
                self.refuse(why, "take up another bat, or begin a new blade");
            }
            WoodAction::Card(path) => match card_file::read(&path) {
                Ok(card) => {
                    self.wood.card = Some(Opened { key: key_of(&card), card });
                    self.blade_follows();
                }
                Err(fault) => self.say_fault(&fault),
            },
            WoodAction::FittedCard => {
                self.wood.card = None;
                self.blade_follows();
            }
            WoodAction::Carve => self.carve(),
            WoodAction::CancelCarve => self.work.cancel(|it| it == Question::Carve),
            WoodAction::NextReading => {
                let begun = self.next_reading();
                begun.unwrap_or_else(|faults| self.say_faults(&faults));
            }
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
            // Done above, or to the paper.
            _ => {}
        }
    }

    /// The size of the card, else of the bat at the bench.
    pub(in crate::studio) fn wood_size(&self) -> Option<String> {
        let carded = self.wood_card().map(|it| it.size.clone());
        carded.or_else(|| self.at_bench().map(|it| it.size.clone()))
    }

    fn grab(&mut self, path: &str, value: f64) {
        let grabs = self.wood.shown().map_or_else(Vec::new, |it| self.wood.grabs(it));
        let from = grabs.iter().find(|it| it.path == path).map_or(value, |it| it.value);
        if let Err(fault) = self.wood.drag(path, from, value) {
            self.say_fault(&fault);
        }
    }

    /// Templates, solid and figures, as `backlift shape --out` writes them.
    fn write_wood(&mut self, folder: &Path) {
        let Some(worked) = self.wood.worked.clone().filter(|_| self.wood.faults.is_empty()) else {
            return self.refuse("the bat's description has faults", "mend them first");
        };
        let (key, folder) = (key(("wood files", self.wood.key)), folder.to_path_buf());
        self.work.start(Question::WoodFiles, key, move |_, _| {
            let files =
                crate::shape_files::write(&folder, worked.loaded.clone(), worked.bat.clone())?;
            Ok(Written { files, folder })
        });
    }
}

//! The card: its preview, its files, and a delivered bat held against it.

use std::path::Path;

use backlift::card::Card;
use backlift::card::returned_bat;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;

use super::state::Studio;
use crate::check::{card_file, delivered};
use crate::fit::pictures;

impl Studio {
    /// Writes card, map and innings into a folder.
    pub(super) fn write_card(&mut self, folder: &Path) {
        let Some(fitted) = self.results.fitted.as_ref().map(|it| it.it.clone()) else {
            let fault = Fault::new("there is no card yet").help("find the bat first");
            return self.say_fault(&fault);
        };
        let write = || -> Result<usize, Fault> {
            let mut into = Folder::open(folder)?;
            pictures::add(&mut into, &fitted, self.look.units)?;
            Ok(into.commit()?.len())
        };
        match write() {
            Ok(files) => self.say(format!("Wrote {files} files into {}", folder.display())),
            Err(fault) => self.say_fault(&fault),
        }
    }

    /// The card as one A4 page.
    pub fn card_svg(&self) -> Option<Result<String, String>> {
        let fitted = &self.results.fitted.as_ref()?.it;
        Some(pictures::sheet(fitted, self.look.units).map_err(|it| it.to_string()))
    }

    pub(super) fn check_against_file(&mut self, path: &Path) {
        match card_file::read(path) {
            Ok(card) => self.check_against(&card),
            Err(fault) => self.say_fault(&fault),
        }
    }

    pub(super) fn check_here(&mut self) {
        match self.results.fitted.as_ref().map(|it| it.it.card.clone()) {
            Some(card) => self.check_against(&card),
            None => {
                let fault = Fault::new("there is no card yet").help("find the bat, or open a card");
                self.say_fault(&fault);
            }
        }
    }

    fn check_against(&mut self, card: &Card) {
        let delivered = self.at_bench().map(delivered::returned);
        self.check = delivered.map(|it| returned_bat::check(card, &it));
    }
}

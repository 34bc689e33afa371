//! The card: its preview, its files, and a delivered bat held against it.

use std::path::{Path, PathBuf};

use backlift::card::Card;
use backlift::card::returned_bat;
use backlift::drawing::png::drawn;
use backlift::drawing::still::Still;
use backlift::files::card_file;
use backlift::files::save::Folder;
use backlift::questions::delivered;
use backlift::questions::fitted::Fitted;
use backlift::units::Units;

use super::answers::{Keyed, key};
use super::state::Studio;
use super::work::{Question, Written};
use crate::fitting_files;
use crate::outcome::Stop;

/// Pixels of the preview to a px of the sheet: legible when it fills a 4K screen's height.
const PIXELS: f64 = 1.6;

impl Studio {
    /// Draws the card in the background while it is looked at.
    pub(super) fn ask_for_picture(&mut self) {
        let units = self.look.units;
        let Some(fit_key) = self.fitted().map(|it| it.key) else { return };
        let key = key(("card picture", fit_key, units == Units::Si));
        let Some(fitted) =
            self.answers.shared::<Fitted>(fit_key).filter(|_| !self.answers.has(key))
        else {
            return;
        };
        self.work.start(Question::CardPicture, key, move |_, _| {
            let sheet = fitting_files::sheet(&fitted, units).map_err(Stop::our_mistake)?;
            let map = drawn(&sheet, PIXELS).map_err(Stop::our_mistake)?;
            Ok(Still { size: [map.width(), map.height()], rgba: map.take() })
        });
    }

    pub fn card_picture(&self) -> Option<Keyed<'_, Still>> {
        self.answers.last(Question::CardPicture)
    }

    /// Writes card, map and innings into a folder.
    pub(super) fn write_card(&mut self, folder: &Path) {
        let fit_key = self.fitted().map(|it| it.key);
        let Some(fitted) = fit_key.and_then(|key| self.answers.shared::<Fitted>(key)) else {
            return self.refuse("there is no card yet", "find the bat first");
        };
        let (units, folder) = (self.look.units, PathBuf::from(folder));
        self.work.start(Question::CardFiles, key(("card files", fit_key)), move |_, _| {
            let mut into = Folder::open(&folder)?;
            fitting_files::add(&mut into, &fitted, units)?;
            Ok(Written { files: into.commit()?.len(), folder })
        });
    }

    pub(super) fn check_against_file(&mut self, path: &Path) {
        match card_file::read(path) {
            Ok(card) => self.check_against(&card),
            Err(fault) => self.say_fault(&fault),
        }
    }

    pub(super) fn check_here(&mut self) {
        match self.fitted().map(|it| it.it.card.clone()) {
            Some(card) => self.check_against(&card),
            None => self.refuse("there is no card yet", "find the bat, or open a card"),
        }
    }

    fn check_against(&mut self, card: &Card) {
        let delivered = self.at_bench().map(delivered::returned);
        self.check = delivered.map(|it| returned_bat::check(card, &it));
    }
}

//! The card: its preview, its files, and a delivered bat held against it.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use backlift::card::Card;
use backlift::card::returned_bat;
use backlift::drawing::png::png;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::units::Units;
use resvg::tiny_skia::Pixmap;

use super::action::View;
use super::state::Studio;
use super::work::{Answer, Question};
use crate::fit::pictures;
use crate::outcome::Stop;
use backlift::files::card_file;
use backlift::questions::delivered;

/// The card as it is printed, as a picture.
pub struct CardPicture {
    /// Width and height, pixels.
    pub size: [usize; 2],
    /// Red, green, blue, alpha of every pixel, row by row.
    pub rgba: Vec<u8>,
}

/// Pixels of the preview to a px of the sheet: legible when it fills a 4K screen's height.
const PIXELS: f64 = 1.6;

impl Studio {
    /// What the picture of the card hangs on.
    fn picture_key(&self) -> Option<u64> {
        let units = if self.look.units == Units::Si { 1 } else { 2 };
        Some(self.results.fitted.as_ref()?.key.rotate_left(7) ^ units)
    }

    /// Draws the card in the background while it is looked at.
    pub(super) fn ask_for_picture(&mut self) {
        let Some(key) = self.picture_key().filter(|_| self.view == View::Card) else { return };
        let there = self.results.picture.as_ref().is_some_and(|it| it.key == key);
        let Some(fitted) = self.results.fitted.as_ref().map(|it| Arc::clone(&it.it)) else {
            return;
        };
        if there || self.results.failed.contains_key(&key) {
            return;
        }
        let units = self.look.units;
        let mistake = |it: &dyn std::fmt::Display| Stop::OurMistake(it.to_string());
        let task = move |_: &crate::progress::Progress, _: &dyn Fn(Answer)| {
            let sheet = pictures::sheet(&fitted, units).map_err(|it| mistake(&it))?;
            let bytes = png(&sheet, PIXELS).map_err(|it| mistake(&it))?;
            let map = Pixmap::decode_png(&bytes).map_err(|it| mistake(&it))?;
            let size = [map.width() as usize, map.height() as usize];
            Ok(Answer::Picture(Arc::new(CardPicture { size, rgba: map.take() })))
        };
        self.work.start(Question::CardPicture, key, Box::new(task));
    }

    /// Writes card, map and innings into a folder.
    pub(super) fn write_card(&mut self, folder: &Path) {
        let Some(fitted) = self.results.fitted.as_ref().map(|it| Arc::clone(&it.it)) else {
            let fault = Fault::new("there is no card yet").help("find the bat first");
            return self.say_fault(&fault);
        };
        let (units, folder) = (self.look.units, PathBuf::from(folder));
        let task = move |_: &crate::progress::Progress, _: &dyn Fn(Answer)| {
            let mut into = Folder::open(&folder)?;
            pictures::add(&mut into, &fitted, units)?;
            Ok(Answer::Written(into.commit()?.len(), folder))
        };
        let key = self.derived.fit_key.rotate_left(13);
        self.results.failed.remove(&key);
        self.work.start(Question::CardFiles, key, Box::new(task));
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

//! The card from the disk, its faults in their place.

use std::ops::Range;
use std::path::{Path, PathBuf};

use crate::card::Card;
use crate::files::card::{self, CardFileFault};
use crate::files::document::{Kind, paths_in, text_of_file};
use crate::files::fault::{Fault, Source};
use crate::files::own_file::card_in;

const CARD: Kind = Kind {
    what: "a card",
    noun: "card",
    named: "the card's .ron file",
    like: "name the card's .ron file",
    none: "`backlift fit` writes the card; name its .ron file",
};

/// Reads a card.
pub fn read(path: &Path) -> Result<Card, Fault> {
    let source = text_of_file(path, &CARD)?;
    let (name, text) = (source.name(), source.text());
    let no_card = |message: String, help: &str| Fault::new(message).at(&source, 0..0).help(help);
    if let Some(card) = card_in(&source) {
        let help = "name the card, or put it into the bat's file as card: (…)";
        let card = card.ok_or_else(|| no_card(format!("{name} has no card in it"), help))?;
        return card_at(&source, card);
    }
    if text.contains("backlift/scenario/") {
        let help = "name the card first, the scenario after it";
        return Err(no_card(format!("{name} is a scenario, not a card"), help));
    }
    if text.trim().is_empty() {
        let help = "take the card as `backlift fit` wrote it";
        return Err(no_card("the file is empty".to_owned(), help));
    }
    card_at(&source, 0..text.len())
}

/// The card that stands there in a text.
pub(super) fn card_at(source: &Source, at: Range<usize>) -> Result<Card, Fault> {
    let text = source.text().get(at.clone()).unwrap_or_default();
    card::read(text).map_err(|fault| placed(source, at, &fault))
}

fn placed(source: &Source, within: Range<usize>, fault: &CardFileFault) -> Fault {
    let start = within.start;
    let (message, at) = match fault {
        CardFileFault::Broken { line, column, what } => {
            let text = source.text().get(within).unwrap_or_default();
            let message = format!("this is not a whole card: {what}");
            (message, start + offset(text, *line, *column))
        }
        other => (other.to_string(), start),
    };
    Fault::new(message).at(source, at..at).help("take the card as `backlift fit` wrote it")
}

/// The byte at a line and a column, both counted from 1.
fn offset(text: &str, line: usize, column: usize) -> usize {
    let mut start = 0;
    for (n, it) in text.split_inclusive('\n').enumerate() {
        if n + 1 == line {
            let within = it.char_indices().nth(column.saturating_sub(1));
            return start + within.map_or(it.trim_end().len(), |(at, _)| at);
        }
        start += it.len();
    }
    text.len()
}

/// The cards that a path leads to: the file itself, or of a folder every text in it that says it is a card, and the
/// `card.ron` of every folder in it; by name.
///
/// # Errors
/// If the folder cannot be read, or there is no card in it.
pub fn cards_at(path: &Path) -> Result<Vec<PathBuf>, Fault> {
    if !path.is_dir() {
        return Ok(vec![path.to_owned()]);
    }
    let mut cards = Vec::new();
    for it in paths_in(path)? {
        let below = it.join("card.ron");
        if it.is_dir() && below.is_file() {
            cards.push(below);
        } else if it.extension().is_some_and(|it| it == "ron")
            && it.is_file()
            && text_of_file(&it, &CARD)?.text().contains("backlift/card")
        {
            cards.push(it);
        }
    }
    match cards.is_empty() {
        false => Ok(cards),
        true => Err(Fault::new(format!("there is no card in {}", path.display()))
            .help("name the folder of the cards that `backlift fit` wrote")),
    }
}

/// What a card is called by its file: the file's name, or that of its folder where the file is called `card.ron`.
pub fn called(path: &Path) -> String {
    let stem = path.file_stem().map(|it| it.to_string_lossy().into_owned()).unwrap_or_default();
    let folder = path.parent().and_then(Path::file_name).map(|it| it.to_string_lossy());
    match folder {
        Some(folder) if stem == "card" => folder.into_owned(),
        _ => stem,
    }
}

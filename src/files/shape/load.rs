//! A described bat from its text to the core, with `--set` over it and all faults together.

use std::path::Path;

use super::super::card_file::card_at;
use super::super::document::values::Values;
use super::super::document::{self, Fields, Places, Text, text_of_file};
use super::super::fault::{Fault, Faults, Source};
use super::super::own_file::card_in;
use super::super::stages::entry::entry;
use super::convert::to_core;
use super::{OWN, SHAPE, ShapeV1};
use crate::bat::described::Described;
use crate::bat::sizes::Size;
use crate::workshop::stages::{BatLog, Stage, Target};

/// The described bat that is built in: invented.
pub const DEMO: &str = include_str!("../../../scenarios/blade.ron");

/// A described bat, ready to work with.
#[derive(Clone, Debug)]
pub struct LoadedShape {
    /// One line saying what it is.
    pub title: String,
    /// It is made up.
    pub invented: bool,
    /// Its size.
    pub size: Size,
    /// What its maker says.
    pub described: Described,
    /// What it is to be, and what was read and done.
    pub log: BatLog,
    /// Where each field stands, for faults that the core finds.
    pub places: Places,
}

/// Loads a described bat, `--set` arguments over it; without a file the built-in example. All faults of one
/// file are reported together.
pub fn load(file: Option<&Path>, sets: &[String], sizes: &[Size]) -> Result<LoadedShape, Faults> {
    let source = match file {
        Some(path) => text_of_file(path, &SHAPE)?,
        None => Source::new("scenarios/blade.ron (built in)", DEMO),
    };
    load_text(source, sets, sizes)
}

/// Loads a bat's own file; none if the file is something else, like a card.
pub fn load_own(path: &Path, sizes: &[Size]) -> Result<Option<LoadedShape>, Faults> {
    let source = text_of_file(path, &OWN)?;
    match card_in(&source) {
        Some(_) => load_text(source, &[], sizes).map(Some),
        None => Ok(None),
    }
}

/// The same from a text at hand.
pub fn load_text(source: Source, sets: &[String], sizes: &[Size]) -> Result<LoadedShape, Faults> {
    let Fields { document, places, mut faults } = document::fields::<ShapeV1>(source, sets);
    let Some(fields) = document else { return Err(Faults(faults)) };
    let (size, described, found) = to_core(&fields, &places, sizes);
    faults.extend(found);
    let mut values = Values::new(&places);
    let title = values.short("title", &fields.title).map(|it| it.trim().to_owned());
    faults.append(&mut values.faults);
    let title = title.unwrap_or_else(|| "A bat".to_owned());
    let written = |text: &Option<Text>| text.as_ref().map(|it| it.0.trim().to_owned());
    let Some(size) = size else { return Err(Faults(faults)) };
    let (log, found) = log(&fields, &places, &title, &size, &described);
    faults.extend(found);
    if !faults.is_empty() {
        return Err(Faults(faults));
    }
    Ok(LoadedShape {
        title,
        invented: written(&fields.invented).is_some_and(|it| it == "yes" || it == "true"),
        size,
        described,
        log,
        places,
    })
}

/// More readings than a bat has in its life.
const MOST_ENTRIES: usize = 500;

/// What it is to be, and what was read and done.
fn log(
    fields: &ShapeV1,
    places: &Places,
    title: &str,
    size: &Size,
    described: &Described,
) -> (BatLog, Vec<Fault>) {
    let mut faults = Vec::new();
    let card = card_in(places.source()).flatten().map(|at| card_at(places.source(), at));
    let card = card.and_then(|it| it.map_err(|fault| faults.push(fault)).ok());
    let mut log = BatLog {
        label: title.to_owned(),
        size: size.name.clone(),
        target: card.as_ref().map(Target::of).unwrap_or_default(),
        card,
        entries: Vec::new(),
    };
    if let Some(card) = log.card.as_ref().filter(|it| it.size != size.name) {
        let message = format!("the bat is of size {}, its card of size {}", size.name, card.size);
        faults.push(places.fault("size", &message, "give the bat the size of its card"));
    }
    if fields.log.len() > MOST_ENTRIES {
        let message = format!("there are {} readings", fields.log.len());
        let help = format!("leave at most {MOST_ENTRIES}");
        faults.push(places.fault("log", &message, &help));
        return (log, faults);
    }
    let reference = &size.reference;
    let length_m = described.handle.length_m.unwrap_or(reference.handle.length_m)
        + described.blade.length_m.unwrap_or(reference.blade.length_m);
    let length_m = log.card.as_ref().map_or(length_m, |it| it.length_m);
    for (n, it) in fields.log.iter().enumerate() {
        let before = log.last().map_or(Stage::Shaped, |it| it.stage);
        log.entries.extend(entry(it, Some(length_m), Some(before), &mut |field, message, help| {
            faults.push(places.fault(&format!("log.{n}.{field}"), message, help));
        }));
    }
    // What could not be read is missing: the order is judged when all is there.
    if faults.is_empty() {
        faults.extend(log.faults(size).into_iter().map(|it| {
            let path = format!("log.{}.{}", it.entry, it.field);
            places.fault(&path, &it.fault.to_string(), it.fault.mend())
        }));
    }
    (log, faults)
}

//! A described bat from its text to the core, with `--set` over it and all faults together.

use std::path::Path;

use super::super::document::values::Values;
use super::super::document::{self, Fields, Places, Text, text_of_file};
use super::super::fault::{Faults, Source};
use super::convert::to_core;
use super::{SHAPE, ShapeV1};
use crate::bat::described::Described;
use crate::bat::sizes::Size;

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

/// The same from a text at hand.
pub fn load_text(source: Source, sets: &[String], sizes: &[Size]) -> Result<LoadedShape, Faults> {
    let Fields { document, mut places, mut faults } = document::fields::<ShapeV1>(source);
    let Some(mut fields) = document else { return Err(Faults(faults)) };
    for argument in sets {
        faults.extend(document::set(&mut fields, &mut places, argument).err());
    }
    let (size, described, found) = to_core(&fields, &places, sizes);
    faults.extend(found);
    let mut values = Values::new(&places);
    let title = values.short("title", &fields.title).map(|it| it.trim().to_owned());
    faults.append(&mut values.faults);
    let written = |text: &Option<Text>| text.as_ref().map(|it| it.0.trim().to_owned());
    match size {
        Some(size) if faults.is_empty() => Ok(LoadedShape {
            title: title.unwrap_or_else(|| "A bat".to_owned()),
            invented: written(&fields.invented).is_some_and(|it| it == "yes" || it == "true"),
            size,
            described,
            places,
        }),
        _ => Err(Faults(faults)),
    }
}

//! A scenario from its text to the core, with `--set` over it and all faults together.

use std::path::Path;

use super::super::document::values::Values;
use super::super::document::{self, Fields, Places, text_of_file};
use super::super::fault::{Fault, Faults, Source};
use super::convert::Converted;
use super::{SCENARIO, ScenarioV1, convert};
use crate::card::order::Order;
use crate::measurement::plan::Scenario;
use crate::stroke::Stroke;

/// The scenario that is built in: an invented junior.
pub const DEMO: &str = include_str!("../../../scenarios/junior.ron");

/// A player to be measured, with a note at every field.
pub const STARTER: &str = include_str!("../../../scenarios/starter.ron");

/// A player and two bats of whom nothing is known yet: what the window's way of the coach fills in.
pub const BLANK: &str = r#"// A scenario for Backlift: who bats, with what, against whom.
// Quantities carry their unit as people write them; what is left out is estimated, and the result says so.
(
    version: "backlift/scenario/1",
    title: "My player and the kit bag",
    player: (
    ),
    bats: [
        (
        ),
        (
        ),
    ],
)
"#;

/// A scenario ready to work with.
#[derive(Clone, Debug)]
pub struct Loaded {
    /// What the core works with.
    pub scenario: Scenario,
    /// The same as it was written, `--set` included.
    pub fields: ScenarioV1,
    /// Where each field stands, for faults that the core finds.
    pub places: Places,
    /// What is said of the order, where something is.
    pub order: Option<Order>,
    /// The user's own strokes that it names, read from their files.
    pub own_strokes: Vec<Stroke>,
}

/// Loads a scenario, without a file the demo, and puts the `--set` arguments over it in their order. The files of strokes that do not come with
/// the program are looked for beside the scenario's. All faults of one file are reported together.
pub fn load(file: Option<&Path>, sets: &[String]) -> Result<Loaded, Faults> {
    let folder = file.and_then(Path::parent);
    let source = match file {
        Some(path) => text_of_file(path, &SCENARIO)?,
        None => Source::new("scenarios/junior.ron (built in)", DEMO),
    };
    load_text(source, folder.unwrap_or(Path::new("")), sets)
}

/// The same from a text at hand, as if it stood in that folder.
pub fn load_text(source: Source, folder: &Path, sets: &[String]) -> Result<Loaded, Faults> {
    let Fields { document, places, mut faults } = document::fields::<ScenarioV1>(source, sets);
    let Some(fields) = document else { return Err(Faults(faults)) };
    let mut values = Values::new(&places);
    let converted = convert::to_core(&fields, folder, &mut values);
    faults.append(&mut values.faults);
    match converted {
        Some(Converted { scenario, order, own_strokes }) if faults.is_empty() => {
            Ok(Loaded { scenario, fields, places, order, own_strokes })
        }
        _ => {
            faults.sort_by_key(place_in_text);
            Err(Faults(faults))
        }
    }
}

/// Faults in the order of the text; those of the command line after those of the file.
fn place_in_text(fault: &Fault) -> (bool, usize) {
    let place = fault.place.as_ref();
    (place.is_some_and(|it| it.source.name() == "--set"), place.map_or(0, |it| it.span.start))
}

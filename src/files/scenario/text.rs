//! The text of a scenario, from the disk or from the binary.

use std::path::PathBuf;

use super::super::document::text_of_file;
use super::super::fault::{Fault, Source};
use super::SCENARIO;

/// Where a scenario comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Given {
    /// The invented junior that is built in.
    Demo,
    /// A file.
    File(PathBuf),
}

/// The scenario that is built in.
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

/// Reads the text of a scenario.
pub fn text_of(given: &Given) -> Result<Source, Fault> {
    match given {
        Given::Demo => Ok(Source::new("scenarios/junior.ron (built in)", DEMO)),
        Given::File(path) => text_of_file(path, &SCENARIO),
    }
}

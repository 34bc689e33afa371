//! What every command is given: the scenario and what is put over it.

use std::path::PathBuf;

use backlift::files::fault::Faults;
use backlift::files::scenario::{Given, Loaded, load};
use backlift::measurement::plan::STROKES;

/// The scenario and what is put over it.
#[derive(clap::Args)]
pub struct ScenarioArgs {
    /// Scenario file; without one the built-in demo is used
    pub scenario: Option<PathBuf>,

    /// Put a value over one field, like player.age=14 or "bats.0.mass=2 lb 8 oz"; may be repeated
    #[arg(long = "set", value_name = "PATH=VALUE")]
    pub set: Vec<String>,
}

impl ScenarioArgs {
    /// Loads it.
    pub fn load(&self) -> Result<Loaded, Faults> {
        let given = self.scenario.clone().map_or(Given::Demo, Given::File);
        load(&given, &self.set, &STROKES)
    }
}

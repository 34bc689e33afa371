//! What commands are given: the scenario, what is put over it, and how to show the result.

use std::path::PathBuf;

use backlift::files::fault::Faults;
use backlift::files::scenario::{Given, Loaded, load};
use backlift::measurement::plan::STROKES;
use backlift::units::Units;

/// The scenario and what is put over it.
#[derive(clap::Args)]
pub struct ScenarioArgs {
    /// Scenario file; without one the built-in demo is used
    pub scenario: Option<PathBuf>,

    /// Put a value over one field, like player.age=14; may be repeated
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

/// How to show the result.
#[derive(clap::Args)]
pub struct ShowArgs {
    /// Print every figure as JSON, in SI units, and nothing else
    #[arg(long)]
    pub json: bool,

    /// Units to show figures in
    #[arg(long, value_enum, default_value_t)]
    units: UnitsArg,
}

impl ShowArgs {
    /// Units to show figures in.
    pub fn units(&self) -> Units {
        match self.units {
            UnitsArg::Trade => Units::Trade,
            UnitsArg::Si => Units::Si,
        }
    }
}

#[derive(Clone, Copy, Default, clap::ValueEnum)]
enum UnitsArg {
    /// Pounds and ounces, inches, km/h
    #[default]
    Trade,
    /// Kilograms, metres, m/s
    Si,
}

/// Where files go.
#[derive(clap::Args)]
#[allow(dead_code, reason = "for the commands that write files")]
pub struct OutArgs {
    /// Folder to write into; made if it is not there
    #[arg(long, value_name = "DIR", default_value = "fitting")]
    pub out: PathBuf,
}

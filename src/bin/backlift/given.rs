//! What commands are given: the scenario, what is put over it, and how to show the result.

use std::path::PathBuf;

use backlift::files::fault::Faults;
use backlift::files::scenario;
use backlift::questions::loaded::{Loaded, built};
use backlift::units::{self, Quantity, Units, parse};

use crate::outcome::{Stop, warned};

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
    pub fn read(&self) -> Result<scenario::Loaded, Faults> {
        scenario::load(self.scenario.as_deref(), &self.set)
    }

    /// Reads it, builds the player and weighs the bats. All faults come together; what is merely odd is shown on
    /// standard error, and the work goes on.
    pub fn load(&self) -> Result<Loaded, Stop> {
        Ok(warned(built(self.read()?)?))
    }
}

/// Which of the scenario's bats.
#[derive(clap::Args)]
pub struct BatArg {
    /// The bat, by its label or its number from 0; the first if left out
    #[arg(long, value_name = "LABEL|N", allow_negative_numbers = true)]
    bat: Option<String>,
}

impl BatArg {
    pub fn of(&self, loaded: &Loaded) -> Result<usize, Stop> {
        loaded.bat(self.bat.as_deref())
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

/// Reads as a log of the bench does, a fault and its mend in one line.
pub fn in_log<T>(
    read: fn(&str) -> Result<T, (String, String)>,
) -> impl Fn(&str) -> Result<T, String> + Clone + Send + Sync {
    move |written: &str| read(written).map_err(|(message, help)| format!("{message}; {help}"))
}

/// Reads a share above zero, like `0.8` or `80 %`.
pub fn share(written: &str) -> Result<f64, String> {
    units::share(written)
        .filter(|it| (0.1..=3.0).contains(it))
        .ok_or_else(|| "write a share from 0.1 to 3, like 0.8 or \"80 %\"".to_owned())
}

/// Reads a time; a bare number means seconds.
pub fn time(written: &str) -> Result<f64, String> {
    let seconds = match written.trim().parse::<f64>() {
        Ok(seconds) => seconds,
        Err(_) => parse(Quantity::Time, written).map_err(|it| it.to_string())?,
    };
    Some(seconds)
        .filter(|it| (0.05..=3.0).contains(it))
        .ok_or_else(|| "a stroke takes between 0.05 s and 3 s".to_owned())
}

/// Reads a quantity with its unit, SI; or says how to mend it.
pub fn quantity(of: Quantity, written: &str) -> Result<f64, String> {
    parse(of, written).map_err(|it| format!("{it}; {}", it.mend(of)))
}

/// Reads a length, with its unit; below nought too.
pub fn length(written: &str) -> Result<f64, String> {
    Some(quantity(Quantity::Length, written)?)
        .filter(|it| it.abs() < 2.0)
        .ok_or_else(|| "no bat is so long".to_owned())
}

/// Reads a speed, with its unit; nought is one.
pub fn speed(written: &str) -> Result<f64, String> {
    Some(quantity(Quantity::Speed, written)?)
        .filter(|it| (0.0..=60.0).contains(it))
        .ok_or_else(|| "neither bat nor ball is so fast: write a speed from 0 to 60 m/s".to_owned())
}

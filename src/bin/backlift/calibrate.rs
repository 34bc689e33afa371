//! `backlift calibrate`: from readings in the nets to this player's own strength.

mod figures;
mod kept;
mod told;

use std::path::PathBuf;

use backlift::files::fault::Fault;
use backlift::files::readings::{read, text_of, to_fill_in};
use backlift::files::save::new_file;
use backlift::questions::calibrated::calibrated;

use crate::beside::Beside;
use crate::given::{ScenarioArgs, ShowArgs};
use crate::json;
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;

/// Read a player's own strength off swings in the nets
///
/// Stroke times counted on a slow-motion film, or bat speeds by any device, fresh and tired. Says
/// how far the tables were off, how much surer the pull and the advice became, and which readings
/// it doubts. With --out or --keep the other commands use the new strength.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift calibrate --out calibrated.ron")]
pub struct Args {
    /// Table of readings (CSV), a swing a line; without one the demo's
    #[arg(value_name = "READINGS.csv")]
    readings: Option<PathBuf>,

    #[command(flatten)]
    given: ScenarioArgs,

    /// The bat that figures are told for, by its label or its number from 0; the first read if left out
    #[arg(long, value_name = "LABEL|N", allow_negative_numbers = true)]
    bat: Option<String>,

    /// Write the scenario with what was found to this new file
    #[arg(long, value_name = "FILE", conflicts_with = "keep")]
    out: Option<PathBuf>,

    /// Put what was found into the scenario file itself; all else in it stays as it is
    #[arg(long, requires = "scenario", conflicts_with = "set")]
    keep: bool,

    /// Write a table to fill in to this new file, for the bats of a scenario, and do nothing else
    #[arg(long, value_name = "FILE", conflicts_with_all = ["scenario", "out", "keep"])]
    new: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

/// Fits, tells, and keeps.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    if let Some(path) = &args.new {
        // The one file named beside it is the scenario.
        let given = ScenarioArgs { scenario: args.readings, set: args.given.set };
        let table = to_fill_in(&given.load()?.scenario);
        new_file(path, table.as_bytes())?;
        let _ = json::print(&format!("Wrote {}\n", path.display())); // the file is there
        return Ok(Outcome::Done);
    }
    let loaded = args.given.load()?;
    if args.readings.is_none() && args.given.scenario.is_some() {
        let fault = Fault::new("there are no readings");
        return Err(fault
            .help("name a table: backlift calibrate READINGS.csv SCENARIO.ron")
            .into());
    }
    let labels: Vec<String> = loaded.scenario.bats.iter().map(|it| it.label.clone()).collect();
    let table = read(text_of(args.readings.as_deref())?, &labels, &loaded.stroke_names())?;
    loaded.pull()?;
    let bat = args.bat.as_deref().map(|it| loaded.bat(Some(it))).transpose()?;
    let place = kept::Place::of(args.out, args.keep, &args.given)?;
    let progress = Progress::start();
    let found = calibrated(&loaded, &table, bat, &progress)?;
    drop(progress);
    let beside = Beside::scenario(&loaded);
    let text = match args.show.json {
        true => json::document("calibrate", beside.figures(figures::of(&found)))?,
        false => beside.told(&told::told(&found, args.show.units())),
    };
    let written = kept::keep(place, &loaded, &args.given, &found)?;
    json::print(&(text + if args.show.json { "" } else { &written }))?;
    Ok(Outcome::Done)
}

//! `backlift swing`: one player, one bat, one stroke.

mod figures;
mod files;
mod told;

use std::path::PathBuf;

use backlift::files::save::Folder;
use backlift::questions::swung;
pub use told::LIMITS;

use crate::beside::Beside;
use crate::given::{BatArg, ScenarioArgs, ShowArgs, share, time};
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;
use crate::written::said;

/// Swing a bat: speed, loads on hands and wrists, and what ran out first
///
/// The fastest swing that still meets the ball under control, or one that takes a given time.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift swing --stroke pull --bat \"Old faithful\" --out swing")]
pub struct Args {
    #[command(flatten)]
    given: ScenarioArgs,

    /// The stroke: drive, pull, hook, or one of the scenario's own; the pull if left out
    #[arg(long, value_name = "NAME")]
    stroke: Option<String>,

    #[command(flatten)]
    bat: BatArg,

    /// Every strength times this share, like 0.8 or "80 %", for study
    #[arg(long, value_name = "SHARE", default_value = "1", value_parser = share)]
    capacity: f64,

    /// From the top of the backlift to the ball, like "0.45 s"; the fastest if left out
    #[arg(long, value_name = "TIME", value_parser = time)]
    time: Option<f64>,

    /// Write the series over time (CSV) and the arc (SVG, PNG) into this folder
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

/// Swings.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = args.given.load()?;
    let bat = args.bat.of(&loaded)?;
    let stroke = args.stroke.as_deref().map_or(Ok(loaded.lead()), |it| loaded.stroke(it))?;
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let progress = Progress::start();
    let swung = swung::swing(&loaded, bat, stroke, args.capacity, args.time, &progress)?;
    drop(progress);
    let beside = Beside::scenario(&loaded);
    said(
        "swing",
        &args.show,
        folder,
        &beside,
        || figures::of(&swung),
        |units| told::told(&swung, units),
        |folder, units| files::add(folder, &swung, &beside, units),
    )?;
    Ok(Outcome::Done)
}

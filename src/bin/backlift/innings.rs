//! `backlift innings`: the same bat through an innings, ball by ball.

mod figures;
mod files;
mod told;

use std::path::PathBuf;

use backlift::files::save::Folder;
use backlift::questions::innings::play;
pub use told::LIMITS;

use crate::beside::Beside;
use crate::given::{BatArg, ScenarioArgs, ShowArgs, share};
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;
use crate::written::said;

/// Play an innings with a bat: what each stroke is still worth at fifty, and at the end
///
/// Ball by ball, with rests, backing up and the scenario's mix of strokes.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift innings --bat \"Hand-me-down\" --out innings")]
pub struct Args {
    #[command(flatten)]
    given: ScenarioArgs,

    #[command(flatten)]
    bat: BatArg,

    /// Show only this stroke: drive, pull or hook
    #[arg(long, value_name = "NAME")]
    stroke: Option<String>,

    /// Every strength times this share, like 0.8 or "80 %", for study
    #[arg(long, value_name = "SHARE", default_value = "1", value_parser = share)]
    capacity: f64,

    /// Write the chart of the innings (SVG, PNG) into this folder
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

/// Plays.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = args.given.load()?;
    let bat = args.bat.of(&loaded)?;
    let shown = args.stroke.as_deref().map(|it| loaded.stroke(it)).transpose()?;
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let progress = Progress::start();
    let played = play(&loaded, bat, shown, args.capacity, &progress)?;
    drop(progress);
    let beside = Beside::scenario(&loaded);
    said(
        "innings",
        &args.show,
        folder,
        &beside,
        || figures::of(&played),
        |units| told::told(&played, units),
        |folder, units| files::add(folder, &played, &beside, units),
    )?;
    Ok(Outcome::Done)
}

//! `backlift matters`: which measurements matter for this player.

mod figures;
mod picture;
mod told;

use std::path::PathBuf;

use backlift::files::save::Folder;
use backlift::questions::matters::{self, Asked};

use crate::beside::Beside;
use crate::given::{ScenarioArgs, ShowArgs};
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;
use crate::written::said;

/// Find out which measurements matter for this player, and which need no more care
///
/// Every input is moved as far as its measurement or estimate may be off, all of them together, and the
/// pull is swung anew each time, fresh and at the end of the innings. The spread of each figure is then
/// divided among the inputs.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift matters --samples 4 --out matters")]
pub struct Args {
    #[command(flatten)]
    given: ScenarioArgs,

    /// Bat to study, by its label or its number from 0; the first if left out
    #[arg(long, value_name = "LABEL|N", allow_negative_numbers = true)]
    bat: Option<String>,

    /// Bat to set against it; if left out, the one that picks up most differently
    #[arg(long, value_name = "LABEL|N", allow_negative_numbers = true)]
    against: Option<String>,

    /// Rows of draws, best a power of two: more is surer, and takes longer
    #[arg(long, value_name = "N", default_value_t = 32, value_parser = rows)]
    samples: usize,

    /// Move one term of the model after another too, and say what each does to which of the two bats is the better
    #[arg(long)]
    terms: bool,

    /// Swing both bats along many paths of each stroke too, and say what the player and what a bat gains by choosing
    #[arg(long)]
    paths: bool,

    /// Write a chart (SVG, PNG) into this folder
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

/// Studies.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = args.given.load()?;
    let bat = loaded.bat(args.bat.as_deref())?;
    let other = matters::other(&loaded, bat, args.against.as_deref())?;
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let progress = Progress::start();
    let asked = Asked { bat, other, rows: args.samples, terms: args.terms, paths: args.paths };
    let shown = matters::matters(&loaded, asked, &progress)?;
    drop(progress);
    let beside = Beside::scenario(&loaded);
    said(
        "matters",
        &args.show,
        folder,
        &beside,
        || figures::of(&shown),
        |units| told::told(&shown, units),
        |folder, units| picture::add(folder, &shown, &beside, units),
    )?;
    Ok(Outcome::Done)
}

/// Reads the number of rows.
fn rows(written: &str) -> Result<usize, String> {
    let rows = written.trim().parse().ok().filter(|it| (2..=4096).contains(it));
    rows.ok_or_else(|| "write a whole number from 2 to 4096".to_owned())
}

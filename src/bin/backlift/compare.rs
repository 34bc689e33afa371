//! `backlift compare`: two or more bats in one player's hands.

mod figures;
mod picture;
pub mod told;
mod worth;

use std::path::PathBuf;

use backlift::files::save::Folder;
use backlift::questions::advice::today;
use backlift::questions::compared::{Worths, chosen, compared};

use crate::beside::Beside;
use crate::given::{ScenarioArgs, ShowArgs};
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;
use crate::written::said;

/// Compare bats: what differs, is it real, can it be felt, what each is worth
///
/// Every figure of each bat in this player's hands, fresh and at fifty runs, the difference of
/// every two bats with its doubt, and the expected ball speed that `fit` chooses by.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift compare --bat \"Old faithful\" --bat \"Big edges\"")]
pub struct Args {
    #[command(flatten)]
    given: ScenarioArgs,

    /// A bat to compare, by its label or its number from 0; repeat it; all if left out
    #[arg(long, value_name = "LABEL|N", allow_negative_numbers = true)]
    bat: Vec<String>,

    /// Write a chart of the bat speeds, fresh and at fifty (SVG, PNG), into this folder
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

/// Compares.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = args.given.load()?;
    let places = chosen(&loaded, &args.bat)?;
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let progress = Progress::start();
    // Of all bats, as `fit` does: the draws hang on which is now used and on every bat's bench.
    let worths = Worths::of(&today(&loaded, None, &progress, [0.0, 0.0])?, &places);
    let bats = places.iter().filter_map(|n| loaded.bats.get(*n)).cloned().collect();
    let shown = compared(&loaded, bats, &progress)?;
    drop(progress);
    let beside = Beside::scenario(&loaded);
    said(
        "compare",
        &args.show,
        folder,
        &beside,
        || figures::of(&shown, &worths),
        |units| told::told(&shown, &worths, units),
        |folder, units| picture::add(folder, &shown, &beside, units),
    )?;
    Ok(Outcome::Done)
}

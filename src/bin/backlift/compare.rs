//! `backlift compare`: two or more bats in one player's hands.

mod figures;
mod picture;
mod shown;
pub mod told;
mod worth;

use std::path::PathBuf;

use backlift::bat::figures::WeighedBat;
use backlift::comparison::bats::{ComparisonFault, compare};
use backlift::comparison::swung::Asked;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::innings::played::delivery;

use crate::beside::Beside;
use crate::given::{ScenarioArgs, ShowArgs};
use crate::loaded::{Loaded, load};
use crate::outcome::{Outcome, Stop};
use crate::placed::innings_stop;
use crate::progress::Progress;
use crate::questions::advice;
use crate::written::said;
pub use shown::Shown;
use worth::Worths;

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
    let loaded = load(&args.given)?;
    let places = chosen(&loaded, &args.bat)?;
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let progress = Progress::start();
    // Of all bats, as `fit` does: the draws hang on which is now used and on every bat's bench.
    let worths = Worths::of(&advice::today(&loaded, None, &progress, [0.0, 0.0])?, &places);
    let bats = places.iter().filter_map(|n| loaded.bats.get(*n)).cloned().collect();
    let shown = compared(&loaded, bats, &progress)?;
    drop(progress);
    let beside = Beside::scenario(&loaded);
    said(
        "compare",
        &args.show,
        folder,
        || Ok(beside.figures(figures::of(&shown, &worths))),
        |units| beside.told(&told::told(&shown, &worths, units)),
        |folder, units| picture::add(folder, &shown, &beside, units),
    )
}

/// Numbers of the bats asked for, each once, in the order asked.
fn chosen(loaded: &Loaded, named: &[String]) -> Result<Vec<usize>, Stop> {
    let mut places = Vec::new();
    for name in named {
        let place = loaded.bat(Some(name))?;
        if !places.contains(&place) {
            places.push(place);
        }
    }
    let all = named.is_empty();
    if all {
        places = (0..loaded.bats.len()).collect();
    }
    if places.len() < 2 {
        let (what, help) = match all {
            true => ("the scenario has only one bat", "weigh another bat and add it to `bats`"),
            false => ("one bat is no comparison", "name another with --bat, or leave --bat out"),
        };
        return Err(Fault::new(what).help(help).into());
    }
    Ok(places)
}

/// Every figure of these bats in the player's hands, and every difference.
pub fn compared(
    loaded: &Loaded,
    bats: Vec<WeighedBat>,
    progress: &Progress,
) -> Result<Shown, Stop> {
    let scenario = &loaded.scenario;
    let first = bats.first().ok_or_else(|| Stop::OurMistake("there is no bat".into()))?;
    let batter = loaded.batter(first, 1.0)?;
    let asked_time_s = loaded.asked_times_s(&batter)?;
    let asked = Asked {
        batter: &batter,
        plan: &scenario.innings,
        delivery: delivery(&scenario.bowling),
        asked_time_s: &asked_time_s,
        ball_kg: scenario.fit.ball_mass_kg,
    };
    let comparison = compare(&asked, &bats, &|doing, share| progress.report(doing, share))
        .map_err(|it| match it {
            ComparisonFault::Innings(fault) => innings_stop(&loaded.places, fault),
            ComparisonFault::Stopped => Stop::Cancelled,
            ComparisonFault::TooFew { .. } | ComparisonFault::Bat(_) => {
                Stop::OurMistake(it.to_string())
            }
        })?;
    let strokes = loaded.strokes.iter().map(|it| it.name.clone()).collect();
    Ok(Shown {
        comparison,
        bats,
        strokes,
        junior: loaded.is_junior(),
        reaction_time_s: scenario.bowling.reaction_time_s,
    })
}

//! `backlift fit`: the search, the map, the card.

mod figures;
pub mod pictures;
pub mod told;

use std::path::PathBuf;
use std::time::Instant;

use backlift::card::Card;
use backlift::card::composed::compose;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::fit::fitting::{FitFault, Fitting, Order, fit};
use backlift::fit::headline::{Headline, headline};

use crate::given::{ScenarioArgs, ShowArgs};
use crate::json;
use crate::loaded::{Loaded, load};
use crate::outcome::{Outcome, Stop};
use crate::placed::innings_stop;
use crate::progress::Progress;
use crate::written::written;

/// Find the bat that fits a player, and write the maker's card
///
/// Swings the bats that can be made, keeps those with which this player still pulls and hooks in
/// time at the end of the innings, and asks for the one with the most ball speed, the lighter
/// pickup where it makes no difference.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift fit --out fitting")]
pub struct Args {
    #[command(flatten)]
    given: ScenarioArgs,

    /// Folder for the card (PDF, RON, PNG), the map, the innings chart and every figure as JSON
    #[arg(long, value_name = "DIR", default_value = "fitting")]
    out: PathBuf,

    #[command(flatten)]
    show: ShowArgs,
}

/// A fitting with its headline and card.
pub struct Fitted {
    pub loaded: Loaded,
    pub fitting: Fitting,
    pub headline: Headline,
    pub card: Card,
}

/// Name and version that stand on the card.
const SOFTWARE: &str = concat!("backlift ", env!("CARGO_PKG_VERSION"));

/// Searches and writes.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let started = Instant::now();
    let loaded = load(&args.given)?;
    let mut folder = Folder::open(&args.out)?;
    let fitted = fitted(loaded, &Progress::start())?;
    let units = args.show.units();
    let document = json::document("fit", &figures::of(&fitted, started.elapsed().as_secs_f64())?)?;
    pictures::add(&mut folder, &fitted, units)?;
    folder.add("fit.json", document.as_bytes())?;
    let text = match args.show.json {
        true => document,
        false => fitted.loaded.under_note(told::told(&fitted, units)),
    };
    json::print(&(text + &written(folder, args.show.json)?))?;
    Ok(Outcome::Done)
}

/// The search, its headline and its card.
pub fn fitted(loaded: Loaded, progress: &Progress) -> Result<Fitted, Stop> {
    let fitting = search(&loaded, progress)?;
    let headline = headline(&fitting, &|doing, share| progress.report(doing, 0.8 + 0.2 * share))
        .map_err(|fault| stop(&loaded, fault))?;
    let card = compose(&fitting, &headline, loaded.scenario.invented, SOFTWARE)
        .map_err(|it| Stop::OurMistake(it.to_string()))?;
    Ok(Fitted { loaded, fitting, headline, card })
}

/// The search alone.
pub fn search(loaded: &Loaded, progress: &Progress) -> Result<Fitting, Stop> {
    let order = Order {
        player: &loaded.player,
        strokes: &loaded.strokes,
        strokes_otherwise: &loaded.strokes_otherwise,
        bats: &loaded.bats,
        plan: &loaded.scenario.innings,
        bowling: &loaded.scenario.bowling,
        limits: &loaded.scenario.fit,
        sizes: &loaded.sizes,
        laws: &loaded.laws,
    };
    fit(&order, &|doing, share| progress.report(doing, 0.8 * share))
        .map_err(|fault| stop(loaded, fault))
}

fn stop(loaded: &Loaded, fault: FitFault) -> Stop {
    let mend = "see fit.sizes, fit.lightest and fit.heaviest";
    match fault {
        FitFault::Cancelled => Stop::Cancelled,
        FitFault::Innings(fault) => innings_stop(&loaded.places, fault),
        FitFault::NoSize { .. } | FitFault::NothingToMake { .. } => {
            Stop::from(loaded.places.fault("fit", &fault.to_string(), mend))
        }
        FitFault::Swing(_) => no_answer(&fault),
        FitFault::Surrogate(it) if it.is_beyond_control() => no_answer(&it),
        other => Stop::OurMistake(other.to_string()),
    }
}

/// Right input, but a bat that this player cannot swing.
fn no_answer(fault: &dyn std::fmt::Display) -> Stop {
    let mend = "ask for a smaller size with fit.sizes, or a lighter bat with fit.heaviest";
    Stop::NoAnswer(Fault::new(fault.to_string()).help(mend))
}

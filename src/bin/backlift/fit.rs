//! `backlift fit`: the search, the map, the card.

mod figures;
pub mod pictures;
pub mod told;

use std::path::PathBuf;
use std::time::Instant;

use backlift::card::Card;
use backlift::card::composed::compose;
use backlift::files::save::Folder;
use backlift::fit::fitting::{Fitting, fit};
use backlift::fit::headline::{Headline, headline};

use crate::advice;
use crate::given::{ScenarioArgs, ShowArgs};
use crate::json;
use crate::loaded::{Loaded, load};
use crate::ounce::Ounces;
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;

/// Find the bat that fits a player, and write the maker's card
///
/// Says which of today's bats to use, whether a new one pays and which, and how sure that is: by the
/// ball speed that may be expected over the innings, late balls and mishits counted.
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

    /// Today's bats only, in about two seconds; writes nothing
    #[arg(long, conflicts_with = "out")]
    today: bool,

    /// Print the middles, the maker's figures and what the advice rests on as well
    #[arg(long, conflicts_with = "today")]
    all: bool,

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

impl Fitted {
    /// What an ounce costs along the bat to order, late in the innings.
    pub fn ounces(&self) -> Ounces {
        let setting = self.fitting.setting();
        Ounces {
            bat: self.fitting.recommendation.made.bat.clone().called(BAT_TO_ORDER),
            handle_diameter_m: self.card.handle_diameter_m,
            strokes: self.headline.ounces.clone(),
            pull: setting.batter.stroke_index("pull").unwrap_or(0),
            runs: setting.plan.runs,
        }
    }
}

/// What the bat on the card is called.
const BAT_TO_ORDER: &str = "the bat to order";

/// Name and version that stand on the card.
const SOFTWARE: &str = concat!("backlift ", env!("CARGO_PKG_VERSION"));

/// Searches and writes.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let started = Instant::now();
    let loaded = load(&args.given)?;
    let units = args.show.units();
    if args.today {
        let now = advice::today(&loaded, None, &Progress::start(), [0.0, 1.0])?;
        let text = match args.show.json {
            true => {
                let figures = figures::today(&loaded, &now, started.elapsed().as_secs_f64());
                json::document("fit", &figures)?
            }
            false => told::told_today(&loaded, &now, units),
        };
        json::print(&text)?;
        return Ok(Outcome::Done);
    }
    let mut folder = Folder::open(&args.out)?;
    let fitted = fitted(loaded, &Progress::start())?;
    let figures = figures::of(&fitted, started.elapsed().as_secs_f64())?;
    let document = json::document("fit", &figures)?;
    pictures::add(&mut folder, &fitted, units)?;
    folder.add("fit.json", document.as_bytes())?;
    let text = match (args.show.json, args.all) {
        (true, _) => document,
        (false, true) => told::told(&fitted, units) + &told::all(&fitted, units),
        (false, false) => told::told(&fitted, units),
    };
    let files = folder.commit()?;
    let said = match args.show.json {
        true => String::new(),
        false => format!(
            "Wrote card, map, innings and every figure to {}: {} files\n",
            args.out.display(),
            files.len()
        ),
    };
    json::print(&(text + &said))?;
    Ok(Outcome::Done)
}

/// The search, its headline and its card.
pub fn fitted(loaded: Loaded, progress: &Progress) -> Result<Fitted, Stop> {
    let fitting = search(&loaded, progress)?;
    let headline = headline(&fitting, &|doing, share| progress.report(doing, 0.8 + 0.2 * share))
        .map_err(|fault| advice::stop(&loaded, fault))?;
    let card = compose(&fitting, &headline, loaded.scenario.invented, SOFTWARE)
        .map_err(|it| Stop::OurMistake(it.to_string()))?;
    Ok(Fitted { loaded, fitting, headline, card })
}

/// The search alone.
pub fn search(loaded: &Loaded, progress: &Progress) -> Result<Fitting, Stop> {
    fit(&loaded.order(), &|doing, share| progress.report(doing, 0.8 * share))
        .map_err(|fault| advice::stop(loaded, fault))
}

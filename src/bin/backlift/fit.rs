//! `backlift fit`: the search, the map, the card.

mod figures;
mod told;

use std::path::PathBuf;
use std::time::Instant;

use backlift::card::order;
use backlift::files::save::Folder;
use backlift::questions::advice;
use backlift::questions::fitted::fitted;

use crate::fitting_files;
use crate::given::{ScenarioArgs, ShowArgs};
use crate::json;
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

    /// The order's number, to stand on the card; a number, not a name
    #[arg(long, value_name = "NUMBER", value_parser = order_number, conflicts_with = "today")]
    order: Option<String>,

    /// What the customer wishes besides, one line on the card; it changes no figure
    #[arg(long, value_name = "TEXT", value_parser = wish, conflicts_with = "today")]
    wish: Option<String>,

    /// Today's bats only, in about two seconds; writes nothing
    #[arg(long, conflicts_with = "out")]
    today: bool,

    /// Print the middles, the maker's figures and what the advice rests on as well
    #[arg(long, conflicts_with = "today")]
    all: bool,

    #[command(flatten)]
    show: ShowArgs,
}

fn order_number(written: &str) -> Result<String, String> {
    let number = order::number(written).map_err(|it| it.to_string())?;
    number.ok_or_else(|| "write the order's number, like 17".to_owned())
}

fn wish(written: &str) -> Result<String, String> {
    let note = order::note(written).map_err(|it| it.to_string())?;
    note.ok_or_else(|| "write what is wished, or leave it out".to_owned())
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    let started = Instant::now();
    let mut loaded = args.given.load()?;
    if args.order.is_some() || args.wish.is_some() {
        let order = loaded.order.get_or_insert_default();
        order.number = args.order.or(order.number.take());
        order.wish.note = args.wish.or(order.wish.note.take());
    }
    let units = args.show.units();
    if args.today {
        let now = advice::today(&loaded, None, &Progress::start(), [0.0, 1.0])?;
        let text = match args.show.json {
            true => {
                let figures = figures::today(&loaded, &now, started.elapsed().as_secs_f64());
                json::document("fit", figures)?
            }
            false => told::told_today(&loaded, &now, units),
        };
        json::print(&text)?;
        return Ok(Outcome::Done);
    }
    let mut folder = Folder::open(&args.out)?;
    let fitted = fitted(loaded, &Progress::start())?;
    let figures = figures::of(&fitted, started.elapsed().as_secs_f64());
    let document = json::document("fit", figures)?;
    fitting_files::add(&mut folder, &fitted, units)?;
    folder.add("fit.json", document.as_bytes())?;
    let files = folder.commit()?.len();
    let text = match args.show.json {
        true => document,
        false => {
            let all = if args.all { told::all(&fitted, units) } else { String::new() };
            let to = args.out.display();
            let wrote =
                format!("Wrote card, map, innings and every figure to {to}: {files} files\n");
            told::told(&fitted, units) + &all + &wrote
        }
    };
    json::print(&text)?;
    Ok(Outcome::Done)
}

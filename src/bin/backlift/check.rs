//! `backlift check`: a delivered bat against its card.

pub mod told;

use std::path::PathBuf;

use backlift::card::returned_bat;
use backlift::files::fault::Fault;
use backlift::questions::delivered::{self, weigh_up};
use backlift::questions::miss;

use crate::bench::Bench;
use crate::beside::Beside;
use crate::given::{ScenarioArgs, ShowArgs};
use crate::outcome::{Outcome, Stop, warned};
use crate::own::opened;
use crate::progress::Progress;
use crate::written::say;

/// Check a delivered bat against its card: accept it, or send it back
///
/// What was measured on the bat comes from the options below, or from a bat of a scenario. With a
/// scenario the check also says what a miss does to the pull at fifty. Exit code 1: send it back.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift check fitting/card.ron --mass 894g --balance 502mm --time 41.8s")]
pub struct Args {
    /// The card the bat was ordered with, or the bat's own file: then the last reading is checked
    #[arg(value_name = "CARD.ron|BAT.ron")]
    card: PathBuf,

    /// The player's scenario, to see what a miss does to the pull at fifty
    scenario: Option<PathBuf>,

    /// Put a value over one field of the scenario, like player.age=14; may be repeated
    #[arg(long = "set", value_name = "PATH=VALUE", requires = "scenario")]
    set: Vec<String>,

    /// The scenario's bat that was delivered, by its label or its number from 0
    #[arg(long, value_name = "LABEL|N", allow_negative_numbers = true, requires = "scenario")]
    bat: Option<String>,

    #[command(flatten)]
    bench: Bench,

    #[command(flatten)]
    show: ShowArgs,
}

/// Checks.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let own = opened(&args.card)?;
    let card = own.card()?.clone();
    let given = args.scenario.map(|it| ScenarioArgs { scenario: Some(it), set: args.set });
    let loaded = given.as_ref().map(ScenarioArgs::load).transpose()?;
    let reading = match (args.bench.reading(&card), &args.bat) {
        (None, None) => own.finished()?,
        (given, _) => given,
    };
    let weighed = match (reading, &loaded) {
        (Some(reading), _) => warned(weigh_up(&reading, |it| args.bench.called(it))?),
        (None, Some(loaded)) => loaded.bats[loaded.bat(args.bat.as_deref())?].clone(),
        (None, None) => {
            let fault = Fault::new("nothing was measured on the delivered bat");
            let help = "give --mass, --balance and --time, or a scenario with the bat in it";
            return Err(fault.help(help).into());
        }
    };
    let check = returned_bat::check(&card, &delivered::returned(&weighed));
    let progress = Progress::start();
    let miss = loaded.as_ref().map(|it| miss::miss(it, &card, &weighed, &progress)).transpose()?;
    drop(progress);
    let of_scenario = loaded.as_ref().map(Beside::scenario).unwrap_or_default();
    let beside = Beside::card(&card).and(of_scenario);
    say(
        "check",
        &args.show,
        &beside,
        || told::figures(&check, miss.as_ref()),
        |units| told::told(&check, miss.as_ref(), units),
    )?;
    Ok(if check.accepted { Outcome::Done } else { Outcome::NotAccepted })
}

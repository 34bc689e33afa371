//! `backlift check`: a delivered bat against its card.

use std::path::PathBuf;

use backlift::card::Figure;
use backlift::card::returned_bat::{self, Check, DecidedBy, Item, Within};
use backlift::files::fault::Fault;
use backlift::questions::delivered::{self, weigh_up};
use backlift::questions::loaded::Loaded;
use backlift::questions::miss::{self, Miss};
use backlift::units::{Quantity, Units, spoken};
use serde_json::{Value, json};

use crate::bench::Bench;
use crate::beside::Beside;
use crate::given::{ScenarioArgs, ShowArgs};
use crate::outcome::{Outcome, Stop, warned};
use crate::own::opened;
use crate::paragraph::{paragraph, set_in};
use crate::progress::Progress;
use crate::sentences::returned::{Told, in_words};
use crate::table::table;
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
    let miss = |it: &Loaded| miss::miss(it, &card, &weighed, &Progress::start());
    let miss = loaded.as_ref().map(miss).transpose()?;
    let of_scenario = loaded.as_ref().map(Beside::scenario).unwrap_or_default();
    let beside = Beside::card(&card).and(of_scenario);
    say(
        "check",
        &args.show,
        &beside,
        || figures(&check, miss.as_ref()),
        |units| told(&check, miss.as_ref(), units),
    )?;
    Ok(if check.accepted { Outcome::Done } else { Outcome::NotAccepted })
}

/// Everything, the verdict first.
fn told(check: &Check, miss: Option<&Miss>, units: Units) -> String {
    let mut out = paragraph(&check.sentence()) + "\n\n";
    let row = |it: &Item| {
        let Told { measured, asked, limits, within } = in_words(it, units);
        [it.figure.words().to_owned(), measured, format!("{asked}\n{limits}"), within]
    };
    let heads = ["", "measured", "asked, and its limits", "within"];
    out += &table(&heads, check.items.iter().map(row));
    let places = Figure::ALL
        .iter()
        .filter_map(|it| Some(format!("{} {}", it.words(), it.about().taken_from?)))
        .collect::<Vec<_>>();
    let units_apart = Figure::ALL
        .iter()
        .filter(|it| it.about().quantity.is_none())
        .map(|it| format!("{} in {}", it.words(), it.about().unit))
        .collect::<Vec<_>>();
    let whence = format!("{}; {}", places.join(", "), units_apart.join(", "));
    out += &(set_in(&whence) + "\n");
    if let Some(it) = check.items.iter().find(|it| it.within == Within::Unsure) {
        let mend = match it.figure {
            Figure::SwingMoment => "time more swings",
            _ => "measure again, more closely",
        };
        let words = "best guess: the error of the reading reaches past a limit; to be surer,";
        out += &(set_in(&format!("{words} {mend}")) + "\n");
    }
    out += &match miss {
        Some(miss) => pull_at_fifty(miss, units),
        None => "For what a miss does to the pull at fifty, name the scenario after the card\n"
            .to_owned(),
    };
    out
}

fn pull_at_fifty(miss: &Miss, units: Units) -> String {
    let speed = |it: f64| spoken(Quantity::Speed, it, miss.difference_sd_m_s, units);
    let size = miss.difference_m_s.abs();
    let told = if size <= 1.96 * miss.difference_sd_m_s {
        "no different within the measuring error".to_owned()
    } else {
        let way = if miss.difference_m_s < 0.0 { "slower" } else { "faster" };
        format!("{} {way}", speed(size))
    };
    let words = format!(
        "The pull at fifty: {} with the bat as ordered, {} as delivered ({} ± {}): {told}",
        speed(miss.as_ordered_m_s),
        speed(miss.as_delivered_m_s),
        speed(miss.difference_m_s),
        speed(miss.difference_sd_m_s)
    );
    paragraph(&words) + "\n"
}

/// The result for other programs, SI; a line's figure has its unit in its name.
fn figures(check: &Check, miss: Option<&Miss>) -> Value {
    json!({
        "accepted": check.accepted,
        "sentence": check.sentence(),
        "decided_by": match check.decided_by {
            DecidedBy::Worth => "worth",
            DecidedBy::SwingMoment => "swing_moment",
            DecidedBy::SwingMomentReading => "swing_moment_reading",
            DecidedBy::WeightAndBalance => "weight_and_balance",
            DecidedBy::TooLittleMeasured => "too_little_measured",
        },
        "worth_lost_share": check.worth_lost_share,
        "items": check.items.iter().map(item).collect::<Value>(),
        "pull_at_fifty": miss.map(|it| json!({
            "as_ordered_m_s": it.as_ordered_m_s,
            "as_delivered_m_s": it.as_delivered_m_s,
            "difference_m_s": it.difference_m_s,
            "difference_sd_m_s": it.difference_sd_m_s,
        })),
    })
}

fn item(it: &Item) -> Value {
    json!({
        "figure": it.figure.about().keys[0],
        "asked": it.asked.target,
        "tolerance": it.asked.tolerance,
        "measured": it.measured.map(|it| it.value),
        "measured_sd": it.measured.map(|it| it.sd),
        // Whether the measured value itself lies between the limits; then with its error considered.
        "within": it.measured.map(|_| it.reads_inside()),
        "verdict": match it.within {
            Within::Yes => "yes",
            Within::No => "no",
            Within::Unsure => "unsure",
            Within::NotMeasured => "not_measured",
        },
    })
}

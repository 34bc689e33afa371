//! `backlift plane`: from a part-made bat to its card, a pass at a time.

mod figures;
pub mod told;

use std::path::PathBuf;

use backlift::files::assets::sizes;
use backlift::files::card_file;
use backlift::files::fault::Fault;
use backlift::files::shape::load;
use backlift::questions::delivered::weigh_up_part_made;
use backlift::questions::placed::argument_fault;
use backlift::questions::plane::{PartMade, planned};
use backlift::units::{Quantity, parse, share};
use backlift::workshop::cautions::SHAPE;
use backlift::workshop::plane::{Addition, Finish};

use crate::bench::Bench;
use crate::beside::Beside;
use crate::given::ShowArgs;
use crate::outcome::{Outcome, Stop, warned};
use crate::written::say;

/// Plane a part-made bat to its card: where to take how many grams off, in which order
///
/// Weigh, balance and swing the bat as it lies on the bench. Each pass comes with the reading to expect
/// after it: stop there, weigh again, and ask anew. What still goes on (twine, grip, toe guard, oil) is
/// counted before. Exit code 1: the bat is too light already, or no plan meets the card.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift plane fitting/card.ron --mass 900g --balance 523mm --time 42.6s")]
pub struct Args {
    /// The card the bat is made for
    #[arg(value_name = "CARD.ron")]
    card: PathBuf,

    #[command(flatten)]
    bench: Bench,

    /// The bat's shape as described for `backlift shape`; without it, the size's own at this weight
    #[arg(long, value_name = "FILE")]
    shape: Option<PathBuf>,

    /// What is on the bat already, of: grip, two grips, twine, toe guard, oil, labels, all
    #[arg(long, value_name = "LIST", default_value = "")]
    on: String,

    /// Tape that goes on afterwards: its weight, and its middle from the toe, like "12 g at 8 in"; may be repeated
    #[arg(long, value_name = "MASS at LENGTH")]
    tape: Vec<String>,

    /// One standard deviation of what the plane takes off, as a share of what it should
    #[arg(long, value_name = "SHARE", default_value = "10 %")]
    planing_error: String,

    #[command(flatten)]
    show: ShowArgs,
}

/// Plans.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let card = card_file::read(&args.card)?;
    let finish = finish(&args.on)?;
    let planing_sd = share(&args.planing_error).filter(|it| (0.0..=0.5).contains(it));
    let planing_sd = planing_sd.ok_or_else(|| {
        let help = "write it like \"10 %\"";
        argument_fault("--planing-error", &args.planing_error, "no share from 0 to 50 %", help)
    })?;
    let reading = args.bench.reading(&card).ok_or_else(|| {
        Fault::new("nothing was measured on the bench")
            .help("give --mass, --balance and --time of the bat as it is now")
    })?;
    let weighed = warned(weigh_up_part_made(&reading, |it| args.bench.called(it))?);
    let described =
        args.shape.as_deref().map(|it| load(Some(it), &[], &sizes()?).map_err(Stop::from));
    let part_made = PartMade {
        weighed,
        described: described.transpose()?,
        finish,
        besides: tape(&args.tape, card.length_m)?,
        planing_sd,
    };
    let planned = planned(card, part_made)?;
    let beside = Beside::card(&planned.card).after(SHAPE);
    say(
        "plane",
        &args.show,
        &beside,
        || figures::of(&planned),
        |units| told::told(&planned, units),
    )?;
    Ok(if planned.plan.meets.len() == 3 { Outcome::Done } else { Outcome::NotAccepted })
}

/// More tape than this is another bat, kg: assumption, wide on purpose.
const MOST_TAPE_KG: f64 = 0.5;

/// Tape to come, on a bat so long.
fn tape(given: &[String], length_m: f64) -> Result<Vec<Addition>, Stop> {
    let read = |it: &String| {
        let (mass, from_toe) = it.split_once(" at ")?;
        let mass_kg =
            parse(Quantity::Mass, mass).ok().filter(|it| *it > 0.0 && *it <= MOST_TAPE_KG)?;
        let from_toe_m = parse(Quantity::Length, from_toe).ok()?;
        let on_bat = (0.0..=length_m).contains(&from_toe_m);
        on_bat.then(|| Addition::tape(mass_kg, length_m - from_toe_m))
    };
    let fault = |it: &String| {
        let help =
            "write its weight and the place of its middle from the toe, like \"12 g at 8 in\"";
        argument_fault("--tape", it, "no tape on this bat", help)
    };
    given.iter().map(|it| read(it).ok_or_else(|| fault(it))).collect()
}

fn finish(on: &str) -> Result<Finish, Stop> {
    let mut out = Finish::BARE;
    for word in on.split(',').map(str::trim).filter(|it| !it.is_empty()) {
        match word.to_lowercase().as_str() {
            "grip" | "one grip" => (out.grips, out.bound) = (1, true),
            "two grips" | "2 grips" => (out.grips, out.bound) = (2, true),
            "twine" => out.bound = true,
            "toe guard" | "guard" => out.toe_guard = true,
            "oil" => out.oiled = true,
            "labels" | "face sheet" => out.labels = true,
            "all" => out = Finish::ALL,
            _ => {
                let help = "name some of: grip, two grips, twine, toe guard, oil, labels, all";
                let message = format!("{word:?} is not known here");
                return Err(argument_fault("--on", on, &message, help));
            }
        }
    }
    Ok(out)
}

//! `backlift season`: how a bat drifts with the air, and what to aim for today.

mod bat;
mod figures;
mod told;

use std::path::PathBuf;

use backlift::files::fault::Fault;
use backlift::questions::season::{self, Asked};
use backlift::workshop::season::Air;

use crate::beside::Beside;
use crate::given::ShowArgs;
use crate::outcome::{Outcome, Stop};
use crate::own::opened;
use crate::written::say;

/// Water in the wood: how a bat drifts with the air, and what to aim for on the bench today
///
/// From the workshop's air to that of the place where the bat will live: weight, balance point and
/// pickup there, how fast, bare and oiled, and what the scale must read today so that the bat is as
/// wanted there.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift season --size 6 --mass 894g --from \"18 C, 55 %\" --to \"30 C, 75 %\"")]
pub struct Args {
    /// The card the bat was ordered with, or the bat's own file; or give --mass and --size
    #[arg(value_name = "CARD.ron|BAT.ron", conflicts_with_all = ["mass", "size"], required_unless_present = "mass")]
    card: Option<PathBuf>,

    /// The workshop's air, a mean of some weeks, like "18 C, 55 %"; the last that stands in the bat's own file if left out
    #[arg(long, value_name = "AIR", value_parser = crate::bench::air, allow_hyphen_values = true)]
    from: Option<Air>,

    /// The air where the bat will live, like "30 C, 75 %"
    #[arg(long, value_name = "AIR", value_parser = crate::bench::air, allow_hyphen_values = true)]
    to: Air,

    #[command(flatten)]
    bench: bat::Bench,

    /// Oiled or with a face sheet; as on the card, else this
    #[arg(long, conflicts_with = "bare")]
    oiled: bool,

    /// Not oiled
    #[arg(long)]
    bare: bool,

    /// Also after this many days in the new air
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..=3650))]
    days: Option<u32>,

    /// Also what pressing the face back by this much did to the bat, like "2 mm"
    #[arg(long, value_name = "LENGTH", value_parser = crate::bench::length)]
    pressed: Option<f64>,

    /// How much denser than the willow the pressed face is, like "40 %"
    #[arg(long, value_name = "SHARE", value_parser = denser, requires = "pressed")]
    denser: Option<f64>,

    #[command(flatten)]
    show: ShowArgs,
}

/// What the face can be is for the pressing to say.
fn denser(written: &str) -> Result<f64, String> {
    backlift::units::share(written)
        .filter(|it| *it > 0.0)
        .ok_or_else(|| "write a share above zero, like \"40 %\"".to_owned())
}

/// Carries the bat from one air to the other.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let own = args.card.as_deref().map(opened).transpose()?;
    let given = bat::given(own.as_ref(), &args.bench)?;
    let from = args.from.or_else(|| own.as_ref()?.air()).ok_or_else(|| {
        Fault::new("the workshop's air is not known")
            .help("give it with --from, like --from \"18 C, 55 %\", or write it beside a reading of the bat's own file")
    })?;
    let from_card = given.card.as_ref().map(|it| it.condition.oiled);
    let oiled = if args.bare { false } else { args.oiled || from_card.unwrap_or(true) };
    let asked = Asked {
        airs: [from, args.to],
        oiled,
        days: args.days,
        pressed_m: args.pressed,
        denser: args.denser,
    };
    let found = season::season(&given, asked)?;
    let beside = given.card.as_ref().map(Beside::card).unwrap_or_default();
    say(
        "season",
        &args.show,
        &beside,
        || figures::of(&given, &found),
        |units| told::told(&given, &found, units),
    )?;
    Ok(Outcome::Done)
}

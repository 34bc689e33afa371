//! `backlift trial`: tape a bat the player owns, so that it picks up like another.

mod told;
mod wanted;

use backlift::fit::trial::{Near, Pickup, Trial, places, trial};
use serde::Serialize;

use crate::given::{ScenarioArgs, ShowArgs};
use crate::json;
use crate::loaded::load;
use crate::outcome::{Outcome, Stop};
use wanted::{Wanted, WantedArgs};

/// Feel it before you order: tape a bat you own to pick up like another
///
/// How many whole grams to tape where (handle top, shoulder, back of the blade, toe), and how near
/// that comes. For shadow swings and soft throws only.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift trial --bat \"Old faithful\" --like-bat \"Big edges\"")]
pub struct Args {
    #[command(flatten)]
    given: ScenarioArgs,

    /// The bat to tape, by its label or its number from 0; the first if left out
    #[arg(long, value_name = "LABEL|N", allow_negative_numbers = true)]
    bat: Option<String>,

    #[command(flatten)]
    wanted: WantedArgs,

    #[command(flatten)]
    show: ShowArgs,
}

/// Finds the tape.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = load(&args.given)?;
    let place = loaded.bat(args.bat.as_deref())?;
    let Some(owned) = loaded.bats.get(place) else {
        return Err(Stop::OurMistake("the bat chosen is not there".into()));
    };
    let wanted = args.wanted.wanted(&loaded, owned)?;
    let found = trial(Pickup::of(&owned.bat), wanted.pickup, &places(owned.family().reference()));
    let cautions = told::cautions(loaded.player.age_y);
    let text = match args.show.json {
        true => json::document("trial", &row(&owned.reading.label, &wanted, &found, &cautions))?,
        false => {
            loaded.under_note(told::told(owned, &wanted, &found, &cautions, args.show.units()))
        }
    };
    json::print(&text)?;
    Ok(Outcome::Done)
}

#[derive(Serialize)]
struct Row {
    /// Label of the bat that is taped.
    bat: String,
    /// What it shall feel like, in words.
    like: String,
    weights: Vec<Weight>,
    owned: Figures,
    reached: Figures,
    wanted: Figures,
    /// `alike`, `swing_only`, `owned_heavier` or `too_far`.
    near: &'static str,
    cautions: Vec<String>,
}

#[derive(Serialize)]
struct Weight {
    mass_kg: f64,
    from_top_m: f64,
    place: &'static str,
}

#[derive(Serialize)]
struct Figures {
    mass_kg: f64,
    balance_m: f64,
    swing_moment_kg_m2: f64,
    hold_moment_n_m: f64,
}

fn figures(it: &Pickup) -> Figures {
    Figures {
        mass_kg: it.mass_kg,
        balance_m: it.balance_m,
        swing_moment_kg_m2: it.swing_moment_kg_m2,
        hold_moment_n_m: it.hold_moment_n_m(),
    }
}

fn row(label: &str, wanted: &Wanted, found: &Trial, cautions: &[String]) -> Row {
    let weight = |it: &backlift::fit::trial::Tape| Weight {
        mass_kg: it.mass_kg(),
        from_top_m: it.place.from_top_m,
        place: it.place.words,
    };
    Row {
        bat: label.to_owned(),
        like: wanted.words.clone(),
        weights: found.weights.iter().map(weight).collect(),
        owned: figures(&found.owned),
        reached: figures(&found.reached),
        wanted: figures(&found.wanted),
        near: match found.near {
            Near::Alike => "alike",
            Near::SwingOnly => "swing_only",
            Near::OwnedHeavier => "owned_heavier",
            Near::TooFar => "too_far",
        },
        cautions: cautions.to_vec(),
    }
}

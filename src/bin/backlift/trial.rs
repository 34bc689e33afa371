//! `backlift trial`: tape a bat the player owns, so that it swings like another.

mod swung;
mod told;
mod wanted;

use backlift::fit::trial::{Near, Pickup};
use serde::Serialize;

use crate::beside::Beside;
use crate::given::{ScenarioArgs, ShowArgs};
use crate::json;
use crate::loaded::load;
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;
use swung::Swung;
use wanted::{Wanted, WantedArgs};

/// Feel it before you order: tape a bat you own to swing like another
///
/// How many whole grams to tape where (handle top, shoulder, back of the blade, toe), so that the late
/// pull is as fast as with the other bat, and how near that comes in each stroke. For shadow swings and
/// soft throws only.
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
    let progress = Progress::start();
    let wanted = args.wanted.wanted(&loaded, owned, &progress)?;
    let found = swung::trial(&loaded, owned, &wanted, &progress)?;
    drop(progress);
    let beside = Beside::scenario(&loaded)
        .after(told::cautions(loaded.player.age_y))
        .and(wanted.beside.clone());
    let text = match args.show.json {
        true => {
            let row = row(&owned.reading.label, &wanted, &found);
            json::document("trial", &beside.figures(row))?
        }
        false => beside.told(&told::told(owned, &wanted, &found, args.show.units())),
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
    /// The stroke whose bat speed is aimed at.
    stroke: String,
    /// `alike`, `swing_only`, `owned_heavier` or `too_far`.
    near: &'static str,
    strokes: Vec<StrokeRow>,
}

/// Bat speeds of a stroke at fifty, as swung.
#[derive(Serialize)]
struct StrokeRow {
    stroke: String,
    owned_bat_speed_m_s: f64,
    reached_bat_speed_m_s: f64,
    wanted_bat_speed_m_s: f64,
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

fn row(label: &str, wanted: &Wanted, found: &Swung) -> Row {
    let Swung { trial, strokes, aimed } = found;
    let weight = |it: &backlift::fit::trial::Tape| Weight {
        mass_kg: it.mass_kg(),
        from_top_m: it.place.from_top_m,
        place: it.place.words,
    };
    let stroke = |it: &swung::StrokeSpeeds| StrokeRow {
        stroke: it.stroke.clone(),
        owned_bat_speed_m_s: it.owned_m_s,
        reached_bat_speed_m_s: it.reached_m_s,
        wanted_bat_speed_m_s: it.wanted_m_s,
    };
    Row {
        stroke: strokes.get(*aimed).map_or_else(String::new, |it| it.stroke.clone()),
        strokes: strokes.iter().map(stroke).collect(),
        bat: label.to_owned(),
        like: wanted.words.clone(),
        weights: trial.weights.iter().map(weight).collect(),
        owned: figures(&trial.owned),
        reached: figures(&trial.reached),
        wanted: figures(&trial.wanted),
        near: match trial.near {
            Near::Alike => "alike",
            Near::SwingOnly => "swing_only",
            Near::OwnedHeavier => "owned_heavier",
            Near::TooFar => "too_far",
        },
    }
}

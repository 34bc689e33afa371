//! `backlift trial`: tape a bat the player owns, so that it swings like another.

mod told;

use std::path::PathBuf;

use backlift::bat::figures::WeighedBat;
use backlift::files::card_file;
use backlift::fit::trial::{Near, Pickup, Tape};
use backlift::questions::loaded::Loaded;
use backlift::questions::taped::wanted::{self, Wanted};
use backlift::questions::taped::{StrokeSpeeds, Taped, taped};
use serde_json::{Value, json};

use crate::beside::Beside;
use crate::given::{ScenarioArgs, ShowArgs};
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;
use crate::written::say;

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

/// Ways to say which bat.
#[derive(clap::Args)]
pub struct WantedArgs {
    /// Like the bat of this maker's card (RON)
    #[arg(long, value_name = "CARD.ron", conflicts_with_all = ["like_bat", "mass"])]
    like: Option<PathBuf>,

    /// Like another bat of the scenario, by its label or its number from 0
    #[arg(long, value_name = "LABEL|N", conflicts_with = "mass")]
    like_bat: Option<String>,

    /// Like a bat of this dead weight, with the two figures below
    #[arg(long, value_name = "WEIGHT", requires_all = ["balance", "swing_moment"])]
    mass: Option<String>,

    /// Its balance point from the top of the handle, like "20.9 in"
    #[arg(long, value_name = "LENGTH", requires = "mass")]
    balance: Option<String>,

    /// Its swing moment in kg m², like 0.245
    #[arg(long, value_name = "KG_M2", requires = "mass")]
    swing_moment: Option<String>,
}

impl WantedArgs {
    fn wanted(
        &self,
        loaded: &Loaded,
        owned: &WeighedBat,
        progress: &Progress,
    ) -> Result<Wanted, Stop> {
        match (&self.like, &self.like_bat, &self.mass) {
            (Some(path), ..) => {
                wanted::from_card(owned, card_file::read(path)?, &path.display().to_string())
            }
            (_, Some(named), _) => wanted::from_scenario(loaded, owned, named),
            (_, _, Some(mass)) => {
                // clap asks for both beside the weight
                let [balance, swing_moment] =
                    [&self.balance, &self.swing_moment].map(|it| it.as_deref().unwrap_or_default());
                wanted::from_figures(owned, mass, balance, swing_moment)
            }
            _ => wanted::recommended(loaded, progress),
        }
    }
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = args.given.load()?;
    let place = loaded.bat(args.bat.as_deref())?;
    let Some(owned) = loaded.bats.get(place) else {
        return Err(Stop::OurMistake("the bat chosen is not there".into()));
    };
    let progress = Progress::start();
    let wanted = args.wanted.wanted(&loaded, owned, &progress)?;
    let found = taped(&loaded, owned, &wanted, &progress)?;
    drop(progress);
    let beside = Beside::scenario(&loaded)
        .after(told::cautions(loaded.player.age_y))
        .and(wanted.card.as_ref().map(Beside::card).unwrap_or_default());
    say(
        "trial",
        &args.show,
        &beside,
        || figures(&owned.reading.label, &wanted, &found),
        |units| told::told(owned, &wanted, &found, units),
    )
}

/// The result for other programs, SI; bat speeds at fifty, as swung.
fn figures(label: &str, wanted: &Wanted, found: &Taped) -> Value {
    let Taped { trial, strokes, aimed } = found;
    let weight = |it: &Tape| {
        json!({
            "mass_kg": it.mass_kg(),
            "from_top_m": it.place.from_top_m,
            "place": it.place.words,
        })
    };
    let pickup = |it: &Pickup| {
        json!({
            "mass_kg": it.mass_kg,
            "balance_m": it.balance_m,
            "swing_moment_kg_m2": it.swing_moment_kg_m2,
            "hold_moment_n_m": it.hold_moment_n_m(),
        })
    };
    let stroke = |it: &StrokeSpeeds| {
        json!({
            "stroke": it.stroke,
            "owned_bat_speed_m_s": it.owned_m_s,
            "reached_bat_speed_m_s": it.reached_m_s,
            "wanted_bat_speed_m_s": it.wanted_m_s,
        })
    };
    json!({
        "bat": label,
        "like": wanted.words,
        "weights": trial.weights.iter().map(weight).collect::<Value>(),
        "owned": pickup(&trial.owned),
        "reached": pickup(&trial.reached),
        "wanted": pickup(&trial.wanted),
        "stroke": strokes.get(*aimed).map_or("", |it| &it.stroke),
        "near": match trial.near {
            Near::Alike => "alike",
            Near::SwingOnly => "swing_only",
            Near::OwnedHeavier => "owned_heavier",
            Near::TooFar => "too_far",
        },
        "strokes": strokes.iter().map(stroke).collect::<Value>(),
    })
}

//! `backlift season`: how a bat drifts with the air, and what to aim for today.

mod told;

use std::path::PathBuf;

use backlift::bat::sizes::{Size, named};
use backlift::card::Figure;
use backlift::files::air::air;
use backlift::files::assets::sizes;
use backlift::files::fault::Fault;
use backlift::measurement::bench::{BatReading, PendulumReading};
use backlift::questions::season::{self, Asked, Found, Given, Limits, THE_BAT};
use backlift::units::{FromEnd, Quantity, share};
use backlift::workshop::pressing::PRACTICE;
use backlift::workshop::season::swelling::{RADIAL, TANGENTIAL, swelling};
use backlift::workshop::season::{Air, State};
use serde_json::{Value, json};

use crate::bench::{above_zero, from_end, of_the_card, option};
use crate::beside::Beside;
use crate::given::{ShowArgs, in_log};
use crate::json::{doubted, joined};
use crate::outcome::{Outcome, Stop, warned};
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
    #[arg(long, value_name = "AIR", value_parser = in_log(air), allow_hyphen_values = true)]
    from: Option<Air>,

    /// The air where the bat will live, like "30 C, 75 %"
    #[arg(long, value_name = "AIR", value_parser = in_log(air), allow_hyphen_values = true)]
    to: Air,

    #[command(flatten)]
    bench: Bench,

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
    #[arg(long, value_name = "LENGTH", value_parser = above_zero(Quantity::Length))]
    pressed: Option<f64>,

    /// How much denser than the willow the pressed face is, like "40 %"
    #[arg(long, value_name = "SHARE", value_parser = denser, requires = "pressed")]
    denser: Option<f64>,

    #[command(flatten)]
    show: ShowArgs,
}

/// What the bat weighs in the workshop, or shall weigh where it will live.
#[derive(clap::Args)]
struct Bench {
    /// Scale weight, like "1021 g" or "2 lb 4 oz"
    #[arg(long, value_name = "MASS", value_parser = above_zero(Quantity::Mass), requires = "size")]
    mass: Option<f64>,

    /// Trade size, like "6" or "short handle"
    #[arg(long, value_name = "SIZE", requires = "mass")]
    size: Option<String>,

    /// Balance point, like "497 mm" from the top of the handle, or "309 mm from toe"; that of the size if left out
    #[arg(long, value_name = "LENGTH", value_parser = from_end, requires = "mass")]
    balance: Option<FromEnd>,

    /// Overall length, like "31.75 in"; that of the size if left out
    #[arg(long, value_name = "LENGTH", value_parser = above_zero(Quantity::Length), requires = "mass")]
    length: Option<f64>,

    /// Time of ten pendulum swings about 6 in (152 mm) from the top, like "13.46 s"
    #[arg(long, value_name = "TIME", value_parser = above_zero(Quantity::Time), requires = "mass")]
    time: Option<f64>,
}

/// What the face can be is for the pressing to say.
fn denser(written: &str) -> Result<f64, String> {
    share(written)
        .filter(|it| *it > 0.0)
        .ok_or_else(|| "write a share above zero, like \"40 %\"".to_owned())
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    let own = args.card.as_deref().map(opened).transpose()?;
    let given = warned(match &own {
        Some(own) => Given::carded(own.card()?.clone(), of_the_card)?,
        None => Given::read(&args.bench.reading()?, option)?,
    });
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
        || figures(&given, &found),
        |units| told::told(&given, &found, units),
    )
}

impl Bench {
    fn reading(&self) -> Result<BatReading, Stop> {
        let sizes = sizes()?;
        let of_size = self.size.as_deref().and_then(|it| named(&sizes, it)).map(Size::length_m);
        // Of a size that nobody knows the weighing says so.
        let length_m = self.length.or(of_size).unwrap_or(0.0);
        Ok(BatReading {
            size: self.size.clone(),
            length_m: self.length,
            balance_m: self.balance.map(|it| it.from_top_m(length_m)),
            pendulum: self.time.map(PendulumReading::ten),
            // clap asks for the weight where there is no card
            ..BatReading::weighed(THE_BAT, self.mass.unwrap_or(0.0))
        })
    }
}

fn state(it: &State) -> Value {
    json!({
        "mass_kg": it.mass_kg,
        "balance_m": it.balance_m,
        "swing_moment_kg_m2": it.swing_moment_kg_m2,
        "pickup_weight_kg": it.pickup_weight_kg,
    })
}

fn limits(it: &Limits) -> Value {
    let within = |figure| it.there.iter().any(|there| there.0 == figure && there.2);
    json!({
        "within_there": it.there.iter().all(|it| it.2),
        "mass_within_there": within(Figure::DeadWeight),
        "balance_within_there": within(Figure::Balance),
        "swing_moment_within_there": within(Figure::SwingMoment),
        "share_of_year_made_to_card": it.year_made_to_card,
        "share_of_year_made_to_aim": it.year_made_to_aim,
    })
}

fn figures(given: &Given, found: &Found) -> Value {
    let it = &found.seasoned;
    let swollen = |shrinkage| swelling(shrinkage, it.moisture_from, it.moisture_to);
    let [low_s, usual_s, high_s] = found.time_constants_s;
    let aim = json!({
        "mass_sd_kg": it.mass_change_kg.sd,
        "swing_moment_sd_kg_m2": it.swing_moment_change_kg_m2.sd,
        "ten_swings_s": found.aim_ten_swings_s,
    });
    let course = found.course.iter().map(|gone| {
        json!({
            "days": gone.days,
            "bare_share": gone.bare[1],
            "bare_share_low": gone.bare[0],
            "bare_share_high": gone.bare[2],
            "oiled_share": gone.oiled,
            "mass_kg": found.mass_after_kg(gone),
        })
    });
    let pressing = found.pressing.map(|(pressing, pressed)| {
        json!({
            "depth_m": pressing.depth_m,
            "denser": pressing.denser,
            "layer_m": pressed.layer_m,
            "face_kg_m3": pressed.face_kg_m3,
            "com_change_m": pressed.com_change_m,
            "swing_moment_change_kg_m2": pressed.swing_moment_change_kg_m2,
            "practice": PRACTICE,
        })
    });
    let wood = json!({
        "moisture_from": it.moisture_from,
        "moisture_to": it.moisture_to,
        "here": state(&it.here),
        "there": state(&it.there),
    });
    let rest = json!({
        "mass_for_5_percent_kg": it.mass_for_5_percent_kg,
        "willow_kg": it.willow_kg,
        "handle_kg": it.handle_kg,
        "width_swelling": swollen(RADIAL),
        "depth_swelling": swollen(TANGENTIAL),
        "aim_now": joined([state(&it.aim), aim]),
        "estimated": given.estimated(),
        "oiled": found.asked.oiled,
        "time_constant_s": usual_s,
        "time_constant_low_s": low_s,
        "time_constant_high_s": high_s,
        "course": course.collect::<Value>(),
        "card": found.limits.as_ref().map(limits),
        "pressing": pressing,
        "limits_of_the_model": told::LIMITS,
    });
    joined([
        wood,
        doubted("mass_change", "kg", it.mass_change_kg),
        doubted("balance_change", "m", it.balance_change_m),
        doubted("swing_moment_change", "kg_m2", it.swing_moment_change_kg_m2),
        doubted("pickup_weight_change", "kg", it.pickup_weight_change_kg),
        rest,
    ])
}

//! `backlift plane`: from a part-made bat to its card, a pass at a time.

mod told;

use std::path::PathBuf;

use backlift::card::Card;
use backlift::files::air::air;
use backlift::files::assets::sizes;
use backlift::files::save::Folder;
use backlift::files::shape::load;
use backlift::files::stages;
use backlift::questions::delivered::weigh_up_part_made;
use backlift::questions::own::described;
use backlift::questions::placed::argument_fault;
use backlift::questions::plane::{self, Done, PartMade, Planned, TO_PLANE, Way};
use backlift::units::{Quantity, parse, share};
use backlift::workshop::cautions::SHAPE;
use backlift::workshop::plane::{Addition, Finish, PickupMoments, Place};
use backlift::workshop::season::Air;
use backlift::workshop::stages::{Entry, Moment, Stage};
use serde_json::{Value, json};

use crate::bench::Bench;
use crate::beside::Beside;
use crate::clock;
use crate::given::{ShowArgs, in_log};
use crate::json::{self, joined};
use crate::outcome::{Outcome, Stop, warned};
use crate::own::{Own, opened};
use crate::shape_files::add_profile;
use crate::written::{said, wrote};

/// Plane a part-made bat to its card: where to take how many grams off, in which order
///
/// Weigh, balance and swing the bat as it lies on the bench. Each pass comes with the reading to expect
/// after it: stop there, weigh again, and ask anew. With --new the bat gets a file of its own, in which --keep writes
/// every reading and every pass: what was cut stays cut in the next plan. What still goes on (twine, grip, toe guard, oil) is
/// counted before. Exit code 1: the bat is too light already, or no plan meets the card.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift plane fitting/card.ron --mass 900g --balance 523mm --time 42.6s")]
pub struct Args {
    /// The bat's own file, or the card it is made for
    #[arg(value_name = "BAT.ron|CARD.ron")]
    bat: PathBuf,

    #[command(flatten)]
    bench: Bench,

    /// How far from its middle the blade balances on a straight edge along its length, seen from the face with the toe
    /// down, like "2 mm left"
    #[arg(long, value_name = "LENGTH SIDE", value_parser = in_log(stages::side), requires = "mass")]
    side: Option<f64>,

    /// When it was read, like "2026-11-26 14:00"; now, by this computer's clock, if left out
    #[arg(long, value_name = "TIME", value_parser = in_log(stages::moment), requires = "mass")]
    at: Option<Moment>,

    /// Where the plane was at work since the reading before, like "toe", or "nothing"; the plan's first pass if left out
    #[arg(long, value_name = "PLACE", value_parser = planed, requires = "mass")]
    planed: Option<Planed>,

    /// Air of the workshop, a mean of some weeks, like "18 C, 55 %"
    #[arg(long, value_name = "AIR", value_parser = in_log(air), allow_hyphen_values = true, requires = "mass")]
    air: Option<Air>,

    /// Water in the wood by a meter, like "11 %"
    #[arg(long, value_name = "SHARE", value_parser = in_log(stages::meter), requires = "mass")]
    meter: Option<f64>,

    /// Grains across the face
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..=60), requires = "mass")]
    grains: Option<u32>,

    /// What else there is to say of the reading
    #[arg(long, value_name = "WORDS", value_parser = in_log(stages::note), requires = "mass")]
    note: Option<String>,

    /// Add the reading to the bat's own file
    #[arg(long, requires = "mass")]
    keep: bool,

    /// Begin the bat's own file with this reading and the card
    #[arg(long, value_name = "FILE", requires = "mass", conflicts_with = "keep")]
    new: Option<PathBuf>,

    /// The bat's shape as described for `backlift shape`; without it, the size's own at this weight
    #[arg(long, value_name = "FILE")]
    shape: Option<PathBuf>,

    /// The stage that it has come to since the reading before, like "sanded"; the same if left out, a shaped blade at least
    #[arg(long, value_name = "STAGE", value_parser = in_log(stages::stage), requires = "mass")]
    stage: Option<Stage>,

    /// What is on the bat already, of: grip, two grips, twine, toe guard, oil, labels, all
    #[arg(long, value_name = "LIST")]
    on: Option<String>,

    /// Tape that goes on afterwards: its weight, and its middle from the toe, like "12 g at 8 in"; may be repeated
    #[arg(long, value_name = "MASS at LENGTH")]
    tape: Vec<String>,

    /// One standard deviation of what the plane takes off, as a share of what it should
    #[arg(long, value_name = "SHARE", default_value = "10 %")]
    planing_error: String,

    /// Folder for the blade from the side, before and after, with what comes off, and strips to cut out
    #[arg(long, value_name = "FOLDER")]
    out: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

/// Where the plane was at work, if it was.
#[derive(Clone, Copy)]
struct Planed(Option<Place>);

fn planed(written: &str) -> Result<Planed, String> {
    if written.trim().eq_ignore_ascii_case("nothing") {
        return Ok(Planed(None));
    }
    in_log(stages::planed)(written).map(|it| Planed(Some(it)))
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let own = opened(&args.bat)?;
    let card = own.card()?.clone();
    let planing_sd = share(&args.planing_error).filter(|it| (0.0..=0.5).contains(it));
    let planing_sd = planing_sd.ok_or_else(|| {
        let help = "write it like \"10 %\"";
        argument_fault("--planing-error", &args.planing_error, "no share from 0 to 50 %", help)
    })?;
    let way = Way { besides: tape(&args.tape, card.length_m)?, planing_sd };
    let reading = args.reading(&own, &card)?;
    let kept_in = own.keeps(args.keep, args.new.as_deref())?;
    let called = |it: &str| args.bench.called(it);
    let done = match args.planed {
        Some(Planed(None)) => Done::Nothing,
        _ => Done::AsPlanned,
    };
    let (kept, plan) = match &own {
        Own::Bat { loaded, .. } => {
            let log = match reading {
                Some(it) => plane::with_reading(loaded, it, done, &way, called)?,
                None => loaded.log.clone(),
            };
            let kept = log.entries.get(loaded.log.entries.len()).cloned();
            (kept, plane::planned_by(loaded, &log, &way, called))
        }
        Own::Card(_) => {
            let entry = reading.ok_or_else(plane::nothing_measured)?;
            let bat = args.bench.reading(&card).ok_or_else(plane::nothing_measured)?;
            let (weighed, odd) = weigh_up_part_made(&bat, called)?;
            let described = match args.shape.as_deref() {
                Some(path) => described(&load(Some(path), &[], &sizes()?)?)?,
                None => None,
            };
            let entries = vec![entry.clone()];
            let part_made = PartMade { weighed, entries, described, way };
            (Some(entry), plane::planned(card, part_made).map(|it| (it, odd)))
        }
    };
    let keep = || match (&kept_in, &kept) {
        (Some(path), Some(entry)) => {
            own.keep(path, entry)?;
            if args.show.json { Ok(()) } else { json::print(&wrote(path)) }
        }
        _ => Ok(()),
    };
    if let Err(Stop::NoAnswer(_)) = &plan {
        // What was read is kept although no plan leads on from it.
        keep()?;
    }
    let (planned, odd) = plan?;
    warned(((), odd));
    let beside = Beside::card(&planned.card).after(SHAPE);
    let title = beside.sentence("What the plane takes off, and the blade after it");
    said(
        "plane",
        &args.show,
        folder,
        &beside,
        || figures(&planned, kept.as_ref()),
        |units| told::told(&planned, kept.as_ref(), units),
        |folder, _| {
            let after = planned.plan.after(&planned.shape, planned.plan.passes.len());
            add_profile(folder, Some(&planned.shape), after, &title)
        },
    )?;
    keep()?;
    let done = planned.plan.meets.len() == 3 && planned.plan.handle_m.1;
    Ok(if done { Outcome::Done } else { Outcome::NotAccepted })
}

impl Args {
    /// The new reading; none where nothing was weighed.
    fn reading(&self, own: &Own, card: &Card) -> Result<Option<Entry>, Stop> {
        let last = own.last();
        let was = last.map(|it| it.stage);
        // What comes to the plane is shaped at least.
        let least = was.filter(|it| *it == TO_PLANE || !own.awaits(TO_PLANE)).unwrap_or(TO_PLANE);
        let stage = self.stage.unwrap_or(least);
        let kept = self.keep || self.new.is_some();
        let same_time = last.map(|it| it.at).filter(|_| !kept);
        let at = self.at.or(same_time).unwrap_or_else(clock::now);
        let on = self.on.as_deref().map(finish).transpose()?;
        let entry = self.bench.entry(card, stage, at);
        Ok(entry.map(|it| Entry {
            again: was == Some(stage),
            planed: self.planed.and_then(|it| it.0),
            left_m: self.side,
            air: self.air,
            meter: self.meter,
            grains: self.grains,
            note: self.note.clone(),
            on,
            ..it
        }))
    }
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
    stages::finish(on).map_err(|(message, help)| argument_fault("--on", on, &message, &help))
}

fn figures(it: &Planned, kept: Option<&Entry>) -> Value {
    let (plan, swings) = (&it.plan, it.card.pendulum_swings);
    let passes = plan.passes.iter().zip(&it.thin_edges).map(|(pass, thin)| {
        let from_toe_m = |share: f64| (1.0 - share) * pass.shape.blade.length_m;
        let grams = 1e3 * pass.off_kg;
        json!({
            "where": pass.place.words(),
            "grams": grams,
            "each_side_grams": pass.place.has_two_sides().then_some(0.5 * grams),
            "left_grams": pass.sides_kg.map(|[left_kg, _]| 1e3 * left_kg),
            "right_grams": pass.sides_kg.map(|[_, right_kg]| 1e3 * right_kg),
            "deepest_m": pass.deepest.deep_m,
            "deepest_from_toe_m": from_toe_m(pass.deepest.from_shoulder),
            "thin_edge_m": thin.map(|it| it.edge_m),
            "thin_edge_from_toe_m": thin.map(|it| from_toe_m(it.from_shoulder)),
            "thin_edge_makers_m": thin.map(|it| it.makers_m),
            "handle_m": pass.handle_m,
            "then": reading(&pass.then, swings),
            "overshoot_chance": pass.overshoot,
        })
    });
    let to_come = plan.to_come.iter().map(|it| {
        json!({
            "what": it.what,
            "mass_kg": it.adds.mass_kg,
            "mass_sd_kg": it.relative_sd * it.adds.mass_kg,
            "swing_moment_kg_m2": it.adds.second_kg_m2,
        })
    });
    let [mass_sd_kg, balance_sd_m, swing_moment_sd_kg_m2] = plan.finished_sd;
    json!({
        "now": now(it, swings),
        "planed": kept.and_then(|it| it.planed).map(Place::words),
        "swings": swings,
        "readings": it.readings,
        "apart_sds": it.apart_sds,
        "passes": passes.collect::<Vec<_>>(),
        "to_come": to_come.collect::<Vec<_>>(),
        "finished": {
            "mass_kg": plan.finished.mass_kg,
            "mass_sd_kg": mass_sd_kg,
            "balance_m": plan.finished.balance_m(),
            "balance_sd_m": balance_sd_m,
            "swing_moment_kg_m2": plan.finished.second_kg_m2,
            "swing_moment_sd_kg_m2": swing_moment_sd_kg_m2,
        },
        "handle_m": plan.handle_m.0,
        "handle_within": plan.handle_m.1,
        "meets": plan.meets.iter().map(|it| it.words()).collect::<Vec<_>>(),
        "chance_within": plan.chance,
        "overshoot_limit": plan.overshoot_limit,
        "planing_relative_sd": it.planing_sd,
    })
}

/// The bat now, with its doubts.
fn now(it: &Planned, swings: u32) -> Value {
    let sds = json!({
        "mass_sd_kg": it.together.mass_kg.sd,
        "balance_sd_m": it.together.balance_m.sd,
        "swing_moment_sd_kg_m2": it.together.swing_moment_kg_m2.sd,
    });
    joined([reading(&it.now, swings), sds])
}

fn reading(it: &PickupMoments, swings: u32) -> Value {
    json!({
        "mass_kg": it.mass_kg,
        "balance_m": it.balance_m(),
        "swing_moment_kg_m2": it.second_kg_m2,
        "ten_swings_s": it.ten_swings_s(),
        "swings_s": it.swings_s(swings),
    })
}

//! From a part-made bat to its card, a pass at a time.

use super::Stop;
use super::delivered::weigh_up_part_made;
use super::own::{described, no_card, reading_of};
use crate::bat::figures::WeighedBat;
use crate::bat::shape::BatShape;
use crate::bat::sizes::{Size, find};
use crate::card::Card;
use crate::files::assets::sizes;
use crate::files::fault::{Fault, Faults};
use crate::files::shape::LoadedShape;
use crate::workshop::combined::{Reading, combined};
use crate::workshop::history::{Now, now};
use crate::workshop::lateral::left_m;
use crate::workshop::plane::{self, Addition, Bench, DrawnOn, PickupMoments, Plan, ThinEdge};
use crate::workshop::stages::{BatLog, Entry, Stage, finish};

/// How a bat is planed, whatever is read of it.
#[derive(Clone, Debug)]
pub struct Way {
    /// What else goes on afterwards.
    pub besides: Vec<Addition>,
    /// One standard deviation of what the plane takes off, as a share of what it should.
    pub planing_sd: f64,
}

/// A part-made bat as it lies on the bench.
#[derive(Clone, Debug)]
pub struct PartMade {
    /// Weighed up.
    pub weighed: WeighedBat,
    /// Everything that was read and done, the present reading last.
    pub entries: Vec<Entry>,
    /// Its shape as its maker describes it; without it, the size's own at its weight.
    pub described: Option<BatShape>,
    /// How it is planed.
    pub way: Way,
}

/// A plan with what it was made from.
#[derive(Clone, Debug)]
pub struct Planned {
    /// What the bat is to come to.
    pub card: Card,
    /// The bat now.
    pub weighed: WeighedBat,
    /// What all readings of it say together, what was planed between them considered.
    pub together: Reading,
    /// How many those are.
    pub readings: usize,
    /// How far the weight now is from what the readings before foretell, standard deviations; none where they foretell
    /// nothing.
    pub apart_sds: Option<f64>,
    /// Its moments about the pickup axis by all of them.
    pub now: PickupMoments,
    /// Its shape now, with everything on it that the card wants.
    pub shape: BatShape,
    /// What that was made from.
    pub drawn_on: DrawnOn,
    /// The passes.
    pub plan: Plan,
    /// Of each pass, the edge that it leaves thinner than makers of the size leave it.
    pub thin_edges: Vec<Option<ThinEdge>>,
    /// One standard deviation of what the plane takes off, as a share of what it should.
    pub planing_sd: f64,
}

/// What to do about a bat that is too light already.
pub const TOO_LIGHT: &str = "a second grip or tape adds weight, but at the hands or for practice only; a new card, or another cleft";

/// Plans the way to the card.
///
/// # Errors
/// If the card's size is not known, the bat has no handle yet, or no wood is left to take.
pub fn planned(card: Card, it: PartMade) -> Result<Planned, Stop> {
    let PartMade { weighed, entries, described, way: Way { besides, planing_sd } } = it;
    let sizes = sizes()?;
    let size = size_of(&card, &sizes)?;
    let now = now(&entries, &card, size, described.as_ref(), planing_sd).ok_or_else(no_handle)?;
    let left_m = left_m(&entries, &now);
    let Now { shape, drawn_on, planed, first, between } = now;
    let mut readings = Vec::new();
    for it in entries.get(first..entries.len().saturating_sub(1)).unwrap_or_default() {
        readings.push(Reading::of(&weigh_up_part_made(&reading_of(it, &card), str::to_owned)?.0));
    }
    readings.push(Reading::of(&weighed));
    let lost = || Stop::our_mistake("no reading was made of the bat that was weighed");
    let (together, apart_sds) = combined(&readings, &between, planing_sd).ok_or_else(lost)?;
    let bench = Bench {
        reading: together,
        shape: &shape,
        planed: &planed,
        finish: finish(&entries),
        besides,
        planing_sd,
        left_m,
    };
    let plan =
        plane::plan(&bench, &card, &size.craft).map_err(|it| Stop::no_answer(it, TOO_LIGHT))?;
    Ok(Planned {
        card,
        weighed,
        together,
        readings: readings.len(),
        apart_sds,
        now: together.moments(),
        drawn_on,
        thin_edges: plan.thin_edges(&shape, &size.reference),
        plan,
        shape,
        planing_sd,
    })
}

fn no_handle() -> Stop {
    Stop::no_answer(
        "the handle is not in yet: there is no balance point and no pickup",
        "glue it in, and weigh, balance and swing the bat",
    )
}

/// The size of a card.
fn size_of<'s>(card: &Card, sizes: &'s [Size]) -> Result<&'s Size, Fault> {
    find(sizes, &card.size)
        .map_err(|it| Fault::new(format!("the card's size: {it}")).help(it.mend()))
}

/// What was done since the reading before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Done {
    /// The plan's first pass, unless the new reading itself says where.
    AsPlanned,
    /// Nothing: the bat is only read again.
    Nothing,
}

/// The log of a bat's own file with one more reading: where the plane was at work since the one before is the plan's
/// first pass if nobody said otherwise. `called` says what a field of the reading is called where it was given.
///
/// # Errors
/// If the file has no card, or the reading cannot be.
pub fn with_reading(
    own: &LoadedShape,
    mut reading: Entry,
    done: Done,
    way: &Way,
    called: impl Fn(&str) -> String,
) -> Result<BatLog, Stop> {
    let mut log = own.log.clone();
    let card = log.card.as_ref().ok_or_else(no_card)?;
    let same_on = log.finish() == finish(&[&log.entries[..], &[reading.clone()]].concat());
    if done == Done::AsPlanned && reading.planed.is_none() && reading.again && same_on {
        let plan = planned_by(own, &log, way, &called).ok();
        let first = plan.and_then(|(it, _)| it.plan.passes.into_iter().next());
        reading.planed = first.as_ref().map(|it| it.place);
        reading.asked_kg = first.map(|it| it.off_kg);
    }
    let (sizes, new) = (sizes()?, log.entries.len());
    let size = size_of(card, &sizes)?;
    log.entries.push(reading);
    let faults = log.faults(size).into_iter().filter(|it| it.entry == new);
    let faults: Vec<Fault> = faults
        .map(|it| Fault::of(&called(it.field), &it.fault.to_string()).help(it.fault.mend()))
        .collect();
    if faults.is_empty() { Ok(log) } else { Err(Stop::WrongInput(Faults(faults))) }
}

/// Plans on from a bat's own file, by a log of it; what is merely odd comes beside.
///
/// # Errors
/// If the file has no card or no reading, or there is no plan.
pub fn planned_by(
    own: &LoadedShape,
    log: &BatLog,
    way: &Way,
    called: impl Fn(&str) -> String,
) -> Result<(Planned, Vec<Fault>), Stop> {
    let card = log.card.clone().ok_or_else(no_card)?;
    let last = log.last().ok_or_else(nothing_measured)?;
    let (weighed, odd) = weigh_up_part_made(&reading_of(last, &card), called)?;
    let (entries, described) = (log.entries.clone(), described(own)?);
    let part_made = PartMade { weighed, entries, described, way: way.clone() };
    Ok((planned(card, part_made)?, odd))
}

/// A plan is asked for a bat that was not even weighed.
pub fn nothing_measured() -> Fault {
    Fault::new("nothing was measured on the bench")
        .help("give --mass, --balance and --time of the bat as it is now")
}

/// The stage of a bat that comes to the plane.
pub const TO_PLANE: Stage = Stage::Shaped;

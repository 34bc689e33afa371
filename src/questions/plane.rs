//! From a part-made bat to its card, a pass at a time.

use super::Stop;
use super::placed::shape_faults;
use crate::bat::figures::WeighedBat;
use crate::bat::shape::BatShape;
use crate::bat::shaped::shaped;
use crate::bat::sizes::{Size, find};
use crate::card::Card;
use crate::files::assets::{limits, sizes};
use crate::files::fault::Fault;
use crate::files::shape::LoadedShape;
use crate::workshop::plane::{self, Addition, Bench, Finish, PickupMoments, Plan, part_made};

/// A part-made bat as it lies on the bench.
#[derive(Clone, Debug)]
pub struct PartMade {
    /// Weighed up.
    pub weighed: WeighedBat,
    /// Its shape as its maker describes it; without it, the size's own at this weight.
    pub described: Option<LoadedShape>,
    /// What is on it already.
    pub finish: Finish,
    /// What else goes on afterwards.
    pub besides: Vec<Addition>,
    /// One standard deviation of what the plane takes off, as a share of what it should.
    pub planing_sd: f64,
}

/// A plan with what it was made from.
#[derive(Clone, Debug)]
pub struct Planned {
    /// What the bat is to come to.
    pub card: Card,
    /// The bat now.
    pub weighed: WeighedBat,
    /// Its moments about the pickup axis.
    pub now: PickupMoments,
    /// The passes.
    pub plan: Plan,
    /// One standard deviation of what the plane takes off, as a share of what it should.
    pub planing_sd: f64,
}

/// What to do about a bat that is too light already.
pub const TOO_LIGHT: &str = "a second grip or tape adds weight, but at the hands or for practice only; a new card, or another cleft";

/// Plans the way to the card.
///
/// # Errors
/// If the card's size is not known, what is described is no bat, or no wood is left to take.
pub fn planned(card: Card, it: PartMade) -> Result<Planned, Stop> {
    let PartMade { weighed, described, finish, besides, planing_sd } = it;
    let sizes = sizes()?;
    let size = find(&sizes, &card.size)
        .map_err(|it| Fault::new(format!("the card's size: {it}")).help(it.mend()))?;
    let shape = match described {
        Some(it) => {
            let bat = shaped(&it.title, &it.described, &it.size, &limits()?);
            bat.map_err(|faults| shape_faults(&it.places, &faults))?.shape
        }
        None => on_the_bench(&weighed, &finish, &card, size, None).0,
    };
    let bench = Bench {
        mass_kg: weighed.mass_kg,
        balance_m: weighed.balance_m,
        swing_moment_kg_m2: weighed.swing_moment_kg_m2,
        shape: &shape,
        finish,
        besides,
        planing_sd,
    };
    let plan = plane::plan(&bench, &card, &size.craft)
        .map_err(|it| Stop::NoAnswer(Fault::new(it.to_string()).help(TOO_LIGHT)))?;
    let now = PickupMoments::of(
        weighed.mass_kg.value,
        weighed.balance_m.value,
        weighed.swing_moment_kg_m2.value,
    );
    Ok(Planned { card, weighed, now, plan, planing_sd })
}

/// On which solid a plan is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DrawnOn {
    /// The blade that is described, at the bat's weight and balance.
    Described,
    /// The size's own blade, at the bat's weight and balance.
    Size,
    /// A blade of the size that no carving brings to the bat's weight and balance.
    OtherWeight,
}

/// The bat on the bench as a solid, and what it is drawn on: a blade that is described, or the size's own on the card's
/// handle, at the weight and balance that were read; where no blade gets there, as it is.
pub fn on_the_bench(
    weighed: &WeighedBat,
    finish: &Finish,
    card: &Card,
    size: &Size,
    described: Option<&BatShape>,
) -> (BatShape, DrawnOn) {
    let mut like = described.unwrap_or(&size.reference).clone();
    like.handle.grips = card.condition.grips;
    if described.is_none() {
        like = like.with_length_m(card.length_m);
        like = like.with_handle_over_grip_m(card.handle_diameter_m());
    }
    let reading = [weighed.mass_kg.value, weighed.balance_m.value];
    match (part_made(&like, &size.craft, reading, finish, &Finish::of(card)), described) {
        (Some(shape), Some(_)) => (shape, DrawnOn::Described),
        (Some(shape), None) => (shape, DrawnOn::Size),
        (None, _) => (like, DrawnOn::OtherWeight),
    }
}

//! What a bat on the bench will come to, and how sure that is.
//!
//! From the last weighing, what is still to come is taken off and put on as [`super::steps`] has it. A balance
//! point or a pendulum counts from the stage at which it was read; of all ways to a figure (the size's own, and
//! each reading carried on) the surest is told. No way gets less sure by a further stage: every spread is a
//! constant of the size and falls away when its stage is passed.

use super::fault::gone_through;
use super::steps::{Steps, keeps};
use super::{BatLog, Entry, Stage};
use crate::bat::expected::Expectation;
use crate::bat::family::Family;
use crate::bat::missing::BALANCE_OF_SIZE_SD_M;
use crate::bat::pendulum::swing_moment;
use crate::bat::sizes::Size;
use crate::measurement::bench::{BALANCE_SD_M, PICKUP_AXIS_FROM_TOP_M, SCALE_SD_KG};
use crate::uncertain::{Uncertain, independent_sd};
use crate::workshop::pickup_moments::PickupMoments;

/// What a bat will come to, as played.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Forecast {
    /// Dead weight, kg.
    pub mass_kg: Uncertain,
    /// Balance point, m from the top of the handle.
    pub balance_m: Uncertain,
    /// Swing moment, kg m².
    pub swing_moment_kg_m2: Uncertain,
    /// Wood to take off from now on for the weight wanted, kg; below 0 it is too light already. None without a
    /// weight wanted, and when all is done.
    pub to_take_off_kg: Option<Uncertain>,
}

/// Forecasts one bat. None for a log without an entry.
pub fn forecast(log: &BatLog, size: &Size) -> Option<Forecast> {
    let steps = Steps::of(size);
    let last = log.last()?;
    let to_come = log.pending();
    let scale = |stages: &[Stage]| {
        let spreads = stages.iter().map(|it| steps.mass_sd_kg(*it));
        independent_sd(&std::iter::once(SCALE_SD_KG).chain(spreads).collect::<Vec<_>>())
    };
    let start = PickupMoments::of(last.seasoned_kg(), steps.reference.balance_m(), 0.0);
    let end = carried(&steps, start, last, &[], &to_come);
    let mass_kg = Uncertain::computed(end.mass_kg, scale(&to_come));

    let balance_of_size =
        Uncertain::estimated(size.reference.mass_moments().com_B().x, BALANCE_OF_SIZE_SD_M);
    let mut balance_m = balance_of_size;
    let mut read_swing: Option<Uncertain> = None;
    for (n, entry) in log.entries.iter().enumerate() {
        let Some(at_m) = entry.balance_m else { continue };
        let rest = log.entries.get(n + 1..).unwrap_or_default();
        let gone: Vec<Stage> = log.pending_after(n + 1);
        // Of balance point (0) or swing moment (1), whose reading is in doubt by its own.
        let still = |figure: usize, own: f64| {
            let places = gone.iter().map(|it| steps.place_sd(*it)[figure]);
            let spreads = places.chain(to_come.iter().map(|it| steps.weight_sd(*it)[figure]));
            independent_sd(&std::iter::once(own).chain(spreads).collect::<Vec<_>>())
        };
        let start = PickupMoments::of(entry.seasoned_kg(), at_m, 0.0);
        let end = carried(&steps, start, entry, rest, &to_come);
        let sd = still(0, BALANCE_SD_M);
        if sd < balance_m.sd {
            balance_m = Uncertain::computed(end.balance_m(), sd);
        }
        let Some(pendulum) = entry.pendulum else { continue };
        let read = swing_moment(entry.mass_kg, at_m, &pendulum);
        let sd = still(1, read.sd_kg_m2(SCALE_SD_KG, BALANCE_SD_M));
        if read_swing.is_none_or(|it| sd < it.sd) {
            let start = PickupMoments::of(entry.mass_kg, at_m, read.value_kg_m2);
            read_swing = Some(Uncertain::computed(
                carried(&steps, start, entry, rest, &to_come).second_kg_m2,
                sd,
            ));
        }
    }
    let of_size = swing_of_size(size, mass_kg, balance_m);
    let swing_moment_kg_m2 = match read_swing {
        Some(read) if read.sd < of_size.sd => read,
        _ => of_size,
    };
    let to_take_off_kg = log.target.mass_kg.filter(|_| !to_come.is_empty()).map(|wanted_kg| {
        let put_on = |stage: &Stage| steps.put_on(*stage).map_or(0.0, |it| it.mass_kg);
        let adds: Vec<Stage> = to_come.iter().copied().filter(|it| it.adds()).collect();
        let with_all_kg = last.seasoned_kg() + adds.iter().map(put_on).sum::<f64>();
        Uncertain::computed(with_all_kg - wanted_kg, scale(&adds))
    });
    Some(Forecast { mass_kg, balance_m, swing_moment_kg_m2, to_take_off_kg })
}

/// A bat carried on from one entry through those after it, by what they weighed, and through what is to come.
fn carried(
    steps: &Steps,
    start: PickupMoments,
    entry: &Entry,
    rest: &[Entry],
    to_come: &[Stage],
) -> PickupMoments {
    let (mut bat, mut last) = (start, entry);
    let mut willow_kg = willow_kg(steps, entry.seasoned_kg(), entry.stage);
    for next in rest {
        let put_on: PickupMoments = gone_through(last, next)
            .filter_map(|it| steps.put_on(it))
            .fold(PickupMoments::default(), |sum, it| sum + it);
        let only_puts_on = gone_through(last, next).all(Stage::adds);
        let change_kg = next.mass_kg - bat.mass_kg;
        bat = if only_puts_on && put_on.mass_kg > 0.0 {
            bat + put_on * (change_kg / put_on.mass_kg)
        } else {
            let taken_kg = put_on.mass_kg - change_kg;
            bat + put_on - steps.blade * (taken_kg / steps.blade.mass_kg)
        };
        last = next;
        willow_kg = self::willow_kg(steps, next.mass_kg, next.stage);
    }
    for it in to_come {
        if let Some(moments) = steps.put_on(*it) {
            bat = bat + moments;
            continue;
        }
        let taken_kg = (1.0 - keeps(*it)) * willow_kg;
        bat = bat - steps.blade * (taken_kg / steps.blade.mass_kg);
        willow_kg -= taken_kg;
    }
    bat
}

/// Willow in a bat at a stage: its weight less what was put on by then, as the size has it.
fn willow_kg(steps: &Steps, mass_kg: f64, stage: Stage) -> f64 {
    let handle = steps.put_on(Stage::Spliced).filter(|_| stage.has_handle());
    (mass_kg - handle.map_or(0.0, |it| it.mass_kg)).max(0.0)
}

/// The swing moment of the size's family at this weight and balance; its spread is that of the size's own bat.
fn swing_of_size(size: &Size, mass_kg: Uncertain, balance_m: Uncertain) -> Uncertain {
    let family = Family::of(size);
    let own = size.reference.mass_moments();
    let typical = Expectation::of(&family, own.mass_kg, own.com_B().x).swing_moment(&family);
    let value =
        family.assumed(mass_kg.value, balance_m.value, 0.0).map(|it| it.swing_moment_kg_m2());
    // No blade of the size gets there: as its own, moved by weight and balance.
    let value = value.unwrap_or_else(|| {
        let arm = |balance_m: f64| balance_m - PICKUP_AXIS_FROM_TOP_M;
        let (here, usual) = (arm(balance_m.value), arm(own.com_B().x));
        typical.value_kg_m2 * mass_kg.value / own.mass_kg * (here * here) / (usual * usual)
    });
    Uncertain::estimated(value, typical.sd_kg_m2(mass_kg.sd, balance_m.sd))
}

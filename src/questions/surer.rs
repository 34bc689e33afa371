//! What can still be measured of player and bats, and what each brings: the doubt it leaves where one stands now. And
//! what timing a bat's pendulum makes of its swing moment.

use super::loaded::Loaded;
use crate::bat::figures::{WeighedBat, weigh};
use crate::frames::STANDARD_GRAVITY_M_S2;
use crate::measurement::bench::{
    BatReading, PICKUP_AXIS_FROM_TOP_M, PendulumReading, USUAL_AMPLITUDE_RAD,
};
use crate::measurement::person::PersonReading;
use crate::player::{Player, player};
use crate::uncertain::Uncertain;

/// Swings that are usually timed.
const USUAL_SWINGS: u32 = 10;
/// Numbers of swings for which the doubt is told.
const SWINGS: [u32; 7] = [1, 2, 5, 10, 15, 20, 30];

/// Something that was not measured yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ToMeasure {
    /// Balance point and pendulum of the bat at that place.
    Pendulum(usize),
    /// Both hands on a dynamometer.
    Grip,
    /// The player on a scale.
    BodyMass,
    /// The hand, by tape.
    HandLength,
}

/// What measuring it brings, one standard deviation each, as a share.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surer {
    /// What.
    pub what: ToMeasure,
    /// Doubt of its figure now: of a bat its swing moment.
    pub now: f64,
    /// Doubt of it then, if it is what it is taken for now.
    pub then: f64,
}

impl Loaded {
    /// All of it that makes its figure surer: bats in their order, then the player.
    pub fn surer(&self) -> Vec<Surer> {
        let bats = self.bats.iter().enumerate().filter_map(|(n, bat)| {
            let [now, then] = self.by_pendulum(bat)?;
            Some(Surer { what: ToMeasure::Pendulum(n), now, then })
        });
        let all = bats.chain(self.by_tape_and_scale());
        all.filter(|it| it.then < it.now).collect()
    }

    /// The swing moment of a bat, kg m², had so many full swings taken so long, s; as estimated where none is timed.
    /// None where such a bat cannot be.
    pub fn timed(&self, reading: &BatReading, timed: Option<(u32, f64)>) -> Option<Uncertain> {
        let (pivot_from_top_m, amplitude_rad) =
            reading.pendulum.as_ref().map_or((PICKUP_AXIS_FROM_TOP_M, USUAL_AMPLITUDE_RAD), |it| {
                (it.pivot_from_top_m, it.amplitude_rad)
            });
        let test =
            |(swings, time_s)| PendulumReading { swings, time_s, pivot_from_top_m, amplitude_rad };
        let reading = BatReading { pendulum: timed.map(test), ..reading.clone() };
        Some(weigh(&reading, &self.sizes, &self.laws).ok()?.swing_moment_kg_m2)
    }

    /// Its doubt if so many swings of this period, s, were timed: swings, and one standard deviation as a share.
    pub fn doubt_by_swings(&self, reading: &BatReading, period_s: f64) -> Vec<(u32, f64)> {
        let doubt = |swings: u32| {
            let timed = Some((swings, period_s * f64::from(swings)));
            Some((swings, self.timed(reading, timed)?.relative_sd()))
        };
        SWINGS.into_iter().filter_map(doubt).collect()
    }

    /// Doubt of a bat's swing moment now, and were it balanced and timed; none where it was timed.
    fn by_pendulum(&self, bat: &WeighedBat) -> Option<[f64; 2]> {
        if bat.reading.pendulum.is_some() {
            return None;
        }
        let (mass_kg, balance_m) = (bat.mass_kg.value, bat.balance_m.value);
        let arm_m = balance_m - PICKUP_AXIS_FROM_TOP_M;
        let moment = bat.swing_moment_kg_m2.value;
        // A small swing about the pickup axis.
        let period_s = core::f64::consts::TAU
            * libm::sqrt(moment / (mass_kg * STANDARD_GRAVITY_M_S2 * arm_m.max(0.0)));
        let balanced = BatReading { balance_m: Some(balance_m), ..bat.reading.clone() };
        let timed = (USUAL_SWINGS, period_s * f64::from(USUAL_SWINGS));
        let then = self.timed(&balanced, Some(timed))?;
        Some([bat.swing_moment_kg_m2.relative_sd(), then.relative_sd()])
    }

    fn by_tape_and_scale(&self) -> Vec<Surer> {
        type Doubt = fn(&Player) -> f64;
        let (reading, now) = (&self.scenario.player, &self.player);
        let mut out = Vec::new();
        let mut with = |what, measured: PersonReading, doubt: Doubt| {
            if let Ok(then) = player(&measured) {
                out.push(Surer { what, now: doubt(now), then: doubt(&then) });
            }
        };
        if reading.grip_top_n.is_none() || reading.grip_bottom_n.is_none() {
            let grips = PersonReading {
                grip_top_n: Some(now.grip_top_n.value),
                grip_bottom_n: Some(now.grip_bottom_n.value),
                ..reading.clone()
            };
            with(ToMeasure::Grip, grips, |it| {
                it.grip_top_n.relative_sd().max(it.grip_bottom_n.relative_sd())
            });
        }
        if reading.mass_kg.is_none() {
            let weighed = PersonReading { mass_kg: Some(now.mass_kg.value), ..reading.clone() };
            with(ToMeasure::BodyMass, weighed, |it| it.mass_kg.relative_sd());
        }
        if reading.hand_length_m.is_none() {
            let hand_length_m = Some(now.hand_length_m.value);
            let taped = PersonReading { hand_length_m, ..reading.clone() };
            with(ToMeasure::HandLength, taped, |it| it.hand_length_m.relative_sd());
        }
        out
    }
}

//! Where to take how much off, in which order, with the reading to expect after each pass.
//!
//! How much comes off each place is a least-squares problem with limits, in tolerances of the card: the misses
//! of weight, first moment and swing moment. Each pass is then as large as it may be: after it, weight and
//! swing moment lie below the card's low limit with a chance of 5 % at the most, the bench's error and the
//! plane's considered. The bat is weighed again after each pass, and the plan is made anew.

use crate::bat::shape::BatShape;
use crate::bat::sizes::Craft;
use crate::card::{Card, Figure};
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use crate::normal;
use crate::uncertain::{Uncertain, independent_sd};

use super::PickupMoments;
use super::additions::{Addition, Finish, additions};
use super::cuts::{Place, Room, amount_for, cut, room};

/// A part-made bat on the bench.
#[derive(Clone, Debug)]
pub struct Bench<'a> {
    /// Dead weight, kg.
    pub mass_kg: Uncertain,
    /// Balance point from the top of the handle, m.
    pub balance_m: Uncertain,
    /// Swing moment, kg m².
    pub swing_moment_kg_m2: Uncertain,
    /// Its shape as far as it is known; its own weight need not be the bench's.
    pub shape: &'a BatShape,
    /// What is on it.
    pub finish: Finish,
    /// What goes on it besides what the card asks, such as tape.
    pub besides: Vec<Addition>,
    /// One standard deviation of what the plane takes off, as a share of what it should.
    pub planing_sd: f64,
}

/// One pass.
#[derive(Clone, Debug, PartialEq)]
pub struct Pass {
    /// Where.
    pub place: Place,
    /// What comes off, kg.
    pub off_kg: f64,
    /// The reading to expect on the bench after it, what is still to go on not counted.
    pub then: PickupMoments,
    /// Chance that weight or swing moment are below the card's low limit after it, finished.
    pub overshoot: f64,
    /// The shape after it.
    pub shape: BatShape,
}

/// The whole plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// Passes, in order; none where nothing needs to come off.
    pub passes: Vec<Pass>,
    /// What goes on afterwards.
    pub to_come: Vec<Addition>,
    /// The finished bat, as expected.
    pub finished: PickupMoments,
    /// One standard deviation of the finished weight (kg), balance point (m) and swing moment (kg m²).
    pub finished_sd: [f64; 3],
    /// Figures of the card that the finished bat is expected to meet.
    pub meets: Vec<Figure>,
    /// Chance that weight, balance and swing moment are all within (each on its own, multiplied).
    pub chance: f64,
}

/// Why there is no plan.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum PlanFault {
    /// Lighter than the card already.
    #[error(
        "finished it would weigh {finished_kg:.3} kg and swing with {finished_kg_m2:.4} kg m², below the card's low limits of {low_kg:.3} kg and {low_kg_m2:.4} kg m²: wood cannot go back"
    )]
    TooLight {
        /// Finished weight.
        finished_kg: f64,
        /// Finished swing moment.
        finished_kg_m2: f64,
        /// The card's low limit of the weight.
        low_kg: f64,
        /// The card's low limit of the swing moment.
        low_kg_m2: f64,
    },
}

/// Chance that a pass may overshoot with.
pub const OVERSHOOT: f64 = 0.05;
/// A pass smaller than this is not worth the clamp, kg.
pub const SMALLEST_PASS_KG: f64 = 0.001;
/// A pass larger than this is broken in two, so that the maker can stop and check, kg.
pub const LARGEST_PASS_KG: f64 = 0.025;
/// Weight of a whole place's room against a miss of one tolerance: prefers a little from each to all from
/// one, and hardly moves the misses.
const SPREAD: f64 = 0.02;
/// Rounds of the coordinate descent.
const ROUNDS: usize = 4000;

struct Goal {
    /// What the bench must read for the card's figures, finished.
    target: [f64; 3],
    /// Half the tolerance, as the unit of a miss.
    unit: [f64; 3],
    /// Low limits of weight and swing moment, bench side.
    low_kg: f64,
    low_kg_m2: f64,
    /// Doubt of what goes on: kg, kg m, kg m².
    to_come_sd: [f64; 3],
}

/// Makes the plan.
pub fn plan(bench: &Bench<'_>, card: &Card, craft: &Craft) -> Result<Plan, PlanFault> {
    let wanted = Finish::of(card);
    let mut to_come = additions(bench.shape, &bench.finish, &wanted);
    to_come.extend(&bench.besides);
    let adds = to_come.iter().fold(PickupMoments::default(), |sum, it| sum + it.adds);
    let now = PickupMoments::of(
        bench.mass_kg.value,
        bench.balance_m.value,
        bench.swing_moment_kg_m2.value,
    );
    let goal = Goal::of(card, adds, &to_come);
    let finished = now + adds;
    let (mass, swing) = (card.asked(Figure::DeadWeight), card.asked(Figure::SwingMoment));
    if finished.mass_kg < mass.tolerance[0] || finished.second_kg_m2 < swing.tolerance[0] {
        return Err(PlanFault::TooLight {
            finished_kg: finished.mass_kg,
            finished_kg_m2: finished.second_kg_m2,
            low_kg: mass.tolerance[0],
            low_kg_m2: swing.tolerance[0],
        });
    }
    let rooms: Vec<Room> = Place::ALL
        .into_iter()
        // Twine and grip cover the handle.
        .filter(|it| *it != Place::Handle || !bench.finish.bound)
        .filter_map(|it| {
            room(bench.shape, it, craft, card.asked(Figure::HandleDiameter).tolerance[0])
        })
        .collect();
    let shares = shares(&goal, now, &rooms);
    let passes = passes(bench, &goal, now, &rooms, &shares);
    let last = passes.last().map_or(now, |it| it.then);
    let finished = last + adds;
    let finished_sd = doubt(bench, &goal, &passes);
    let asked =
        [Figure::DeadWeight, Figure::Balance, Figure::SwingMoment].map(|it| (it, card.asked(it)));
    let got = [finished.mass_kg, finished.balance_m(), finished.second_kg_m2];
    let mut chance = 1.0;
    let mut meets = Vec::new();
    for (((figure, asked), value), sd) in asked.into_iter().zip(got).zip(finished_sd) {
        let [low, high] = asked.tolerance;
        if asked.takes(value) {
            meets.push(figure);
        }
        chance *= normal::below((high - value) / sd) - normal::below((low - value) / sd);
    }
    Ok(Plan { passes, to_come, finished, finished_sd, meets, chance })
}

impl Goal {
    fn of(card: &Card, adds: PickupMoments, to_come: &[Addition]) -> Self {
        let (mass, swing) = (card.asked(Figure::DeadWeight), card.asked(Figure::SwingMoment));
        let balance = card.asked(Figure::Balance);
        let half = |it: [f64; 2]| (0.5 * (it[1] - it[0])).max(1e-6);
        let target = PickupMoments::of(mass.target, balance.target, swing.target) - adds;
        let sd = |of: fn(&PickupMoments) -> f64| {
            let each: Vec<f64> =
                to_come.iter().map(|it| it.relative_sd * of(&it.adds).abs()).collect();
            independent_sd(&each)
        };
        Self {
            target: target.array(),
            unit: [
                half(mass.tolerance),
                half(balance.tolerance) * mass.target,
                half(swing.tolerance),
            ],
            low_kg: mass.tolerance[0] - adds.mass_kg,
            low_kg_m2: swing.tolerance[0] - adds.second_kg_m2,
            to_come_sd: [sd(|it| it.mass_kg), sd(|it| it.first_kg_m), sd(|it| it.second_kg_m2)],
        }
    }

    /// Chance that weight or swing moment are below their low limits; the larger of the two, for they move
    /// together.
    fn overshoot(&self, after: &PickupMoments, sd_kg: f64, sd_kg_m2: f64) -> f64 {
        let below = |value: f64, low: f64, sd: f64| normal::below((low - value) / sd);
        let light = below(after.mass_kg, self.low_kg, sd_kg);
        light.max(below(after.second_kg_m2, self.low_kg_m2, sd_kg_m2))
    }
}

/// How much of each place's room is used, 0 to 1: least squares with limits, by coordinate descent.
fn shares(goal: &Goal, now: PickupMoments, rooms: &[Room]) -> Vec<f64> {
    let columns: Vec<[f64; 3]> = rooms
        .iter()
        .map(|it| {
            let off = it.off.array();
            core::array::from_fn(|k| off[k] / goal.unit[k])
        })
        .collect();
    let now = now.array();
    let mut miss: [f64; 3] = core::array::from_fn(|k| (now[k] - goal.target[k]) / goal.unit[k]);
    let mut shares = vec![0.0; rooms.len()];
    for _ in 0..ROUNDS {
        for (share, column) in shares.iter_mut().zip(&columns) {
            let square: f64 = column.iter().map(|it| it * it).sum::<f64>() + SPREAD * SPREAD;
            let slope: f64 = column.iter().zip(&miss).map(|(c, m)| c * m).sum();
            let wanted = *share + (slope - SPREAD * SPREAD * *share) / square;
            let moved = wanted.clamp(0.0, 1.0) - *share;
            *share += moved;
            for (m, c) in miss.iter_mut().zip(column) {
                *m -= moved * c;
            }
        }
    }
    shares
}

/// Cuts the places' shares into passes.
fn passes(
    bench: &Bench<'_>,
    goal: &Goal,
    now: PickupMoments,
    rooms: &[Room],
    shares: &[f64],
) -> Vec<Pass> {
    let (mut reading, mut shape) = (now, bench.shape.clone());
    let mut out: Vec<Pass> = Vec::new();
    for (room, share) in rooms.iter().zip(shares) {
        let mut left_kg = share * room.off.mass_kg;
        while left_kg >= SMALLEST_PASS_KG {
            let mut off_kg = left_kg.min(LARGEST_PASS_KG);
            // No scrap for a pass of its own.
            if left_kg - off_kg < SMALLEST_PASS_KG {
                off_kg = left_kg.min(1.5 * LARGEST_PASS_KG);
            }
            let Some(pass) = safe_pass(bench, goal, reading, &shape, room, off_kg) else { break };
            let taken_kg = pass.off_kg;
            left_kg -= taken_kg;
            (reading, shape) = (pass.then, pass.shape.clone());
            out.push(pass);
            if taken_kg < off_kg - SMALLEST_PASS_KG {
                break;
            }
        }
    }
    out
}

/// Halvings of a pass that would overshoot: to a thousandth.
const HALVINGS: usize = 10;

/// The pass, or as much of it as keeps to the chance of overshooting.
fn safe_pass(
    bench: &Bench<'_>,
    goal: &Goal,
    reading: PickupMoments,
    shape: &BatShape,
    room: &Room,
    off_kg: f64,
) -> Option<Pass> {
    let at = |off_kg: f64| {
        let cut_shape = cut(shape, room.place, amount_for(shape, room, off_kg));
        let off = PickupMoments::of_shape(shape) - PickupMoments::of_shape(&cut_shape);
        let then = reading - off;
        let sd = |bench_sd: f64, off: f64, to_come: f64| {
            independent_sd(&[bench_sd, bench.planing_sd * off, to_come])
        };
        let overshoot = goal.overshoot(
            &then,
            sd(bench.mass_kg.sd, off.mass_kg, goal.to_come_sd[0]),
            sd(bench.swing_moment_kg_m2.sd, off.second_kg_m2, goal.to_come_sd[2]),
        );
        Pass { place: room.place, off_kg: off.mass_kg, then, overshoot, shape: cut_shape }
    };
    let whole = at(off_kg);
    if whole.overshoot <= OVERSHOOT {
        return Some(whole);
    }
    let (mut can, mut cannot) = (0.0, off_kg);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (can + cannot);
        *(if at(middle).overshoot <= OVERSHOOT { &mut can } else { &mut cannot }) = middle;
    }
    (can >= SMALLEST_PASS_KG).then(|| at(can))
}

/// Doubt of the finished bat if every pass is weighed after: the bench's own, the last pass's, and what goes on.
fn doubt(bench: &Bench<'_>, goal: &Goal, passes: &[Pass]) -> [f64; 3] {
    let last = passes.last().map_or([0.0; 3], |it| {
        let lever_m = (it.then.second_kg_m2 / it.then.mass_kg).max(0.0);
        let off = it.off_kg * bench.planing_sd;
        [off, off * libm::sqrt(lever_m), off * lever_m]
    });
    let mass_kg = passes.last().map_or(bench.mass_kg.value, |it| it.then.mass_kg);
    let mass = independent_sd(&[bench.mass_kg.sd, last[0], goal.to_come_sd[0]]);
    // At a given weight the balance moves by the first moment over the weight; weighing cancels most of it.
    let arm_m = bench.balance_m.value - PICKUP_AXIS_FROM_TOP_M;
    let shift = |first: f64, off: f64| (first - arm_m * off) / mass_kg;
    let balance = independent_sd(&[
        bench.balance_m.sd,
        shift(last[1], last[0]),
        shift(goal.to_come_sd[1], goal.to_come_sd[0]),
    ]);
    let swing = independent_sd(&[bench.swing_moment_kg_m2.sd, last[2], goal.to_come_sd[2]]);
    [mass, balance, swing]
}

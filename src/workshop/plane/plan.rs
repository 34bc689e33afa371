//! Where to take how much off, in which order, with the reading to expect after each pass.
//!
//! How much comes off each place is a least-squares problem with limits, in tolerances of the card: the misses
//! of weight, first moment and swing moment. Each pass is then as large as it may be: after it, weight and
//! swing moment lie below the card's low limit with a small chance at the most ([`OVERSHOOT`]), the bench's error and the
//! plane's considered. The bat is weighed again after each pass, and the plan is made anew.

use crate::bat::shape::BatShape;
use crate::bat::sizes::Craft;
use crate::card::{Card, Figure};
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use crate::normal;
use crate::uncertain::{Uncertain, independent_sd};

use super::PickupMoments;
use super::additions::{Addition, Finish, additions};
use super::cuts::{Place, Planed, Room, amount_for, cut, room};
use super::sides::shared;
use super::thinner::{Deepest, deepest};

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
    /// What the plane did to it so far: what a place can give, it gives once.
    pub planed: &'a Planed,
    /// What is on it.
    pub finish: Finish,
    /// What goes on it besides what the card asks, such as tape.
    pub besides: Vec<Addition>,
    /// One standard deviation of what the plane takes off, as a share of what it should.
    pub planing_sd: f64,
    /// How far to the left of the middle the blade balances along its length, m, seen from the face with the toe
    /// down; 0 where nobody looked.
    pub left_m: f64,
}

impl Bench<'_> {
    /// Chance that a pass may overshoot with.
    pub fn overshoot_limit(&self) -> f64 {
        if self.swing_moment_kg_m2.is_estimated() { OVERSHOOT_ESTIMATED } else { OVERSHOOT }
    }
}

/// One pass.
#[derive(Clone, Debug, PartialEq)]
pub struct Pass {
    /// Where.
    pub place: Place,
    /// What comes off, kg.
    pub off_kg: f64,
    /// What of it comes off the left side and off the right, seen from the face with the toe down, kg; none where the
    /// place has no two sides.
    pub sides_kg: Option<[f64; 2]>,
    /// Where it comes off deepest; of the handle see [`Pass::handle_m`].
    pub deepest: Deepest,
    /// Diameter of the handle after it, m, across at the bottom hand over what is on it now; none where the pass leaves
    /// the handle alone.
    pub handle_m: Option<f64>,
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
    /// Diameter of the finished handle over the grip, m, and whether the card takes it.
    pub handle_m: (f64, bool),
    /// Figures of weight and balance on the card that the finished bat is expected to meet.
    pub meets: Vec<Figure>,
    /// Chance that weight, balance and swing moment are all within (each on its own, multiplied).
    pub chance: f64,
    /// Chance that a pass of it may overshoot with.
    pub overshoot_limit: f64,
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

/// A plane takes so much more or less off than it should, one standard deviation, as a share: assumption.
pub const PLANING_SD: f64 = 0.10;
/// Chance that a pass may overshoot with: a bat takes several passes, and wood cannot go back.
pub const OVERSHOOT: f64 = 0.002;
/// The same where the swing moment is estimated from the size: so wide a doubt would leave no plan at all.
pub const OVERSHOOT_ESTIMATED: f64 = 0.05;
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
    let start = shaved(bench, card, &goal, now);
    let (now, shape) = start.last().map_or((now, bench.shape), |it| (it.then, &it.shape));
    let thinnest_m = card.asked(Figure::HandleDiameter).tolerance[0] + CALLIPER_M;
    let rooms: Vec<Given> = Place::ALL
        .into_iter()
        // Twine and grip cover the handle.
        .filter(|it| *it != Place::Handle || !bench.finish.bound)
        .filter_map(|it| Given::of(bench.planed, shape, it, craft, thinnest_m))
        .collect();
    let shares = shares(&goal, now, &rooms);
    let mut passes = passes(bench, &goal, &start, now, &rooms, &shares);
    evened(&mut passes, bench);
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
    let handle_m = over_grip_m(passes.last().map_or(bench.shape, |it| &it.shape));
    let handle_m = (handle_m, card.asked(Figure::HandleDiameter).takes(handle_m));
    Ok(Plan {
        passes,
        to_come,
        finished,
        finished_sd,
        handle_m,
        meets,
        chance,
        overshoot_limit: bench.overshoot_limit(),
    })
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

/// So far within its limits a handle stays, m, that a calliper finds it there: assumption.
const CALLIPER_M: f64 = 0.0002;

/// What a place could give when the plane came out, and how much of it is given, 0 to 1.
struct Given {
    room: Room,
    /// Given so far, and the most that may be in all.
    shares: [f64; 2],
}

impl Given {
    fn of(
        planed: &Planed,
        shape: &BatShape,
        place: Place,
        craft: &Craft,
        thinnest_handle_m: f64,
    ) -> Option<Self> {
        let still = room(shape, place, craft, thinnest_handle_m);
        let taken = planed.amount(place);
        if taken == 0.0 {
            return still.map(|room| Self { room, shares: [0.0, 1.0] });
        }
        let room = room(&planed.from, place, craft, thinnest_handle_m)?;
        let still = still.map_or(0.0, |it| it.amount);
        let given = (taken / room.amount).min(1.0);
        Some(Self { shares: [given, (given + still / room.amount).min(1.0)], room })
    }
}

/// How much of each place's room is used in all, 0 to 1: least squares with limits, by coordinate descent. What was
/// given already counts, so that a plan that is followed stays as it was.
fn shares(goal: &Goal, now: PickupMoments, rooms: &[Given]) -> Vec<f64> {
    let columns: Vec<[f64; 3]> = rooms
        .iter()
        .map(|it| {
            let off = it.room.off.array();
            core::array::from_fn(|k| off[k] / goal.unit[k])
        })
        .collect();
    let now = now.array();
    let mut miss: [f64; 3] = core::array::from_fn(|k| (now[k] - goal.target[k]) / goal.unit[k]);
    let mut shares: Vec<f64> = rooms.iter().map(|it| it.shares[0]).collect();
    for _ in 0..ROUNDS {
        for ((share, column), given) in shares.iter_mut().zip(&columns).zip(rooms) {
            let square: f64 = column.iter().map(|it| it * it).sum::<f64>() + SPREAD * SPREAD;
            let slope: f64 = column.iter().zip(&miss).map(|(c, m)| c * m).sum();
            let wanted = *share + (slope - SPREAD * SPREAD * *share) / square;
            let [least, most] = given.shares;
            let moved = wanted.clamp(least, most) - *share;
            *share += moved;
            for (m, c) in miss.iter_mut().zip(column) {
                *m -= moved * c;
            }
        }
    }
    shares
}

/// Cuts the places' shares into passes, after those with which a plan starts.
fn passes(
    bench: &Bench<'_>,
    goal: &Goal,
    start: &[Pass],
    now: PickupMoments,
    rooms: &[Given],
    shares: &[f64],
) -> Vec<Pass> {
    let shape = start.last().map_or(bench.shape, |it| &it.shape);
    let (mut reading, mut shape) = (now, shape.clone());
    let mut out: Vec<Pass> = start.to_vec();
    for (Given { room, shares: [given, _] }, share) in rooms.iter().zip(shares) {
        let mut left_kg = (share - given) * room.off.mass_kg;
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

/// The pass that leaves `after` of `shape`.
fn pass(
    bench: &Bench<'_>,
    goal: &Goal,
    reading: PickupMoments,
    shape: &BatShape,
    place: Place,
    after: BatShape,
) -> Pass {
    let off = PickupMoments::of_shape(shape) - PickupMoments::of_shape(&after);
    let then = reading - off;
    let sd = |bench_sd: f64, off: f64, to_come: f64| {
        independent_sd(&[bench_sd, bench.planing_sd * off, to_come])
    };
    let overshoot = goal.overshoot(
        &then,
        sd(bench.mass_kg.sd, off.mass_kg, goal.to_come_sd[0]),
        sd(bench.swing_moment_kg_m2.sd, off.second_kg_m2, goal.to_come_sd[2]),
    );
    let Finish { bound, grips, .. } = bench.finish;
    let to_come_m = after.handle.still_to_cover_m(bound, grips);
    Pass {
        place,
        off_kg: off.mass_kg,
        sides_kg: place.has_two_sides().then_some([0.5 * off.mass_kg; 2]),
        deepest: deepest(shape, &after),
        handle_m: (place == Place::Handle).then(|| over_grip_m(&after) - to_come_m),
        then,
        overshoot,
        shape: after,
    }
}

/// Diameter of the handle across at the bottom hand, m, over twine and grips of the finished bat.
fn over_grip_m(shape: &BatShape) -> f64 {
    shape.handle.diameter_over_grip_m(shape.handle.bottom_hand_m())
}

/// More shaves of a handle than anybody needs.
const MOST_SHAVES: usize = 20;

/// The passes with which a handle that is thicker than the card takes comes to what it asks, before the blade is
/// planed; none where the handle is right, or bound already.
fn shaved(bench: &Bench<'_>, card: &Card, goal: &Goal, now: PickupMoments) -> Vec<Pass> {
    let asked = card.asked(Figure::HandleDiameter);
    let mut out: Vec<Pass> = Vec::new();
    if bench.finish.bound || over_grip_m(bench.shape) <= asked.tolerance[1] {
        return out;
    }
    while out.len() < MOST_SHAVES {
        let (reading, shape) = out.last().map_or((now, bench.shape), |it| (it.then, &it.shape));
        let over_m = over_grip_m(shape) - asked.target;
        if over_m <= 1e-6 {
            break;
        }
        let all = cut(shape, Place::Handle, over_m);
        let all_kg = shape.mass_moments().mass_kg - all.mass_moments().mass_kg;
        let share = (LARGEST_PASS_KG / all_kg).min(1.0);
        let after = cut(shape, Place::Handle, share * over_m);
        let pass = pass(bench, goal, reading, shape, Place::Handle, after);
        if pass.overshoot > bench.overshoot_limit() {
            break;
        }
        out.push(pass);
    }
    out
}

/// Takes more off the side to which the blade balances, until its middle is in the middle.
fn evened(passes: &mut [Pass], bench: &Bench<'_>) {
    let mut heavy_kg_m = bench.mass_kg.value * bench.left_m;
    let mut before = bench.shape.clone();
    for it in passes {
        let of_pass = shared(heavy_kg_m, it.off_kg, &before, &it.shape);
        if let (Some(sides_kg), Some(shared)) = (&mut it.sides_kg, of_pass) {
            (*sides_kg, heavy_kg_m) = (shared.sides_kg, shared.heavy_kg_m);
        }
        before = it.shape.clone();
    }
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
        let after = cut(shape, room.place, amount_for(shape, room, off_kg));
        pass(bench, goal, reading, shape, room.place, after)
    };
    let whole = at(off_kg);
    if whole.overshoot <= bench.overshoot_limit() {
        return Some(whole);
    }
    let (mut can, mut cannot) = (0.0, off_kg);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (can + cannot);
        *(if at(middle).overshoot <= bench.overshoot_limit() { &mut can } else { &mut cannot }) =
            middle;
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

//! Where to take how much off, in which order, with the reading to expect after each pass.
//!
//! How much comes off each place is a least-squares problem with limits, in tolerances of the card: the misses
//! of weight, first moment and swing moment. Each pass is then as large as it may be: after it, weight and swing moment
//! lie below the card's low limit with a small chance at the most ([`Bench::overshoot_limit`]), the bench's error and
//! the plane's considered. The bat is weighed again after each pass, and the plan is made anew.

use super::PickupMoments;
use super::additions::{Addition, Finish, additions};
use super::bench::Bench;
use super::cuts::{Place, cut};
use super::even_sides::evened;
use super::goal::Goal;
use super::pass::{LARGEST_PASS_KG, Pass, SMALLEST_PASS_KG, over_grip_m};
use super::shares::{Given, shares};
use crate::bat::sizes::Craft;
use crate::card::{Card, Figure};
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use crate::normal;
use crate::uncertain::independent_sd;

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

/// Why there is no plan: the bat is lighter than the card already.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error(
    "finished it would weigh {finished_kg:.3} kg and swing with {finished_kg_m2:.4} kg m², below the card's low limits of {low_kg:.3} kg and {low_kg_m2:.4} kg m²: wood cannot go back"
)]
pub struct TooLight {
    /// Finished weight, kg.
    pub finished_kg: f64,
    /// Finished swing moment, kg m².
    pub finished_kg_m2: f64,
    /// The card's low limit of the weight, kg.
    pub low_kg: f64,
    /// The card's low limit of the swing moment, kg m².
    pub low_kg_m2: f64,
}

/// A plane takes so much more or less off than it should, one standard deviation, as a share: assumption.
pub const PLANING_SD: f64 = 0.10;
/// So far within its limits a handle stays, m, that a calliper finds it there: assumption.
const CALLIPER_M: f64 = 0.0002;

/// Makes the plan.
pub fn plan(bench: &Bench<'_>, card: &Card, craft: &Craft) -> Result<Plan, TooLight> {
    let wanted = Finish::of(card);
    let mut to_come = additions(bench.shape, &bench.finish, &wanted);
    to_come.extend(&bench.besides);
    let adds = to_come.iter().fold(PickupMoments::default(), |sum, it| sum + it.adds);
    let now = bench.reading.moments();
    let goal = Goal::of(bench, card, adds, &to_come);
    let finished = now + adds;
    let (mass, swing) = (card.asked(Figure::DeadWeight), card.asked(Figure::SwingMoment));
    if finished.mass_kg < mass.tolerance[0] || finished.second_kg_m2 < swing.tolerance[0] {
        return Err(TooLight {
            finished_kg: finished.mass_kg,
            finished_kg_m2: finished.second_kg_m2,
            low_kg: mass.tolerance[0],
            low_kg_m2: swing.tolerance[0],
        });
    }
    let start = shaved(&goal, card, now);
    let (now, shape) = start.last().map_or((now, bench.shape), |it| (it.then, &it.shape));
    let thinnest_m = card.asked(Figure::HandleDiameter).tolerance[0] + CALLIPER_M;
    let rooms: Vec<Given> = Place::ALL
        .into_iter()
        // Twine and grip cover the handle.
        .filter(|it| *it != Place::Handle || !bench.finish.bound)
        .filter_map(|it| Given::of(bench.planed, shape, it, craft, thinnest_m))
        .collect();
    let shares = shares(&goal, now, &rooms);
    let mut passes = passes(&goal, &start, now, &rooms, &shares);
    evened(&mut passes, bench);
    let last = passes.last().map_or(now, |it| it.then);
    let finished = last + adds;
    let finished_sd = doubt(&goal, &passes);
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

/// More shaves of a handle than anybody needs.
const MOST_SHAVES: usize = 20;

/// The passes with which a handle that is thicker than the card takes comes to what it asks, before the blade is
/// planed; none where the handle is right, or bound already.
fn shaved(goal: &Goal<'_>, card: &Card, now: PickupMoments) -> Vec<Pass> {
    let bench = goal.bench;
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
        let pass = goal.pass(reading, shape, Place::Handle, after);
        if pass.overshoot > bench.overshoot_limit() {
            break;
        }
        out.push(pass);
    }
    out
}

/// Cuts the places' shares into passes, after those with which a plan starts.
fn passes(
    goal: &Goal<'_>,
    start: &[Pass],
    now: PickupMoments,
    rooms: &[Given],
    shares: &[f64],
) -> Vec<Pass> {
    let shape = start.last().map_or(goal.bench.shape, |it| &it.shape);
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
            let Some(pass) = goal.safe_pass(reading, &shape, room, off_kg) else { break };
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

/// Doubt of the finished bat if every pass is weighed after: the bench's own, the last pass's, and what goes on.
fn doubt(goal: &Goal<'_>, passes: &[Pass]) -> [f64; 3] {
    let bench = goal.bench;
    let last = passes.last().map_or([0.0; 3], |it| {
        let lever_m = (it.then.second_kg_m2 / it.then.mass_kg).max(0.0);
        let off = it.off_kg * bench.planing_sd;
        [off, off * libm::sqrt(lever_m), off * lever_m]
    });
    let mass_kg = passes.last().map_or(bench.reading.mass_kg.value, |it| it.then.mass_kg);
    let mass = independent_sd(&[bench.reading.mass_kg.sd, last[0], goal.to_come_sd[0]]);
    // At a given weight the balance moves by the first moment over the weight; weighing cancels most of it.
    let arm_m = bench.reading.balance_m.value - PICKUP_AXIS_FROM_TOP_M;
    let shift = |first: f64, off: f64| (first - arm_m * off) / mass_kg;
    let balance = independent_sd(&[
        bench.reading.balance_m.sd,
        shift(last[1], last[0]),
        shift(goal.to_come_sd[1], goal.to_come_sd[0]),
    ]);
    let swing = independent_sd(&[bench.reading.swing_moment_kg_m2.sd, last[2], goal.to_come_sd[2]]);
    [mass, balance, swing]
}

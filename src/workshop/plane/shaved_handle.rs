//! A handle that is thicker than the card takes, shaved before the blade is planed.

use super::PickupMoments;
use super::bench::Bench;
use super::cuts::{Place, cut};
use super::goal::Goal;
use super::pass::{LARGEST_PASS_KG, Pass, over_grip_m, pass};
use crate::card::{Card, Figure};

/// More shaves of a handle than anybody needs.
const MOST_SHAVES: usize = 20;

/// The passes with which a handle that is thicker than the card takes comes to what it asks, before the blade is
/// planed; none where the handle is right, or bound already.
pub(super) fn shaved(bench: &Bench<'_>, card: &Card, goal: &Goal, now: PickupMoments) -> Vec<Pass> {
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

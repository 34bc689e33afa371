//! How far the keys of a stroke may move for a coach still to call it that stroke.
//!
//! Frozen on 2026-11-29, before any path was planned from them: common practice, no source. Nothing is fitted to
//! published speeds of bats; those are the check.

use super::{Key, Stroke};
use crate::frames::{DMat3, DVec3, rotation};

const DEGREE: f64 = core::f64::consts::PI / 180.0;

/// What may move, each by itself.
pub const MOVES: usize = 20;

/// Hands at the top of the backlift, arm lengths: to the bowler, across, up.
const BACKLIFT_HANDS: DVec3 = DVec3::new(0.15, 0.10, 0.15);
/// Bat at the top of the backlift, about the axes of the world.
const BACKLIFT_BAT: f64 = 20.0 * DEGREE;
/// Shoulders and hips at the top of the backlift: how far they are turned away.
const BACKLIFT_TURN: [f64; 2] = [12.0 * DEGREE, 10.0 * DEGREE];
/// Hands on the way down, arm lengths.
const MIDWAY_HANDS: DVec3 = DVec3::new(0.10, 0.10, 0.10);
/// Shoulders and hips on the way down: which goes before the other.
const MIDWAY_TURN: [f64; 2] = [10.0 * DEGREE, 10.0 * DEGREE];
/// How far the bat lags behind the hands on the way down, or goes before them.
const LAG: f64 = 20.0 * DEGREE;
/// Hands where the ball is met, arm lengths; what follows moves with them.
const CONTACT_HANDS: DVec3 = DVec3::new(0.08, 0.08, 0.08);
/// Bat where the ball is met, about its face's normal: the face looks where it did.
const CONTACT_BAT: f64 = 8.0 * DEGREE;
/// Shoulders and hips where the ball is met.
const CONTACT_TURN: [f64; 2] = [10.0 * DEGREE, 10.0 * DEGREE];

/// The stroke with its keys moved, each move from −1 to 1 of its range; the joint path stays what it was.
///
/// Moves, in order: backlift hands (3), bat (3), shoulders, hips; on the way hands (3), shoulders, hips, lag of the
/// bat; contact hands (3), bat, shoulders, hips.
pub fn moved(stroke: &Stroke, moves: &[f64; MOVES]) -> Stroke {
    let part = |from: usize| DVec3::new(moves[from], moves[from + 1], moves[from + 2]);
    let mut keys = stroke.keys.clone();
    for (i, key) in keys.iter_mut().enumerate() {
        let share = Phases::at(&stroke.keys, i);
        key.grip += share.backlift * (BACKLIFT_HANDS * part(0));
        key.grip += share.midway * (MIDWAY_HANDS * part(8));
        key.grip += share.contact * (CONTACT_HANDS * part(14));
        for (axis, turn) in [
            (part(3), share.backlift * BACKLIFT_BAT * part(3).length()),
            (swing_axis(&stroke.keys, i), -share.midway * LAG * moves[13]),
            (stroke.keys[i].face, share.contact * CONTACT_BAT * moves[17]),
        ] {
            if let Some(axis) = axis.try_normalize() {
                turn_bat(key, &rotation(axis, turn));
            }
        }
        let of = |turn: [f64; 2], at: usize| [turn[0] * moves[at], turn[1] * moves[at + 1]];
        let (backlift, midway, contact) =
            (of(BACKLIFT_TURN, 6), of(MIDWAY_TURN, 11), of(CONTACT_TURN, 18));
        let turn = |k: usize| {
            share.backlift * backlift[k] + share.midway * midway[k] + share.contact * contact[k]
        };
        key.trunk_rad[0] += turn(0);
        key.pelvis_turn_rad += turn(1);
    }
    Stroke { keys, ..stroke.clone() }
}

/// How much of each phase's moves a key takes.
struct Phases {
    backlift: f64,
    midway: f64,
    contact: f64,
}

impl Phases {
    /// The first key is the backlift's, those from contact on are contact's, those between the way down.
    fn at(keys: &[Key], i: usize) -> Self {
        let (first, met) = (i == 0, keys[i].p >= 1.0);
        let share = |it: bool| if it { 1.0 } else { 0.0 };
        Self { backlift: share(first), midway: share(!first && !met), contact: share(met) }
    }
}

/// Axis about which the bat turns on its way from the key before to the next.
fn swing_axis(keys: &[Key], i: usize) -> DVec3 {
    let (before, after) = (i.saturating_sub(1), (i + 1).min(keys.len() - 1));
    keys[before].toe.cross(keys[after].toe)
}

fn turn_bat(key: &mut Key, turn: &DMat3) {
    key.toe = *turn * key.toe;
    key.face = *turn * key.face;
}

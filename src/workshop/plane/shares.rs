//! How much each place gives: least squares with limits over what the places can give.

use super::PickupMoments;
use super::cuts::{Place, Planed, Room, room};
use super::goal::Goal;
use crate::bat::shape::BatShape;
use crate::bat::sizes::Craft;

/// Weight of a whole place's room against a miss of one tolerance: prefers a little from each to all from
/// one, and hardly moves the misses.
const SPREAD: f64 = 0.02;
/// Rounds of the coordinate descent.
const ROUNDS: usize = 4000;

/// What a place could give when the plane came out, and how much of it is given, 0 to 1.
pub(super) struct Given {
    pub(super) room: Room,
    /// Given so far, and the most that may be in all.
    pub(super) shares: [f64; 2],
}

impl Given {
    pub(super) fn of(
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
pub(super) fn shares(goal: &Goal<'_>, now: PickupMoments, rooms: &[Given]) -> Vec<f64> {
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

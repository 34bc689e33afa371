//! How a swing's rate of change goes with its state, by differences.

use crate::player::joints::JOINT_COUNT;
use crate::swing::run::{Room, State, Swinger};
use nalgebra::DMatrix;

const N: usize = JOINT_COUNT;

/// Numbers of a state: angles, rates, torques, the bottom hand's couple.
pub(super) const STATES: usize = 3 * N + 3;

/// Where the joint rates begin.
pub(super) const RATES: usize = N;

/// Steps of an angle (rad) and of a rate (rad/s): small against what the law answers to, large against what its
/// search leaves open.
const ANGLE_RAD: f64 = 1e-4;
const RATE_RAD_S: f64 = 1e-2;
/// Steps of a torque, as a share of the joint's, and of the bottom hand's couple, as a share of its grip's.
const SHARE: f64 = 1e-3;

fn packed(it: &State) -> [f64; STATES] {
    let all = it.q.iter().chain(&it.v).chain(&it.torque_n_m).chain(&it.couple_share);
    let mut out = [0.0; STATES];
    for (out, x) in out.iter_mut().zip(all) {
        *out = *x;
    }
    out
}

fn changed(state: &State, place: usize, by: f64) -> State {
    let mut out = *state;
    let all = out.q.iter_mut().chain(&mut out.v).chain(&mut out.torque_n_m);
    if let Some(x) = all.chain(&mut out.couple_share).nth(place) {
        *x += by;
    }
    out
}

/// Rates of the state (rows) per unit of each of its numbers (columns), 1/s.
pub(super) fn jacobian(
    s: &Swinger<'_>,
    sample: usize,
    state: &State,
    stroke_time_s: f64,
    room: &mut Room,
) -> DMatrix<f64> {
    // Twice: the second search starts at the minimum and leaves nothing open.
    s.stage(sample, state, stroke_time_s, room);
    let here = packed(&s.stage(sample, state, stroke_time_s, room).derivative);
    let at_minimum = room.law.clone();
    let mut out = DMatrix::zeros(STATES, STATES);
    for place in 0..STATES {
        let by = match place / N {
            0 => ANGLE_RAD,
            1 => RATE_RAD_S,
            2 => SHARE * s.strength.positive_n_m[place % N],
            _ => SHARE,
        };
        room.law = at_minimum.clone();
        let there = s.stage(sample, &changed(state, place, by), stroke_time_s, room);
        for (row, (a, b)) in packed(&there.derivative).iter().zip(&here).enumerate() {
            out[(row, place)] = (a - b) / by;
        }
    }
    room.law = at_minimum;
    out
}

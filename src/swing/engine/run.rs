//! One swing on the engine at one step length, under the law of [`crate::swing::run`].

use super::EngineFault;
use super::plant::{BatMotion, Plant};
use crate::dynamics::closed_loop::{gap, gap_rows};
use crate::dynamics::tree::Kinematics;
use crate::frames::{DMat3, DVec3, rotation, rotation_vector};
use crate::player::joints::JOINT_COUNT;
use crate::swing::chain::Chain;
use crate::swing::contact::{self, BatAt, Meeting, StepOfPlan};
use crate::swing::hand_wrench::Hands;
use crate::swing::state::State;
use crate::swing::swinger::Swinger;

const N: usize = JOINT_COUNT;

/// One run: where the bat met the ball, and the loads of the hands at the start of every step up to there.
pub(super) struct Run {
    pub(super) met: Meeting,
    pub(super) loads: Vec<Hands>,
}

/// Swings until the ball is met. `samples` is the number of samples of the plan to one step.
pub(super) fn run(s: &Swinger<'_>, stroke_time_s: f64, samples: usize) -> Result<Run, EngineFault> {
    let steps = s.reference.per_unit / samples;
    let dt = stroke_time_s / steps as f64;
    let mut room = s.room();
    let mut state = s.start(stroke_time_s, &mut room);
    let mut plant = Plant::new(s.chain)?;
    close(s.chain, &mut state.q, &mut room.k);
    plant.place(&room.k, &state.q, &state.v);
    // The torque follows what the law calls for within the preview; exact for a target held over the step.
    let called_s = -libm::expm1(-dt / s.control.preview_s) * s.control.preview_s;
    let mut loads = Vec::with_capacity(steps + steps / 10);
    let mut from = plant.bat();
    for index in 0..(s.reference.samples.len() - 1) / samples {
        let now = index * samples;
        let stage = s.stage(now, &state, stroke_time_s, &mut room);
        let a_base = s.a_base(&s.reference.samples[now], stroke_time_s);
        loads.push(plant.step(&stage.torque_n_m, stage.couple_bottom_W, a_base, dt));
        let to = plant.bat();
        if index as f64 > contact::EARLIEST * steps as f64 {
            let step = StepOfPlan { index, samples, dt };
            let bat_at = |u: f64| between(s, &from, &to, u);
            if let Some(met) = contact::meeting(s, stroke_time_s, step, bat_at) {
                return Ok(Run { met, loads });
            }
        }
        from = to;
        let (q, v) = plant.state();
        let rate = &stage.derivative;
        state = State {
            q,
            v,
            torque_n_m: core::array::from_fn(|j| {
                state.torque_n_m[j] + called_s * rate.torque_n_m[j]
            }),
            couple_share: core::array::from_fn(|i| {
                state.couple_share[i] + called_s * rate.couple_share[i]
            }),
        };
        if !q.iter().chain(&v).chain(&state.torque_n_m).all(|x| x.is_finite()) {
            return Err(EngineFault::Lost { step: index, steps });
        }
    }
    Err(EngineFault::Missed)
}

/// Moves the joints as little as closes the loop at the bottom hand, and leaves the kinematics at rest
/// there in `k`. A player's path leaves the loop a little open (see [`crate::swing::close_path`]); the
/// engine would shut it in its first step with a blow.
fn close(chain: &Chain, q: &mut [f64; N], k: &mut Kinematics<N>) {
    for _ in 0..CLOSING_STEPS {
        chain.tree.forward_kinematics(q, &[0.0; N], DVec3::ZERO, k);
        let (rows, _) = gap_rows(&chain.tree, k, &chain.bottom_hand);
        let S = rows
            .iter()
            .fold(DMat3::ZERO, |s, r| s + DMat3::from_cols(*r * r.x, *r * r.y, *r * r.z));
        let pull = S.inverse() * gap(k, &chain.bottom_hand);
        for (angle, row) in q.iter_mut().zip(&rows) {
            *angle -= row.dot(pull);
        }
    }
    chain.tree.forward_kinematics(q, &[0.0; N], DVec3::ZERO, k);
}

/// Newton steps that close the loop: from a millimetre the third is below rounding.
const CLOSING_STEPS: usize = 3;

/// The bat inside a step: the engine itself moves it evenly from one end to the other.
fn between(s: &Swinger<'_>, from: &BatMotion, to: &BatMotion, u: f64) -> BatAt {
    let com = from.com.lerp(to.com, u);
    let v_com = from.v_com.lerp(to.v_com, u);
    let omega = from.omega.lerp(to.omega, u);
    let turn = rotation_vector(&(to.R * from.R.transpose())) * u;
    let R = turned(turn) * from.R;
    let com_B = s.chain.tree.links()[s.chain.link.bat].com;
    let arm = |from_top_m: f64| R * (DVec3::new(from_top_m, 0.0, 0.0) - com_B);
    let (point, toe) = (arm(s.reference.contact_m), arm(s.chain.bat_length_m));
    BatAt {
        point: com + point,
        velocity: v_com + omega.cross(point),
        toe_velocity: v_com + omega.cross(toe),
        R,
    }
}

/// Rotation by a rotation vector.
pub(super) fn turned(by: DVec3) -> DMat3 {
    by.try_normalize().map_or(DMat3::IDENTITY, |axis| rotation(axis, by.length()))
}

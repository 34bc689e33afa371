//! One swing by the search dynamics: our own reduced coordinates, Runge–Kutta of fourth order, the
//! law evaluated inside each stage: held over a step it makes the whole of first order. A gap that opens in
//! the loop at the bottom hand is pulled shut at 50 /s.
#![allow(
    clippy::manual_clamp,
    reason = "clamp panics on NaN; a swing that ran away is caught after its step"
)]

use super::activation::Available;
use super::bottom_grip;
use super::contact::{self, Contact, StepOfPlan};
use super::law::{Law, Reach, closed_chain};
use super::reference::Sample;
use super::state::{Instantaneous, State};
use super::swinger::Swinger;
use super::wishes::{Instant, Wanted};
use crate::dynamics::mass_matrix::MassMatrix;
use crate::dynamics::tree::Kinematics;
use crate::frames::DVec3;
use crate::player::joints::JOINT_COUNT;

const N: usize = JOINT_COUNT;

/// Steps from the top of the backlift to the planned contact. Measured error of the bat speed at
/// this count against 1,600 steps: see `assets/records/checks.md`.
pub const STEPS: usize = 160;
/// The same where swings are many and each is found to a thousandth only: the searches of an advice.
pub const FEWER_STEPS: usize = 112;

/// What the law makes of one state.
pub(super) struct Stage {
    /// Rate of the state by our own dynamics.
    pub(super) derivative: State,
    /// Torques given.
    pub(super) torque_n_m: [f64; N],
    /// Couple of the bottom hand on the bat.
    pub(super) couple_bottom_W: DVec3,
    force_bottom_W: DVec3,
    activation: [f64; N],
}

/// Room for the terms of one state, and the law with its last solution.
pub(super) struct Room {
    pub(super) k: Kinematics<N>,
    m: MassMatrix<N>,
    law: Law,
}

impl<'a> Swinger<'a> {
    /// Swings over `stroke_time_s` until the ball is met or the path ends; `record` sees each step.
    pub fn swing(
        &self,
        stroke_time_s: f64,
        mut record: Option<&mut dyn FnMut(Instantaneous)>,
    ) -> Contact {
        let steps = self.reference.per_unit / 2;
        let dt = stroke_time_s / steps as f64;
        let mut room = self.room();
        let mut state = self.start(stroke_time_s, &mut room);
        let last = self.reference.samples.len() / 2;
        let mut first = self.stage(0, &state, stroke_time_s, &mut room);
        for i in 0..last {
            let here = &self.reference.samples[2 * i];
            if let Some(record) = record.as_mut() {
                record(self.instantaneous(i as f64 * dt, here, stroke_time_s, &state, &first));
            }
            let k1 = first.derivative;
            let k2 = self.stage(2 * i + 1, &moved(&state, &k1, 0.5 * dt), stroke_time_s, &mut room);
            let k3 = self.stage(
                2 * i + 1,
                &moved(&state, &k2.derivative, 0.5 * dt),
                stroke_time_s,
                &mut room,
            );
            let k4 =
                self.stage(2 * i + 2, &moved(&state, &k3.derivative, dt), stroke_time_s, &mut room);
            let mut next = state;
            for (k, w) in
                [(&k1, 1.0), (&k2.derivative, 2.0), (&k3.derivative, 2.0), (&k4.derivative, 1.0)]
            {
                next = moved(&next, k, w * dt / 6.0);
            }
            let second = self.stage(2 * i + 2, &next, stroke_time_s, &mut room);
            if i as f64 > contact::EARLIEST * steps as f64
                && let Some(contact) = contact::crossing(
                    self,
                    stroke_time_s,
                    StepOfPlan { index: i, samples: 2, dt },
                    (&state, &first.derivative),
                    (&next, &second.derivative),
                    &mut room.k,
                )
            {
                if let Some(record) = record.as_mut() {
                    let there = &self.reference.samples[2 * i + 2];
                    let t = (i + 1) as f64 * dt;
                    record(self.instantaneous(t, there, stroke_time_s, &next, &second));
                }
                return contact;
            }
            if !next.q.iter().chain(&next.v).all(|x| x.is_finite()) {
                break; // the step was too long for so slow a stroke: out of control by any measure
            }
            state = next;
            first = second;
        }
        Contact::missed(stroke_time_s)
    }

    /// Room for one swing.
    pub(super) fn room(&self) -> Room {
        Room {
            k: self.chain.tree.kinematics(),
            m: MassMatrix::new(&self.chain.tree),
            law: Law::new(self.control),
        }
    }

    /// Acceleration of the base: free fall turned upwards, and the pelvis's own.
    pub(super) fn a_base(&self, sample: &Sample, stroke_time_s: f64) -> DVec3 {
        DVec3::new(0.0, 0.0, self.gravity_m_s2) + sample.pelvis2 / (stroke_time_s * stroke_time_s)
    }

    /// At rest at the top of the backlift, the muscles already giving what the reversal needs.
    pub(super) fn start(&self, stroke_time_s: f64, room: &mut Room) -> State {
        let sample = &self.reference.samples[0];
        let v = [0.0; N];
        if let Some(torque_n_m) = self.start_torque_n_m {
            return State { q: sample.q, v, torque_n_m, couple_share: [0.0; 3] };
        }
        let a_base = self.a_base(sample, stroke_time_s);
        let closed = closed_chain(self.chain, &sample.q, &v, a_base, &mut room.k, &mut room.m);
        let available = Available::new(&self.strength, &v);
        let it = Instant {
            chain: self.chain,
            k: &room.k,
            closed: &closed,
            a_base,
            q: &sample.q,
            v: &v,
            contact_m: self.reference.contact_m,
            couple_limit_n_m: bottom_grip::limit_n_m(self.chain, &room.k),
            held_R: &self.reference.held_R,
        };
        let wanted = self.wanted(0, stroke_time_s);
        let called =
            room.law.target(&it, &wanted, &self.strength, &available, &[0.0; N], Reach::Full);
        State { q: sample.q, v, torque_n_m: called.torque_n_m, couple_share: called.couple_share }
    }

    /// Share of its capacity that each joint gives to hold the bat still at the top of the backlift.
    pub fn hold_share(&self) -> [f64; N] {
        let mut room = self.room();
        // A stroke so slow that it asks for no acceleration.
        let state = self.start(STILL_S, &mut room);
        let available = Available::new(&self.strength, &state.v);
        core::array::from_fn(|j| available.activation(j, state.torque_n_m[j]).abs())
    }

    fn wanted(&self, sample: usize, stroke_time_s: f64) -> Wanted<'a> {
        let s = sample as f64 / self.reference.per_unit as f64;
        Wanted {
            now: &self.reference.samples[sample],
            ahead: self.reference.accelerations(s + self.control.preview_s / stroke_time_s),
            stroke_time_s,
        }
    }

    /// Derivative of the state, and the terms it came from.
    pub(super) fn stage(
        &self,
        sample: usize,
        state: &State,
        stroke_time_s: f64,
        room: &mut Room,
    ) -> Stage {
        let sample = sample.min(self.reference.samples.len() - 1);
        let now = &self.reference.samples[sample];
        let a_base = self.a_base(now, stroke_time_s);
        let closed = closed_chain(self.chain, &state.q, &state.v, a_base, &mut room.k, &mut room.m);
        let available = Available::new(&self.strength, &state.v);
        let activation: [f64; N] = core::array::from_fn(|j| {
            available.activation(j, state.torque_n_m[j]).max(-1.0).min(1.0)
        });
        let mut torque: [f64; N] = core::array::from_fn(|j| available.signed(j, activation[j]));
        if let Some(share) = self.given_share.and_then(|it| it.get(sample)) {
            torque.iter_mut().zip(share).for_each(|(torque, share)| *torque *= share);
        }
        let it = Instant {
            chain: self.chain,
            k: &room.k,
            closed: &closed,
            a_base,
            q: &state.q,
            v: &state.v,
            contact_m: self.reference.contact_m,
            couple_limit_n_m: bottom_grip::limit_n_m(self.chain, &room.k),
            held_R: &self.reference.held_R,
        };
        let target = room.law.target(
            &it,
            &self.wanted(sample, stroke_time_s),
            &self.strength,
            &available,
            &activation,
            Reach::FromActivation,
        );
        let preview_s = self.control.preview_s;
        let torque_n_m =
            core::array::from_fn(|j| (target.torque_n_m[j] - state.torque_n_m[j]) / preview_s);
        let couple_share =
            core::array::from_fn(|i| (target.couple_share[i] - state.couple_share[i]) / preview_s);
        let couple_B =
            DVec3::from_array(state.couple_share) * DVec3::from_array(it.couple_limit_n_m);
        let couple_bottom_W = room.k.R[self.chain.link.bat] * couple_B;
        let acting = bottom_grip::with_couple(self.chain, &room.k, &torque, couple_bottom_W);
        let v = closed.accelerations(&acting);
        let derivative = State { q: state.v, v, torque_n_m, couple_share };
        let force_bottom_W = closed.joint_force_n(&acting);
        Stage { derivative, torque_n_m: torque, couple_bottom_W, force_bottom_W, activation }
    }

    fn instantaneous(
        &self,
        t_s: f64,
        sample: &Sample,
        stroke_time_s: f64,
        state: &State,
        stage: &Stage,
    ) -> Instantaneous {
        Instantaneous {
            t_s,
            state: *state,
            torque_n_m: stage.torque_n_m,
            activation: stage.activation,
            acceleration: stage.derivative.v,
            force_bottom_W: stage.force_bottom_W,
            couple_bottom_W: stage.couple_bottom_W,
            a_base_W: self.a_base(sample, stroke_time_s),
            pelvis_W: sample.pelvis,
            pelvis_velocity_W: sample.pelvis1 / stroke_time_s,
        }
    }
}

/// Stroke time that counts as standing still, s.
const STILL_S: f64 = 1e3;

fn moved(state: &State, rate: &State, dt: f64) -> State {
    let mut out = *state;
    for j in 0..N {
        out.q[j] += dt * rate.q[j];
        out.v[j] += dt * rate.v[j];
        out.torque_n_m[j] += dt * rate.torque_n_m[j];
    }
    for (couple, rate) in out.couple_share.iter_mut().zip(&rate.couple_share) {
        *couple += dt * rate;
    }
    out
}

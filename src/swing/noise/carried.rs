//! The covariance of a meeting: the noise of every joint, carried from when it acts to contact.
//!
//! With y the deviation of the state, y' = A y + B n along the swing, and n each joint's noise with correlation
//! exp(−|t−t'|/time). The figures' rows are carried backwards, λ' = −λ A (the adjoint), by the trapezoidal rule; λ B
//! is what noise at that instant does to them, and its double integral over the correlation their covariance.

use super::MotorNoise;
use super::jacobian::{RATES, STATES, jacobian};
use super::meets::{AtContact, FIGURES, Meets, rows};
use crate::dynamics::tree::Kinematics;
use crate::frames::DVec3;
use crate::player::joints::JOINT_COUNT;
use crate::swing::law::closed_chain;
use crate::swing::run::{Instantaneous, Room, Swinger};
use nalgebra::{DMatrix, SMatrix};

const N: usize = JOINT_COUNT;

/// Every so many steps of the swing its rates are looked at: 4 ms of a fast stroke.
const EVERY: usize = 2;

/// How a meeting scatters from swing to swing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scatter {
    /// Covariance of the figures of [`AtContact`], in their order.
    pub covariance: [[f64; FIGURES]; FIGURES],
    /// Where on the blade a ball is met that comes a second early, along and across, m/s.
    pub early_m_s: [f64; 2],
}

impl Scatter {
    /// One standard deviation of each figure.
    pub fn sd(&self) -> AtContact {
        let sd = |i: usize| libm::sqrt(self.covariance[i][i].max(0.0));
        AtContact {
            along_m: sd(0),
            across_m: sd(1),
            face_rad: sd(2),
            lie_rad: sd(3),
            time_s: sd(4),
        }
    }
}

/// The scatter of a swing over `stroke_time_s`; none where the bat does not come to the ball.
pub fn scatter(
    s: &Swinger<'_>,
    stroke_time_s: f64,
    noise: &MotorNoise,
    meets: Meets,
) -> Option<Scatter> {
    let mut recorded = Vec::new();
    let contact = s.swing(stroke_time_s, Some(&mut |it| recorded.push(it)));
    if !contact.reached {
        return None;
    }
    // The last instant lies within a step of contact; the rest are counted back from there.
    let last = recorded.len() - 1;
    let places: Vec<usize> = (0..=last).rev().step_by(EVERY).collect();
    let end = recorded.get(last)?;
    let mut room = s.room();
    let (k, velocity) = (&mut room.k, end.pelvis_velocity_W);
    s.chain.tree.forward_kinematics(&end.state.q, &end.state.v, DVec3::ZERO, k);
    let at_contact = rows(s.chain, k, s.reference.contact_m, velocity, meets);

    let h = EVERY as f64 * stroke_time_s / (s.reference.per_unit / 2) as f64;
    let mut carried =
        DMatrix::from_fn(FIGURES, STATES, |figure, at| at_contact.by_state[figure][at]);
    let mut effects = Vec::with_capacity(places.len());
    let mut later: Option<DMatrix<f64>> = None;
    for place in places {
        let it = &recorded[place];
        let A = jacobian(s, 2 * place, &it.state, stroke_time_s, &mut room);
        if let Some(later) = later {
            let right = &carried + (&carried * later) * (0.5 * h);
            let left = DMatrix::identity(STATES, STATES) - &A * (0.5 * h);
            carried = left.transpose().lu().solve(&right.transpose())?.transpose();
        }
        effects.push(effect(s, it, &carried, &mut room));
        later = Some(A);
    }
    let shares = noise.shares(&s.strength);
    let covariance = correlated(&effects, &shares, h, noise.time_s);
    Some(Scatter { covariance, early_m_s: at_contact.early_m_s })
}

/// What a unit of each joint's noise at one instant does to the figures, per second.
type Effect = SMatrix<f64, FIGURES, N>;

fn effect(s: &Swinger<'_>, it: &Instantaneous, carried: &DMatrix<f64>, room: &mut Room) -> Effect {
    let (k, m): (&mut Kinematics<N>, _) = (&mut room.k, &mut room.m);
    let closed = closed_chain(s.chain, &it.state.q, &it.state.v, it.a_base_W, k, m);
    Effect::from_fn(|figure, joint| {
        let by_torque: f64 =
            (0..N).map(|row| carried[(figure, RATES + row)] * closed.P[row][joint]).sum();
        by_torque * it.torque_n_m[joint]
    })
}

/// The double integral over the correlation, by the trapezoidal rule in both times.
fn correlated(
    effects: &[Effect],
    shares: &[f64; N],
    h: f64,
    time_s: f64,
) -> [[f64; FIGURES]; FIGURES] {
    let weight = |i: usize| if i == 0 || i + 1 == effects.len() { 0.5 * h } else { h };
    let scaled: Vec<Effect> = effects
        .iter()
        .enumerate()
        .map(|(i, it)| Effect::from_fn(|f, j| weight(i) * shares[j] * it[(f, j)]))
        .collect();
    let mut sum = SMatrix::<f64, FIGURES, FIGURES>::zeros();
    // What lies after an instant, weighed by its correlation with it, from one instant to the next.
    let mut after = Effect::zeros();
    let fades = libm::exp(-h / time_s);
    for it in &scaled {
        after *= fades;
        sum += it * it.transpose() + it * after.transpose() + after * it.transpose();
        after += it;
    }
    core::array::from_fn(|i| core::array::from_fn(|j| sum[(i, j)]))
}

//! Activation: the share of its present capacity that a joint gives, and how fast it can change.
#![allow(clippy::needless_range_loop, reason = "joints of several arrays side by side")]

use crate::player::Strength;
use crate::player::force_velocity::HillCurve;
use crate::player::joints::JOINT_COUNT;

/// Time constant of the rise and fall of torque, s. Between the rise (10–15 ms) and the fall
/// (40–60 ms) of muscle models (OpenSim defaults, read); one constant for both is an assumption.
pub const ACTIVATION_TIME_S: f64 = 0.030;

/// The same for an isometric effort from rest: the inverse of men's steepest rise of elbow torque, 9.5 of the
/// greatest torque a second (Falk et al. 2009, read). Which of the two a swing has, nobody measured.
pub const FROM_REST_S: f64 = 1.0 / 9.5;

/// Share of the isometric maximum that is kept at any joint speed, so that no box closes.
const LEAST_SHARE: f64 = 0.01;

/// Torques that the joints can give at one instant, in each direction, N m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Available {
    /// In the positive direction.
    pub positive_n_m: [f64; JOINT_COUNT],
    /// In the negative direction (a positive number).
    pub negative_n_m: [f64; JOINT_COUNT],
}

impl Available {
    /// Capacity times the Hill factor at the joints' speeds.
    pub fn new(strength: &Strength, rate_rad_s: &[f64; JOINT_COUNT]) -> Self {
        let mut out =
            Self { positive_n_m: strength.positive_n_m, negative_n_m: strength.negative_n_m };
        for j in 0..JOINT_COUNT {
            let w = rate_rad_s[j] / strength.max_rate_rad_s[j];
            out.positive_n_m[j] *= HillCurve::JOINT.at(w).value.max(LEAST_SHARE);
            out.negative_n_m[j] *= HillCurve::JOINT.at(-w).value.max(LEAST_SHARE);
        }
        out
    }

    /// Torque of one joint at an activation (−1 to 1), N m.
    pub fn signed(&self, joint: usize, activation: f64) -> f64 {
        if activation > 0.0 {
            activation * self.positive_n_m[joint]
        } else {
            activation * self.negative_n_m[joint]
        }
    }

    /// Activation that gives a torque.
    pub fn activation(&self, joint: usize, torque_n_m: f64) -> f64 {
        if torque_n_m > 0.0 {
            torque_n_m / self.positive_n_m[joint]
        } else {
            torque_n_m / self.negative_n_m[joint]
        }
    }
}

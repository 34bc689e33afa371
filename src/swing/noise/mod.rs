//! Noise of the muscles, and what it makes of place, face and time at contact.
//!
//! A muscle's torque scatters in proportion to itself, the less the stronger the joint. Carried through the swing as a
//! small deviation from it, with the law following the plan from wherever the noise has brought the swing, it gives
//! the covariance of how bat and ball meet. The law takes errors back without delay, which no player does: what is
//! left is what the best control of this kind leaves.

mod carried;
mod jacobian;
mod meets;

pub use carried::{Scatter, scatter};
pub use meets::{AtContact, FIGURES, Meets};

use crate::player::Strength;
use crate::player::joints::JOINT_COUNT;

/// How the torque of a joint scatters about what is called for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MotorNoise {
    /// One standard deviation of the torque of a joint of [`USUAL_JOINT_N_M`], as a share of the torque.
    pub share: f64,
    /// The share goes with the joint's greatest torque to the power of less this.
    pub scaling: f64,
    /// Time over which the scatter stays alike, s: its correlation falls as exp(−t/this).
    pub time_s: f64,
}

/// Greatest torque of the joint of which the share is told, N m: an elbow's, in round figures.
pub const USUAL_JOINT_N_M: f64 = 70.0;

impl Default for MotorNoise {
    /// Sizes and time: assumption. That the scatter goes with the torque was measured (Jones, Hamilton & Wolpert
    /// 2002, J Neurophysiol 88:1533), and that stronger joints have the smaller share (Hamilton, Jones & Wolpert 2004,
    /// Exp Brain Res 157:417); both read in abstract, without the figures.
    fn default() -> Self {
        Self { share: 0.02, scaling: 0.25, time_s: 0.05 }
    }
}

impl MotorNoise {
    /// One standard deviation of each joint's torque as a share of it.
    pub fn shares(&self, strength: &Strength) -> [f64; JOINT_COUNT] {
        core::array::from_fn(|j| {
            let greatest_n_m = 0.5 * (strength.positive_n_m[j] + strength.negative_n_m[j]);
            self.share * libm::pow(greatest_n_m / USUAL_JOINT_N_M, -self.scaling)
        })
    }
}

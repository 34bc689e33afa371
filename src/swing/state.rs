//! A swing at one instant.

use crate::frames::DVec3;
use crate::player::joints::JOINT_COUNT;

const N: usize = JOINT_COUNT;

/// State of a swing: joint angles, rates, torques, the bottom hand's couple.
///
/// The torque is the state, not the activation: a player who knows the stroke calls up more as a
/// joint speeds up, so that torque does not fall first and have to be won back. Its rate is limited
/// by activation, its size by the present capacity. (With the activation as the state the adult's
/// fastest swings come out 2.5–4.5 % slower and the child's hook loses its smoothness.)
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// Joint angles, rad.
    pub q: [f64; N],
    /// Joint rates, rad/s.
    pub v: [f64; N],
    /// Joint torques called up, N m; what a joint gives is this within its present capacity.
    pub torque_n_m: [f64; N],
    /// Couple of the bottom hand on the bat about the bat's axes, as a share of what its grip holds.
    pub couple_share: [f64; 3],
}

/// Everything at one recorded instant.
#[derive(Clone, Debug)]
pub struct Instantaneous {
    /// Time from the top of the backlift, s.
    pub t_s: f64,
    /// State.
    pub state: State,
    /// Joint torques, N m.
    pub torque_n_m: [f64; N],
    /// Share of each joint's present capacity at its speed, −1 to 1.
    pub activation: [f64; N],
    /// Joint accelerations, rad/s².
    pub acceleration: [f64; N],
    /// Force of the bottom hand on the bat, N, W.
    pub force_bottom_W: DVec3,
    /// Couple of the bottom hand on the bat, N m, W.
    pub couple_bottom_W: DVec3,
    /// Acceleration of the base with gravity, m/s², W.
    pub a_base_W: DVec3,
    /// Pelvis displacement, m, W.
    pub pelvis_W: DVec3,
    /// Pelvis velocity, m/s, W.
    pub pelvis_velocity_W: DVec3,
}

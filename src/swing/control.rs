//! Constants of the law by which the player follows the plan.

use super::activation::ACTIVATION_TIME_S;

/// Constants of the law; the values are those the pilot study found to give a smooth, monotone
/// fastest swing (assumption of this project, robustness in the study's range).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Control {
    /// How far ahead torque can be called up, s.
    pub preview_s: f64,
    /// Time constant of the rise and fall of torque, s.
    pub activation_time_s: f64,
    /// Weight of the wall round the capacities.
    pub barrier: f64,
    /// Bandwidth with which errors are corrected, 1/s.
    pub bandwidth_1_s: f64,
    /// Weight of the bat point's acceleration, per m/s².
    pub weight_position: f64,
    /// Weight of the bat's angular acceleration, per rad/s².
    pub weight_rotation: f64,
    /// Weight of the joints' accelerations, per rad/s².
    pub weight_posture: f64,
    /// Weight of effort (torque over capacity, couple over what the grip holds).
    pub weight_effort: f64,
    /// Weight of the handle's angular acceleration in the bottom hand, per rad/s².
    pub weight_hold: f64,
}

impl Default for Control {
    fn default() -> Self {
        Self {
            preview_s: 0.003,
            activation_time_s: ACTIVATION_TIME_S,
            barrier: 0.1,
            bandwidth_1_s: 25.0,
            weight_position: 1.0,
            weight_rotation: 0.35,
            weight_posture: 0.06,
            weight_effort: 1.0,
            weight_hold: 0.35,
        }
    }
}

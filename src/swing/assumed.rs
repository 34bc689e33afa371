//! What a swing rests on that nobody measured of anybody's swing.

use super::activation::ACTIVATION_TIME_S;
use crate::player::grip::FRICTION;

/// Assumptions, the same for all players; a study of what is uncertain puts others in their place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Assumed {
    /// Friction of glove on grip.
    pub friction: f64,
    /// Time constant of the rise and fall of torque, s.
    pub activation_time_s: f64,
}

impl Default for Assumed {
    fn default() -> Self {
        Self { friction: FRICTION.value, activation_time_s: ACTIVATION_TIME_S }
    }
}

//! What a swing rests on that nobody measured of anybody's swing.

use super::control::Control;
use crate::frames::STANDARD_GRAVITY_M_S2;
use crate::player::grip::FRICTION;

/// Assumptions, the same for all players; a study of what is uncertain puts others in their place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Assumed {
    /// Friction of glove on grip.
    pub friction: f64,
    /// How the player follows the plan, the time in which torque rises and falls among it.
    pub control: Control,
    /// Free fall, m/s².
    pub gravity_m_s2: f64,
}

impl Default for Assumed {
    fn default() -> Self {
        Self {
            friction: FRICTION.value,
            control: Control::default(),
            gravity_m_s2: STANDARD_GRAVITY_M_S2,
        }
    }
}

//! The innings that bats are swung in.

use super::constants::BALL_AT_BAT;
use crate::measurement::plan::{Bowling, InningsPlan};

/// What the bats are swung in.
#[derive(Clone, Copy, Debug)]
pub struct Innings<'a> {
    /// The plan.
    pub plan: &'a InningsPlan,
    /// Stroke time at which loads are taken, by stroke, s.
    pub asked_time_s: &'a [f64],
    /// Speed of the ball at the bat, m/s.
    pub ball_m_s: f64,
}

/// Speed at the bat of a ball of this bowling, m/s.
pub fn ball_at_bat_m_s(bowling: &Bowling) -> f64 {
    BALL_AT_BAT.value * bowling.speed_m_s
}

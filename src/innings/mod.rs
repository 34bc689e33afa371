//! Fatigue, ball by ball: what each joint group has left at each score.

pub mod ball_by_ball;
pub mod compartments;
pub mod played;
pub mod schedule;
pub mod score;
pub mod slow_state;

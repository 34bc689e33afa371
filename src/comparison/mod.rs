//! Is a difference real, can it be felt, and what does it do to the ball.

pub mod collision;
pub mod difference;
pub mod noticeable;

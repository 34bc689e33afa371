//! Is a difference real, can it be felt, and what does it do to the ball.

pub mod bats;
pub mod carried;
pub mod collision;
pub mod difference;
pub mod figure;
pub mod noticeable;
pub mod player_doubt;
pub mod swung;

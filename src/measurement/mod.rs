//! What was measured: the bat on the bench, the player with tape and dynamometer,
//! the swings in the nets.

pub mod absurd;
pub mod bench;
pub mod nets;
pub mod out_of_range;
pub mod person;
pub mod plan;
pub mod taps;

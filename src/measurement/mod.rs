//! What was measured: the bat on the bench, the player with tape and dynamometer.

pub mod absurd;
pub mod bench;
pub mod person;
pub mod plan;

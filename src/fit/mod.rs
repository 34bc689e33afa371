//! The bat to order: which bats can be made, what each is worth to everybody this player may be, and which to ask for.

pub mod candidates;
pub mod domain;
pub mod fitting;
pub mod headline;
pub mod map;
pub mod middles;
pub mod order;
pub mod pays;
pub mod region;
pub mod setting;
pub mod settle;
pub mod size_swings;
pub mod tolerance;
pub mod trial;

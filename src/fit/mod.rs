//! The bat to order: which bats can be made, what each is worth to everybody this player may be, and which to ask for.
//!
//! Kept for safety, here and in [`today`](crate::worth::today): a junior is named the lighter pickup of bats that are
//! too close to call; a bat that is less often in time is preferred only for a gain beyond its doubt; a size too long
//! for the stature is never named where one suits. No figure on a card is interpolated.

pub mod candidates;
pub mod domain;
pub mod fault;
pub mod fitting;
pub mod headline;
pub mod map;
pub mod middle_of;
pub mod middles;
pub mod on_map;
pub mod pays;
pub mod region;
pub mod setting;
pub mod settle;
pub mod size_swings;
pub mod tolerance;
pub mod trial;

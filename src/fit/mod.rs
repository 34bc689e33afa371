//! The search: which bats can be made, what each is worth to this player late in the innings, and
//! which to ask for.

pub mod candidates;
pub mod doubts;
pub mod fitting;
pub mod given;
pub mod headline;
pub mod order;
pub mod rule;
pub mod search;
pub mod setting;
pub mod surrogate;
pub mod tolerance;
pub mod trial;

//! Facts about the stage `dynamics`.

mod closed_chain;
mod drawn_chains;
mod free_motion;
pub mod given_torques;
mod identities;
mod open_chain;

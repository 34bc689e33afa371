//! Figures of outside programs (`assets/reference/`), read for the stages that are compared with them.
//!
//! The facts here need no dynamics of ours: that the files describe one and the same chain, and that
//! the outside programs agree among themselves closely enough to judge others by.
#![allow(dead_code, reason = "the fields are the files' format")]

mod chain;
mod fatigue;
mod free_motion;
mod law;
mod motions;

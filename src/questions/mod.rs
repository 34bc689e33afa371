//! What can be asked of a player's scenario, a card, a described bat or a log: a question is a function from what was
//! loaded, and its arguments, to an answer. Command line, window and tests ask the same ones.
//!
//! A question computes and neither draws, prints, writes nor looks at a clock. How far it is, it tells a [`Progress`];
//! why there is no answer, a [`Stop`] says, its faults put where they were written.

mod progress;
mod stop;

pub use progress::Progress;
pub use stop::Stop;

pub mod loaded;
pub mod placed;

pub mod advice;
pub mod any_score;
pub mod bench_log;
pub mod calibrated;
pub mod compared;
pub mod delivered;
pub mod fitted;
pub mod hit;
pub mod innings;
pub mod matters;
pub mod miss;
pub mod orders;
pub mod ounces;
pub mod own;
pub mod pairs;
pub mod plane;
pub mod season;
pub mod shape;
pub mod surer;
pub mod swung;
pub mod taped;
pub mod timed;
pub mod validated;

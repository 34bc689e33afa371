//! What can be asked of a player's scenario, a card, a described bat or a log: a question is a function from what was
//! loaded, and its arguments, to an answer. Command line, window and tests ask the same ones.
//!
//! A question computes and neither draws, prints, writes nor looks at a clock. How far it is, it tells a [`Progress`];
//! why there is no answer, a [`Stop`] says, its faults put where they were written.

mod stop;

use core::ops::ControlFlow;

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
pub mod validated;

/// Hears how far long work is, on whatever thread it runs; any closure of the same shape will do.
pub trait Progress: Sync {
    /// Hears what is being done and which share of it is done; `Break` asks the work to stop.
    fn report(&self, doing: &str, share: f64) -> ControlFlow<()>;

    /// Hears of the next step of work done in steps.
    ///
    /// # Errors
    /// [`Stop::Cancelled`] if the work is asked to stop.
    fn step(&self, doing: &str, share: f64) -> Result<(), Stop> {
        match self.report(doing, share) {
            ControlFlow::Continue(()) => Ok(()),
            ControlFlow::Break(()) => Err(Stop::Cancelled),
        }
    }
}

impl<F: Fn(&str, f64) -> ControlFlow<()> + Sync> Progress for F {
    fn report(&self, doing: &str, share: f64) -> ControlFlow<()> {
        self(doing, share)
    }
}

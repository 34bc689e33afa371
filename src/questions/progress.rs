//! How far a question is, told to whoever asked it.

use core::ops::ControlFlow;

use super::Stop;

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

//! What every question about a bat's worth starts from: today's advice, from the same draws for all.

use super::loaded::Loaded;
use super::placed::innings_stop;
use super::{Progress, Stop};
use crate::fit::fitting::{FitFault, TodayAdvice, fit_today};
use crate::swing::player_stroke::SwingFault;

/// Today's bats, judged; what an advice from `before` swung of them is not swung again. Of the progress they take
/// `part`, from `from` on.
///
/// # Errors
/// If the work is cancelled, or the advice cannot be had.
pub fn today(
    loaded: &Loaded,
    before: Option<&TodayAdvice>,
    progress: &dyn Progress,
    [from, part]: [f64; 2],
) -> Result<TodayAdvice, Stop> {
    fit_today(&loaded.order(), before, &|doing, share| progress.report(doing, from + part * share))
        .map_err(|fault| stop(loaded, fault))
}

/// An advice that could not be had, its fault put where it was written.
pub fn stop(loaded: &Loaded, fault: FitFault) -> Stop {
    let mend = "see fit.sizes, fit.lightest and fit.heaviest";
    match fault {
        FitFault::Cancelled => Stop::Cancelled,
        FitFault::Innings(fault) => innings_stop(&loaded.places, fault),
        FitFault::NoSize { .. } | FitFault::NothingToMake { .. } => {
            Stop::from(loaded.places.fault("fit", &fault.to_string(), mend))
        }
        FitFault::Swing(SwingFault::NoControlledSwing { stroke, .. }) => {
            loaded.standard_bat_beyond_control(&stroke)
        }
        FitFault::Swing(fault) => fault.into(),
        FitFault::Swings(_) => Stop::no_answer(fault, loaded.lighter_mend()),
        FitFault::Size(it) if it.is_beyond_control() => Stop::no_answer(it, loaded.lighter_mend()),
        other => Stop::our_mistake(other),
    }
}

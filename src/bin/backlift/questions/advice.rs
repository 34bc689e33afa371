//! What every command that speaks of a bat's worth starts from: today's advice, from the same draws for all.

use backlift::files::fault::Fault;
use backlift::fit::fitting::{FitFault, TodayAdvice, fit_today};
use backlift::swing::player_stroke::SwingFault;
use backlift::worth::suits::Suits;

use crate::loaded::Loaded;
use crate::outcome::Stop;
use crate::placed::innings_stop;
use crate::progress::Progress;

/// Today's bats, judged; what an advice from `before` swung of them is not swung again. Of the progress they take
/// `part`, from `from` on.
pub fn today(
    loaded: &Loaded,
    before: Option<&TodayAdvice>,
    progress: &Progress,
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
        FitFault::Swings(_) => no_answer(loaded, &fault),
        FitFault::Size(it) if it.is_beyond_control() => no_answer(loaded, &it),
        other => Stop::OurMistake(other.to_string()),
    }
}

/// Right input, but a bat that this player cannot swing.
fn no_answer(loaded: &Loaded, fault: &dyn std::fmt::Display) -> Stop {
    Stop::NoAnswer(Fault::new(fault.to_string()).help(loaded.lighter_mend()))
}

/// Whether a size suits, in a table.
pub fn suits_words(it: Suits) -> &'static str {
    match it {
        Suits::Yes => "yes",
        Suits::TooLong => "too long",
        Suits::TooShort => "too short",
    }
}

/// Whether a size suits, as JSON has it.
pub fn suits_key(it: Suits) -> &'static str {
    match it {
        Suits::Yes => "yes",
        Suits::TooLong => "too_long",
        Suits::TooShort => "too_short",
    }
}

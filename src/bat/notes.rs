//! What a reader must be told beside the figures: what was estimated, and what looks wrong.

use super::makeable::NotMakeable;
use crate::measurement::absurd::tidy;
use crate::measurement::out_of_range::OutOfRange;

/// A figure, of a bat or of a player, that was not measured.
#[derive(Clone, Debug, PartialEq)]
pub struct EstimatedFigure {
    /// What was estimated, in plain words.
    pub what: &'static str,
    /// From what, with its source.
    pub from: String,
    /// One standard deviation as a share of the value.
    pub relative_sd: f64,
}

/// How the swings of a pendulum test may have been counted wrongly.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Miscount {
    /// One swing fewer was made than counted.
    OneFewer,
    /// One swing more was made than counted.
    OneMore,
    /// Each pass was counted, out and back as two.
    SinglePasses,
}

/// Something that is possible but looks wrong; the figures stand all the same.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Warning {
    /// A reading outside what is usual.
    #[error(
        "{} {} {unit} is unusual: most bats lie between {} and {} {unit}",
        .0.field, tidy(&.0.value), .0.low, .0.high, unit = .0.unit
    )]
    Unusual(OutOfRange),
    /// The overall length is not that of the named size.
    #[error(
        "{:.0} mm long, but a size {size} is about {:.0} mm: is the size right?",
        1e3 * length_m, 1e3 * usual_m
    )]
    LengthUnlikeSize {
        /// Named size.
        size: String,
        /// Measured length, m.
        length_m: f64,
        /// Length of the size, m.
        usual_m: f64,
    },
    /// No size was named and no length measured, so that the size was guessed from the weight.
    #[error("neither size nor length given: taken for a size {size} by its weight alone")]
    SizeGuessedFromWeight {
        /// Size taken.
        size: String,
    },
    /// Weight and balance are not those of a bat of its size.
    #[error("weight and balance are unlike a size {size}: {reason}")]
    UnlikeItsSize {
        /// Size it was compared with.
        size: String,
        /// Why no such bat would be made.
        reason: NotMakeable,
    },
    /// The pendulum disagrees with what weight, balance and size let expect.
    #[error(
        "the pendulum time is {deviations:.1} standard deviations from what weight, balance and size let expect: did you count {}, {} or single passes?{}",
        counted.saturating_sub(1), counted.saturating_add(1), would_fit(*counted, *likely)
    )]
    PendulumUnlikeSize {
        /// Swings counted.
        counted: u32,
        /// Distance between the two swing moments in standard deviations of their difference.
        deviations: f64,
        /// The miscount that would explain it best, if one brings the two within reach.
        likely: Option<Miscount>,
    },
}

fn would_fit(counted: u32, likely: Option<Miscount>) -> String {
    match likely {
        Some(Miscount::OneFewer) => format!(" {} swings would fit", counted.saturating_sub(1)),
        Some(Miscount::OneMore) => format!(" {} swings would fit", counted.saturating_add(1)),
        Some(Miscount::SinglePasses) => " Single passes would fit".to_owned(),
        None => String::new(),
    }
}

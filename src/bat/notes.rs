//! What a reader must be told beside the figures: what was estimated, and what looks wrong.

use super::makeable::NotMakeable;
use crate::measurement::absurd::Unusual;

/// A figure of a bat that was not measured.
#[derive(Clone, Debug, PartialEq)]
pub struct EstimatedFigure {
    /// What was estimated, in plain words.
    pub what: &'static str,
    /// From what.
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
#[derive(Clone, Debug, PartialEq)]
pub enum Warning {
    /// A reading outside what is usual.
    Unusual(Unusual),
    /// The overall length is not that of the named size.
    LengthUnlikeSize {
        /// Named size.
        size: String,
        /// Measured length, m.
        length_m: f64,
        /// Length of the size, m.
        usual_m: f64,
    },
    /// No size was named and no length measured, so that the size was guessed from the weight.
    SizeGuessedFromWeight {
        /// Size taken.
        size: String,
    },
    /// Weight and balance are not those of a bat of its size.
    UnlikeItsSize {
        /// Size it was compared with.
        size: String,
        /// Why no such bat would be made.
        reason: NotMakeable,
    },
    /// The pendulum disagrees with what weight, balance and size let expect.
    PendulumUnlikeSize {
        /// Swings counted.
        counted: u32,
        /// Swing moment from the pendulum, kg m².
        measured_kg_m2: f64,
        /// Swing moment from weight, balance and size, kg m².
        expected_kg_m2: f64,
        /// Distance between the two in standard deviations of their difference.
        deviations: f64,
        /// The miscount that would explain it best, if one brings the two within reach.
        likely: Option<Miscount>,
    },
}

impl std::fmt::Display for Warning {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Unusual(unusual) => unusual.fmt(f),
            Self::LengthUnlikeSize { size, length_m, usual_m } => write!(
                f,
                "{:.0} mm long, but a size {size} is about {:.0} mm: is the size right?",
                1e3 * length_m,
                1e3 * usual_m
            ),
            Self::SizeGuessedFromWeight { size } => {
                write!(
                    f,
                    "neither size nor length given: taken for a size {size} by its weight alone"
                )
            }
            Self::UnlikeItsSize { size, reason } => {
                write!(f, "weight and balance are unlike a size {size}: {reason}")
            }
            Self::PendulumUnlikeSize { counted, deviations, likely, .. } => {
                write!(
                    f,
                    "the pendulum time is {deviations:.1} standard deviations from what weight, balance and size let expect: did you count {}, {} or single passes?",
                    counted.saturating_sub(1),
                    counted.saturating_add(1)
                )?;
                match likely {
                    Some(Miscount::OneFewer) => {
                        write!(f, " {} swings would fit", counted.saturating_sub(1))
                    }
                    Some(Miscount::OneMore) => {
                        write!(f, " {} swings would fit", counted.saturating_add(1))
                    }
                    Some(Miscount::SinglePasses) => write!(f, " Single passes would fit"),
                    None => Ok(()),
                }
            }
        }
    }
}

//! Why there is no calibration.

use super::response::ResponseFault;
use crate::innings::schedule::ScheduleFault;
use crate::measurement::nets::NetFault;
use crate::swing::player_stroke::SwingFault;

/// Fewest readings of the player fresh: with fewer, one bad one cannot be told from a weak player.
pub const FEWEST_FRESH: usize = 3;

/// Why there is no calibration.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum CalibrationFault {
    /// Readings that cannot be, each by its index.
    #[error("{} of the readings cannot be", .0.len())]
    Readings(Vec<(usize, NetFault)>),
    /// Too few to fit.
    #[error("there are {fresh} readings of the player fresh, and {FEWEST_FRESH} are needed")]
    TooFew {
        /// Readings of the player fresh.
        fresh: usize,
    },
    /// A figure no player like this one has.
    #[error(
        "{value:.3} {unit} is {factor:.1} times the {expected:.3} {unit} that the tables expect"
    )]
    NotThisPlayer {
        /// Index of the reading.
        reading: usize,
        /// Which figure: "time" or "speed".
        field: &'static str,
        /// As read.
        value: f64,
        /// As expected.
        expected: f64,
        /// Read over expected.
        factor: f64,
        /// Unit of both.
        unit: &'static str,
    },
    /// All readings together say a strength that people of this grip and stature do not have.
    #[error(
        "these readings together say {factor:.2} times the strength of players with this grip and stature"
    )]
    NobodyIsLikeThis {
        /// Strength over the tables', all parts together.
        factor: f64,
    },
    /// No bat of that number.
    #[error("there is no such bat")]
    NoSuchBat,
    /// No curve.
    #[error(transparent)]
    Response(#[from] ResponseFault),
    /// No swing.
    #[error(transparent)]
    Swing(#[from] SwingFault),
    /// No innings.
    #[error("{field}: {0}", field = .0.field())]
    Schedule(#[from] ScheduleFault),
}

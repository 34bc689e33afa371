//! Why there may be no bat to order.

use super::size_swings::SizeFault;
use crate::bat::BatFault;
use crate::innings::played::InningsFault;
use crate::ounce::swung::OunceFault;
use crate::swing::engine::EngineFault;
use crate::swing::player_stroke::SwingFault;
use crate::worth::ways::SwingsFault;

/// Why there is no fitting.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum FitFault {
    /// No size to choose from.
    #[error("no size is called {names:?}")]
    NoSize {
        /// Names asked for.
        names: Vec<String>,
    },
    /// Nothing can be made within the limits.
    #[error(
        "no bat of size {size} can be made within the weights asked for; widen fit.lightest or fit.heaviest"
    )]
    NothingToMake {
        /// Size.
        size: String,
    },
    /// The reference bat of the size is no bat.
    #[error(transparent)]
    Bat(#[from] BatFault),
    /// A swing failed.
    #[error(transparent)]
    Swing(#[from] SwingFault),
    /// An innings failed.
    #[error(transparent)]
    Innings(#[from] InningsFault),
    /// A size could not be swung.
    #[error(transparent)]
    Size(SizeFault),
    /// The weighed bats could not be swung.
    #[error(transparent)]
    Swings(SwingsFault),
    /// An ounce could not be put on the bat.
    #[error(transparent)]
    Ounce(#[from] OunceFault),
    /// The engine failed.
    #[error(transparent)]
    Engine(#[from] EngineFault),
    /// The caller asked to stop.
    #[error("cancelled")]
    Cancelled,
}

impl From<SizeFault> for FitFault {
    fn from(fault: SizeFault) -> Self {
        match fault {
            SizeFault::Swings(SwingsFault::Cancelled) => Self::Cancelled,
            other => Self::Size(other),
        }
    }
}

impl From<SwingsFault> for FitFault {
    fn from(fault: SwingsFault) -> Self {
        match fault {
            SwingsFault::Cancelled => Self::Cancelled,
            other => Self::Swings(other),
        }
    }
}

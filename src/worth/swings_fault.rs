//! Why the bats of a player could not be swung.

use crate::innings::played::InningsFault;
use crate::swing::player_stroke::SwingFault;

/// Why the bats could not be swung.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SwingsFault {
    /// No bat of all can be controlled by players like this one.
    #[error(
        "no bat of these can be brought to the ball under control by a player of this strength"
    )]
    BeyondControl,
    /// The caller asked to stop.
    #[error("cancelled")]
    Cancelled,
    /// An innings failed.
    #[error(transparent)]
    Innings(#[from] InningsFault),
}

impl From<SwingFault> for SwingsFault {
    fn from(fault: SwingFault) -> Self {
        Self::Innings(fault.into())
    }
}

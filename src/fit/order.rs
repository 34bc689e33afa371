//! What a fit starts from, and why there may be no answer.

use super::surrogate::SurrogateFault;
use crate::bat::BatFault;
use crate::bat::figures::WeighedBat;
use crate::bat::laws::Limits;
use crate::bat::sizes::Size;
use crate::innings::played::InningsFault;
use crate::measurement::plan::{Bowling, FitLimits, InningsPlan};
use crate::player::Player;
use crate::stroke::Stroke;
use crate::swing::engine::EngineFault;
use crate::swing::player_stroke::SwingFault;
use core::ops::ControlFlow;

/// What a fit starts from.
#[derive(Clone, Copy, Debug)]
pub struct Order<'a> {
    /// Player.
    pub player: &'a Player,
    /// Strokes that can be played.
    pub strokes: &'a [Stroke],
    /// The same strokes on joint paths planned another way; may be empty.
    pub strokes_otherwise: &'a [Stroke],
    /// Bats weighed at the bench.
    pub bats: &'a [WeighedBat],
    /// Innings to last.
    pub plan: &'a InningsPlan,
    /// Bowling to face.
    pub bowling: &'a Bowling,
    /// Limits of the search and its rule.
    pub limits: &'a FitLimits,
    /// Sizes of the trade.
    pub sizes: &'a [Size],
    /// Size limits of the Laws.
    pub laws: &'a Limits,
}

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
    /// A surrogate failed.
    #[error(transparent)]
    Surrogate(SurrogateFault),
    /// The engine failed.
    #[error(transparent)]
    Engine(#[from] EngineFault),
    /// The caller asked to stop.
    #[error("cancelled")]
    Cancelled,
}

impl From<SurrogateFault> for FitFault {
    fn from(fault: SurrogateFault) -> Self {
        match fault {
            SurrogateFault::Cancelled => Self::Cancelled,
            other => Self::Surrogate(other),
        }
    }
}

/// Progress: what is being done, and the share of the whole that is done.
pub type Progress<'a> = &'a (dyn Fn(&'static str, f64) -> ControlFlow<()> + Sync);

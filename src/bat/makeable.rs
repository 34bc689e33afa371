//! What can be asked of a size, what comes of it, and why something cannot be made.

use super::Bat;
use super::shape::BatShape;

/// What a bat shall weigh and where it shall balance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wanted {
    /// Dead weight, kg.
    pub mass_kg: f64,
    /// Balance point from the top of the handle, m.
    pub balance_m: f64,
    /// Height of the swell over the toe, m; `None` lets it move with the balance.
    pub swell_from_toe_m: Option<f64>,
}

/// A bat that can be made.
#[derive(Clone, Debug, PartialEq)]
pub struct MadeBat {
    /// Its mass properties.
    pub bat: Bat,
    /// Its shape.
    pub shape: BatShape,
    /// Lowest and highest swing moment that can be made at this weight and balance, kg m².
    pub swing_moment_range_kg_m2: [f64; 2],
}

/// Why a bat of this size cannot be made, or may not be used.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum NotMakeable {
    /// No willow so light or so heavy.
    #[error(
        "it would need willow of {needed_kg_m3:.0} kg/m³; makers find {low_kg_m3} to {high_kg_m3}"
    )]
    Density {
        /// Density needed, kg/m³.
        needed_kg_m3: f64,
        /// Lightest, kg/m³.
        low_kg_m3: f64,
        /// Heaviest, kg/m³.
        high_kg_m3: f64,
    },
    /// The balance asks for more taper than is made.
    #[error(
        "the balance point is out of reach: the blade would taper by {taper:.2}, makers go to {greatest}"
    )]
    Balance {
        /// Taper needed, as a share of the thickness at the toe; above 0 thicker there.
        taper: f64,
        /// Greatest taper made.
        greatest: f64,
    },
    /// The swell cannot sit there.
    #[error("the swell would move by {moved:.2} of the blade, makers go to {greatest}")]
    Swell {
        /// Move needed, as a share of the blade.
        moved: f64,
        /// Greatest move made.
        greatest: f64,
    },
    /// Deeper than the Laws allow.
    #[error("it would be {depth_m:.4} m deep; the Laws allow {limit_m} m")]
    TooDeep {
        /// Depth needed, m.
        depth_m: f64,
        /// Limit, m.
        limit_m: f64,
    },
    /// Edges thicker than the Laws allow.
    #[error("its edges would be {edge_m:.4} m thick; the Laws allow {limit_m} m")]
    EdgesTooThick {
        /// Edge thickness needed, m.
        edge_m: f64,
        /// Limit, m.
        limit_m: f64,
    },
    /// Edges that would not last.
    #[error("its edges would be {edge_m:.4} m thin; below {limit_m} m they do not last")]
    EdgesTooThin {
        /// Edge thickness needed, m.
        edge_m: f64,
        /// Thinnest that lasts, m.
        limit_m: f64,
    },
    /// No blade of any shape gets there.
    #[error(
        "no blade of this size weighs {mass_kg} kg with its balance point {balance_m} m from the top of the handle"
    )]
    OutOfReach {
        /// Dead weight asked, kg.
        mass_kg: f64,
        /// Balance point asked, m.
        balance_m: f64,
    },
}

pub(crate) fn out_of_reach(wanted: &Wanted) -> NotMakeable {
    NotMakeable::OutOfReach { mass_kg: wanted.mass_kg, balance_m: wanted.balance_m }
}

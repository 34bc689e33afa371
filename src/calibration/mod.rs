//! From readings in the nets to this player's own strength and lasting fatigue.
//!
//! The tables say how strong players of this grip and stature are, and how far they differ. Each
//! strength that the tables allow is weighed by how likely the readings are from such a player
//! ([`posterior`]); what a swing is at each strength comes from full simulations ([`response`]). What
//! stands between the model's fastest controlled swing and a figure read, and is no strength, stands in
//! [`errors`]. What is found is the strength with which *the model* swings as the player does: timing is in it. Other
//! commands take it through `Player::calibrated`, its doubt through `Player::weaker_by_nets`, the band of lasting
//! fatigue through `Schedule::lasting`. Elbows go with shoulders: no stroke sees them alone.

mod calibrate;
pub mod errors;
mod fault;
mod figures;
pub mod limit;
pub mod points;
pub mod posterior;
pub mod radial;
pub mod response;
mod simulated;
pub mod tiredness;

pub use calibrate::{Calibrated, PartMoved, calibrate, refuse_readings};
pub use fault::{CalibrationFault, FEWEST_FRESH};
pub use figures::{Surer, pull_at};
pub use simulated::{Order, Progress, Simulated};

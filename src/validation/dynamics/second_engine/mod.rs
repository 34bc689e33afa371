//! The same player, bat and law on the rigid-body engine rapier, with the bat as a free body between the
//! hands, and on our own dynamics; and the engine's own keeping of what must be kept.

pub(super) mod keeps;
pub(super) mod loads;
pub(super) mod strokes;

const SOURCE: &str = "rapier3d-f64 0.36.1, first order, extrapolated from two steps";

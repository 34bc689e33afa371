//! What an ounce costs, where: the bat speed that a small mass takes from a stroke, by its station along
//! the bat.
//!
//! Neither dead weight nor swing moment alone says how a bat swings: where the ounce sits decides. The
//! whole body turns with the bat, so that the stroke behaves as if the bat were swung about an
//! effective axis beyond the top of the handle.

pub mod axis;
pub mod cost;
pub mod moments;
pub mod swung;

//! Calibration from the nets, on players whose truth is known.

mod demo;
mod players;
mod recovery;
mod refused;
mod tired;
mod truth;

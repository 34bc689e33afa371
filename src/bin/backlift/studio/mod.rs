//! The window: two bats, one player, swung together.
//!
//! State is one plain struct changed by named actions; panels are plain functions on egui; what bevy does
//! only mirrors the state into the scene, and input into actions. No physics here: it asks the core.

pub mod film;
pub mod look;
pub mod playback;
pub mod window;

//! The window: two bats, one player, swung together.
//!
//! State is one plain struct changed by named actions; panels are plain functions on egui; what bevy does
//! only mirrors the state into the scene, and input into actions. No physics here: it asks the core.

pub mod action;
mod apply;
mod bench;
mod card;
pub mod derived;
pub mod document;
mod figures;
pub mod film;
mod ground;
pub mod innings;
pub mod live;
pub mod look;
mod pair;
pub mod panels;
pub mod playback;
pub mod recovery;
pub mod results;
pub mod state;
pub mod style;
pub mod tap;
#[cfg(test)]
mod tests;
mod undo;
pub mod window;
pub mod work;

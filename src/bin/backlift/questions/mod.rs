//! What more than one command asks, and the window: each a function from a loaded scenario to an answer.

pub mod advice;
pub mod card_file;
pub mod delivered;
pub mod fitted;
pub mod swung;

//! What command line and window say in the same words.

pub mod advice;
pub mod pair;
pub mod planing;
pub mod returned;
pub mod wish;

//! TODO-skeleton
pub mod assets;

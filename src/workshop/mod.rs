//! The maker's bench: from the card to the wood.

pub mod pressing;
pub mod season;
pub mod stages;

//! The maker's bench: from the card to the wood.

pub mod carved;
pub mod middles;
pub mod to_card;

//! The maker's bench: from the card to the wood.

pub mod carved;
pub mod cautions;
pub mod combined;
pub mod grab;
pub mod history;
pub mod lateral;
pub mod middles;
pub mod orders;
pub mod pickup_moments;
pub mod pickup_pair;
pub mod plane;
pub mod pressing;
pub mod reads;
pub mod season;
pub mod stages;
pub mod to_card;

//! Several cards at once: what willow each asks for, and which cleft of the rack suits which.

pub mod assignment;
pub mod rack;
pub mod suits;
pub mod willow;

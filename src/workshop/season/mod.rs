//! How a bat drifts between the workshop's air and that of the place where it will live.
//!
//! Wood takes water from the air and gives it back; dry wood stays. So willow weighs `(1 + M)` times what
//! it weighs dry, M by [`crate::bat::moisture`], and cane nearly so; twine, rubber, labels and guard keep
//! their weight. Everything follows from the shape's own integration with the densities changed.

pub mod air;
pub mod drift;
pub mod swelling;
pub mod uptake;
pub mod wetted;
pub mod year;

pub use air::{Air, AirFault};
pub use drift::{Seasoned, State, season};

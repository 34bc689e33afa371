//! Where a part stands.

use backlift::frames::{DMat3, DVec3};

/// A part's frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Origin, m, W.
    pub position_W: DVec3,
    /// Axes, as columns in W.
    pub R: DMat3,
    /// Drawn so many times as long.
    pub stretch: f64,
}

impl Place {
    /// In its own length.
    pub fn new(position_W: DVec3, R: DMat3) -> Self {
        Self { position_W, R, stretch: 1.0 }
    }

    /// A point of the part, in W.
    pub fn point(&self, local: DVec3) -> DVec3 {
        self.position_W + self.R * local
    }
}

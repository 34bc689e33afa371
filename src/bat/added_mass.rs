//! A bat with a small mass stuck on, or taken off: a new mass, centre of mass and tensor of inertia.

use super::{Bat, BatFault};
use crate::frames::{DMat3, DVec3};

impl Bat {
    /// The bat with a point mass on its long axis (the line along x through the top of the handle),
    /// `from_top_m` from the top of the handle; a negative mass is taken off. Length and label stay.
    ///
    /// Two bodies about their common centre of mass: with `d` from the bat's centre of mass to the
    /// point, `I = I_Com + m μ/(m + μ) (|d|² 1 − d dᵀ)`, exact.
    ///
    /// # Errors
    /// If what is left is no rigid body.
    pub fn with_added_mass(&self, added_kg: f64, from_top_m: f64) -> Result<Self, BatFault> {
        let mass_kg = self.mass_kg + added_kg;
        if !(mass_kg.is_finite() && mass_kg > 0.0) {
            return Err(BatFault::Mass { mass_kg });
        }
        let d = DVec3::new(from_top_m, 0.0, 0.0) - self.com_B;
        let outer = DMat3::from_cols(d * d.x, d * d.y, d * d.z);
        let about = DMat3::from_diagonal(DVec3::splat(d.length_squared())) - outer;
        Self::new(
            self.label.clone(),
            self.length_m,
            mass_kg,
            self.com_B + d * (added_kg / mass_kg),
            self.I_Com_B + about * (self.mass_kg * added_kg / mass_kg),
        )
    }
}

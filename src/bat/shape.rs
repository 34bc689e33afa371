//! A whole bat described by its shape: handle and blade together.

use super::blade::Blade;
use super::handle::Handle;
use super::lofted_solid::MassMoments;
use super::{Bat, BatFault};

/// A bat as a shape in wood, cane and rubber; everything about its mass follows.
#[derive(Clone, Debug, PartialEq)]
pub struct BatShape {
    /// Handle, with grips and splice.
    pub handle: Handle,
    /// Blade, with what is glued to it.
    pub blade: Blade,
}

impl BatShape {
    /// Overall length, m: of cane and wood, without the toe guard under them.
    pub fn length_m(&self) -> f64 {
        self.handle.length_m + self.blade.length_m
    }

    /// Volume of the willow, m³: the blade without the splice in it.
    pub fn willow_m3(&self) -> f64 {
        let cane = Handle { density_kg_m3: 1.0, ..self.handle };
        let mut splice = MassMoments::default();
        cane.add_splice(&mut splice, 0.0);
        self.blade.volume_m3() - splice.mass_kg
    }

    /// Mass and moments about the top of the handle, exact for this shape.
    pub fn mass_moments(&self) -> MassMoments {
        let mut moments = MassMoments::default();
        self.handle.add_to(&mut moments, self.blade.density_kg_m3);
        self.blade.add_to(&mut moments, self.handle.length_m);
        moments
    }

    /// The bat with this shape.
    pub fn bat(&self, label: impl Into<String>) -> Result<Bat, BatFault> {
        let moments = self.mass_moments();
        Bat::new(label, self.length_m(), moments.mass_kg, moments.com_B(), moments.I_Com_B())
    }

    /// The same shape drawn out or shortened to another overall length; widths and depths stay.
    pub fn with_length_m(&self, length_m: f64) -> Self {
        let ratio = length_m / self.length_m();
        let mut shape = self.clone();
        shape.handle.length_m *= ratio;
        shape.handle.grip_length_m *= ratio;
        shape.handle.splice_m *= ratio;
        shape.blade.length_m *= ratio;
        shape
    }

    /// The same shape with a handle of this diameter over the grip at the bottom hand; as it is where grips and
    /// twine alone are as thick.
    pub fn with_handle_over_grip_m(&self, diameter_m: f64) -> Self {
        let mut shape = self.clone();
        match shape.handle.fit_over_grip_m(diameter_m) {
            Ok(()) => shape,
            Err(_) => self.clone(),
        }
    }

    /// The same shape with the blade made wider or narrower.
    pub fn with_width_m(&self, width_m: f64) -> Self {
        let mut shape = self.clone();
        shape.blade.widen(width_m);
        shape
    }

    /// Height of the deepest station over the toe, m.
    pub fn swell_from_toe_m(&self) -> f64 {
        self.blade.deepest().map_or(0.0, |it| self.blade.from_toe_m(it))
    }
}

//! The handle: cane with rubber strips, twine, grips, and the splice that runs into the blade.

use super::lofted_solid::{MassMoments, Section};
use super::shape_fault::ShapeFault;

/// Shape of the handle's section.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HandleShape {
    /// Round all the way.
    Round,
    /// Oval all the way.
    Oval,
    /// Oval for the top hand, round for the bottom hand.
    SemiOval,
}

/// Diameter through over that across of an oval handle: assumption, the reference bats' own.
const OVAL: f64 = 0.93;

impl HandleShape {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Round, Self::Oval, Self::SemiOval];

    /// Diameter through (along z) as a share of that across, at the top and at the shoulder: [`Handle::oval`].
    pub fn oval(self) -> [f64; 2] {
        match self {
            Self::Round => [1.0, 1.0],
            Self::Oval => [OVAL, OVAL],
            Self::SemiOval => [OVAL, 1.0],
        }
    }

    /// In a word.
    pub fn words(self) -> &'static str {
        match self {
            Self::Round => "round",
            Self::Oval => "oval",
            Self::SemiOval => "semi-oval",
        }
    }
}

/// A handle as its maker describes it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Handle {
    /// From the top of the handle to the shoulder, m.
    pub length_m: f64,
    /// Bare diameter across (along y) at the top, m.
    pub top_diameter_m: f64,
    /// Bare diameter across (along y) at the shoulder, m.
    pub shoulder_diameter_m: f64,
    /// Diameter through (along z) as a share of that across, at the top and at the shoulder: 1 is round,
    /// above 1 oval.
    pub oval: [f64; 2],
    /// Density of cane and rubber strips together, kg/m³.
    pub density_kg_m3: f64,
    /// Length of the splice inside the blade, m.
    pub splice_m: f64,
    /// Thickness of the twine, m. It covers the whole handle.
    pub twine_m: f64,
    /// Density of the twine with its glue, kg/m³.
    pub twine_kg_m3: f64,
    /// Number of rubber grips, one over the other.
    pub grips: u32,
    /// Thickness of one grip, m.
    pub grip_m: f64,
    /// Length of the grips from the top of the handle, m.
    pub grip_length_m: f64,
    /// Density of the grips, kg/m³.
    pub grip_kg_m3: f64,
}

impl Handle {
    /// Cane and rubber alone: no splice, twine or grip. Diameters across at top and shoulder, m.
    pub fn bare(
        length_m: f64,
        [top_diameter_m, shoulder_diameter_m]: [f64; 2],
        oval: [f64; 2],
        density_kg_m3: f64,
    ) -> Self {
        Self {
            length_m,
            top_diameter_m,
            shoulder_diameter_m,
            oval,
            density_kg_m3,
            splice_m: 0.0,
            twine_m: 0.0,
            twine_kg_m3: 0.0,
            grips: 0,
            grip_m: 0.0,
            grip_length_m: 0.0,
            grip_kg_m3: 0.0,
        }
    }

    /// Bare half-diameter across, m, at a station of the handle.
    pub fn half_y_m(&self, from_top_m: f64) -> f64 {
        let t = from_top_m / self.length_m;
        0.5 * (self.top_diameter_m + (self.shoulder_diameter_m - self.top_diameter_m) * t)
    }

    /// Bare half-diameter through, m, at a station of the handle.
    pub fn half_z_m(&self, from_top_m: f64) -> f64 {
        let [top_m, shoulder_m] =
            [self.oval[0] * self.top_diameter_m, self.oval[1] * self.shoulder_diameter_m];
        0.5 * (top_m + (shoulder_m - top_m) * from_top_m / self.length_m)
    }

    /// Where the bottom hand holds, m from the top: there a card's handle diameter is read (assumption).
    pub fn bottom_hand_m(&self) -> f64 {
        0.7 * self.length_m
    }

    /// Thickness over the cane, m: twine and grips.
    pub fn cover_m(&self) -> f64 {
        self.twine_m + f64::from(self.grips) * self.grip_m
    }

    /// How much thicker the handle gets across by what goes on it, m: with or without twine, from so many grips.
    pub fn still_to_cover_m(&self, bound: bool, grips: u32) -> f64 {
        let twine_m = if bound { 0.0 } else { self.twine_m };
        2.0 * (twine_m + (f64::from(self.grips) - f64::from(grips)) * self.grip_m)
    }

    /// Diameter over the grip across (along y) at a station of the handle, m.
    pub fn diameter_over_grip_m(&self, from_top_m: f64) -> f64 {
        2.0 * (self.half_y_m(from_top_m) + self.cover_m())
    }

    /// Makes the cane thicker or thinner all along until the handle has this diameter over the grip, across, at
    /// the bottom hand.
    ///
    /// # Errors
    /// If twine and grips alone are as thick.
    pub fn fit_over_grip_m(&mut self, diameter_m: f64) -> Result<(), ShapeFault> {
        let cover_m = 2.0 * self.cover_m();
        let ratio = (diameter_m - cover_m) / (2.0 * self.half_y_m(self.bottom_hand_m()));
        if !(ratio > 0.0 && ratio.is_finite()) {
            return Err(ShapeFault::NoCane { diameter_m, cover_m });
        }
        self.top_diameter_m *= ratio;
        self.shoulder_diameter_m *= ratio;
        Ok(())
    }

    /// Share of the handle that is rubber where it is glued up of so many pieces of cane with a rubber strip, so
    /// thick (m), between each two. The strips lie even, across the blow, right through the section; all along
    /// they take what they take half way. Common practice, no source.
    ///
    /// # Errors
    /// If they leave no cane.
    pub fn rubber_share(&self, pieces: u32, strip_m: f64) -> Result<f64, ShapeFault> {
        let (strips, half_z_m) = (pieces.saturating_sub(1), self.half_z_m(0.5 * self.length_m));
        let handle_m = 2.0 * half_z_m;
        if f64::from(strips) * strip_m >= handle_m {
            let nearest_m = handle_m / f64::from(strips);
            return Err(ShapeFault::Strips { strips, strip_m, handle_m, nearest_m });
        }
        // Area of a disc of radius 1 below a line at height z, of all of it.
        let below = |z: f64| {
            let z = z.clamp(-1.0, 1.0);
            0.5 + (z * libm::sqrt(1.0 - z * z) + libm::asin(z)) / std::f64::consts::PI
        };
        let half = 0.5 * strip_m / half_z_m;
        let middles = (1..=strips).map(|k| 2.0 * f64::from(k) / f64::from(pieces) - 1.0);
        Ok(middles.map(|z| below(z + half) - below(z - half)).sum())
    }

    /// Half-axes of the bare section across and through, m, at a station of the handle.
    pub fn half_axes_m(&self, from_top_m: f64) -> [f64; 2] {
        [self.half_y_m(from_top_m), self.half_z_m(from_top_m)]
    }

    /// Half-widths across and through of the splice, m, at the share `t` of the way to its end.
    pub fn splice_half_m(&self, t: f64) -> [f64; 2] {
        let [half_y_m, half_z_m] = self.half_axes_m(self.length_m);
        [half_y_m * (1.0 - t), half_z_m]
    }

    /// Adds the handle down to the shoulder, and the splice.
    pub fn add_to(&self, moments: &mut MassMoments, willow_kg_m3: f64) {
        self.add_down_to_shoulder(moments);
        self.add_splice(moments, willow_kg_m3);
    }

    /// Adds the handle down to the shoulder: cane, twine and grips.
    pub fn add_down_to_shoulder(&self, moments: &mut MassMoments) {
        let ring = |density: f64, x_m: f64, inner_m: f64, outer_m: f64| {
            let [half_y_m, half_z_m] = self.half_axes_m(x_m);
            Section::ellipse(density, half_y_m + outer_m, half_z_m + outer_m)
                .without(Section::ellipse(density, half_y_m + inner_m, half_z_m + inner_m))
        };
        let shoulder_m = self.length_m;
        moments.add_between(0.0, shoulder_m, |t| {
            let x_m = t * shoulder_m;
            Section::ellipse(self.density_kg_m3, self.half_y_m(x_m), self.half_z_m(x_m))
        });
        moments.add_between(0.0, shoulder_m, |t| {
            ring(self.twine_kg_m3, t * shoulder_m, 0.0, self.twine_m)
        });
        moments.add_between(0.0, self.grip_length_m, |t| {
            ring(self.grip_kg_m3, t * self.grip_length_m, self.twine_m, self.cover_m())
        });
    }

    /// Adds the splice: what it weighs more than the willow (`willow_kg_m3`) whose place it takes. It is a
    /// wedge: full width at the shoulder, a line at its end.
    pub fn add_splice(&self, moments: &mut MassMoments, willow_kg_m3: f64) {
        let shoulder_m = self.length_m;
        moments.add_between(shoulder_m, shoulder_m + self.splice_m, |t| {
            let [half_y_m, half_z_m] = self.splice_half_m(t);
            Section::ellipse(self.density_kg_m3 - willow_kg_m3, half_y_m, half_z_m)
        });
    }
}

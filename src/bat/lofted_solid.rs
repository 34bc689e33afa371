//! Exact mass properties of a solid given by its cross-sections along the bat.
//!
//! Every solid of this stage is symmetric in y of B, and its section's moments are polynomials of
//! degree seven or less along an interval between stations: four Gauss points are exact for them.

use super::parallel_axis::{swing_moment_kg_m2, tensor_about_point};
use crate::frames::{DMat3, DVec3};

/// Nodes of four-point Gauss–Legendre quadrature on [0, 1], with their weights. Exact to degree 7.
/// Source: Abramowitz & Stegun 1964, table 25.4 (from memory, high; a test proves the degree).
pub const GAUSS_4: [(f64, f64); 4] = [
    (0.069_431_844_202_973_71, 0.173_927_422_568_726_93),
    (0.330_009_478_207_571_87, 0.326_072_577_431_273_07),
    (0.669_990_521_792_428_1, 0.326_072_577_431_273_07),
    (0.930_568_155_797_026_3, 0.173_927_422_568_726_93),
];

/// Mass and its moments in one cross-section, for each metre along the bat, about the x axis of B.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Section {
    /// Mass, kg/m.
    pub mass: f64,
    /// First moment with z, kg.
    pub z: f64,
    /// Second moment with y, kg m.
    pub yy: f64,
    /// Second moment with z, kg m.
    pub zz: f64,
}

impl Section {
    /// An ellipse about the axis of the handle with half-axes across (`half_y_m`) and through
    /// (`half_z_m`); `density` in kg/m³.
    pub fn ellipse(density: f64, half_y_m: f64, half_z_m: f64) -> Self {
        let mass = density * std::f64::consts::PI * half_y_m * half_z_m;
        Self {
            mass,
            z: 0.0,
            yy: 0.25 * mass * half_y_m * half_y_m,
            zz: 0.25 * mass * half_z_m * half_z_m,
        }
    }

    /// What lies in this section and not in the one inside it.
    pub fn without(self, inner: Self) -> Self {
        Self {
            mass: self.mass - inner.mass,
            z: self.z - inner.z,
            yy: self.yy - inner.yy,
            zz: self.zz - inner.zz,
        }
    }
}

/// Mass with its first and second moments about the top of the handle, in B; adds up part by part.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct MassMoments {
    /// Mass, kg.
    pub mass_kg: f64,
    x: f64,
    z: f64,
    xx: f64,
    yy: f64,
    zz: f64,
    xz: f64,
}

impl MassMoments {
    /// Adds the solid between two stations; `section` gives the cross-section at the share t of the
    /// way from `from_m` to `to_m`.
    pub fn add_between(&mut self, from_m: f64, to_m: f64, section: impl Fn(f64) -> Section) {
        let length_m = to_m - from_m;
        for (t, weight) in GAUSS_4 {
            let x = from_m + t * length_m;
            let s = section(t);
            let w = weight * length_m;
            self.mass_kg += w * s.mass;
            self.x += w * s.mass * x;
            self.z += w * s.z;
            self.xx += w * s.mass * x * x;
            self.yy += w * s.yy;
            self.zz += w * s.zz;
            self.xz += w * s.z * x;
        }
    }

    /// Centre of mass, m.
    pub fn com_B(&self) -> DVec3 {
        DVec3::new(self.x / self.mass_kg, 0.0, self.z / self.mass_kg)
    }

    /// Swing moment, kg m².
    pub fn swing_moment_kg_m2(&self) -> f64 {
        swing_moment_kg_m2(self.mass_kg, self.com_B(), &self.I_Com_B())
    }

    /// Tensor of inertia about the top of the handle, kg m².
    pub fn I_Top_B(&self) -> DMat3 {
        DMat3::from_cols(
            DVec3::new(self.yy + self.zz, 0.0, -self.xz),
            DVec3::new(0.0, self.xx + self.zz, 0.0),
            DVec3::new(-self.xz, 0.0, self.xx + self.yy),
        )
    }

    /// Tensor of inertia about the centre of mass, kg m².
    pub fn I_Com_B(&self) -> DMat3 {
        tensor_about_point(self.I_Top_B(), -self.mass_kg, self.com_B())
    }
}

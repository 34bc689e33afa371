//! A part of a bat, as a lump that can be put on and taken off: mass and its moments along the bat.

use std::ops::{Add, Sub};

use crate::bat::lofted_solid::MassMoments;
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;

/// Mass, first moment about the top of the handle, and second about the pickup axis.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Lump {
    /// Mass, kg.
    pub mass_kg: f64,
    /// Mass times distance from the top of the handle, kg m.
    pub first_kg_m: f64,
    /// Swing moment of it alone, kg m².
    pub swing_kg_m2: f64,
}

impl Lump {
    /// The lump with these moments.
    pub fn of(moments: &MassMoments) -> Self {
        let mass_kg = moments.mass_kg;
        let (first_kg_m, top_kg_m2) = (mass_kg * moments.com_B().x, moments.I_Top_B().y_axis.y);
        let a = PICKUP_AXIS_FROM_TOP_M;
        let swing_kg_m2 = top_kg_m2 - 2.0 * a * first_kg_m + a * a * mass_kg;
        Self { mass_kg, first_kg_m, swing_kg_m2 }
    }

    /// Its balance point, m from the top of the handle.
    pub fn balance_m(self) -> f64 {
        self.first_kg_m / self.mass_kg
    }

    /// As much of it, where it is.
    pub fn times(self, factor: f64) -> Self {
        Self {
            mass_kg: factor * self.mass_kg,
            first_kg_m: factor * self.first_kg_m,
            swing_kg_m2: factor * self.swing_kg_m2,
        }
    }
}

impl Add for Lump {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            mass_kg: self.mass_kg + other.mass_kg,
            first_kg_m: self.first_kg_m + other.first_kg_m,
            swing_kg_m2: self.swing_kg_m2 + other.swing_kg_m2,
        }
    }
}

impl Sub for Lump {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self + other.times(-1.0)
    }
}

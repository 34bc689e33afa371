//! Mass, first and second moment about the top of the handle: what a mass on the long axis adds to.

use core::ops::Sub;

use crate::bat::Bat;
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;

/// Moments about the top of the handle.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct TopMoments {
    /// Mass, kg.
    pub mass_kg: f64,
    /// First moment `Σ m x`, kg m.
    pub first_kg_m: f64,
    /// Second moment `Σ m x²`, kg m².
    pub second_kg_m2: f64,
}

impl TopMoments {
    /// Of a bat with this weight, balance point and swing moment: with a the pickup axis,
    /// `Σ m x² = I_a + 2 a m b − a² m`.
    ///
    /// What the bat's depth adds to the swing moment is taken as part of it: two bats of one depth have the
    /// same difference.
    pub fn of(mass_kg: f64, balance_m: f64, swing_moment_kg_m2: f64) -> Self {
        let a = PICKUP_AXIS_FROM_TOP_M;
        let first_kg_m = mass_kg * balance_m;
        let second_kg_m2 = swing_moment_kg_m2 + 2.0 * a * first_kg_m - a * a * mass_kg;
        Self { mass_kg, first_kg_m, second_kg_m2 }
    }

    /// Of a bat.
    pub fn of_bat(bat: &Bat) -> Self {
        Self::of(bat.mass_kg(), bat.balance_m(), bat.swing_moment_kg_m2())
    }
}

impl Sub for TopMoments {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        Self {
            mass_kg: self.mass_kg - other.mass_kg,
            first_kg_m: self.first_kg_m - other.first_kg_m,
            second_kg_m2: self.second_kg_m2 - other.second_kg_m2,
        }
    }
}

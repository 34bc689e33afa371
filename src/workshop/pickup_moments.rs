//! Mass, first and second moment about the pickup axis: what adds up when wood comes off or a grip goes on.

use core::ops::{Add, Mul, Sub};

use crate::bat::pendulum::usual_swings_s;
use crate::bat::shape::BatShape;
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;

/// Moments about the pickup axis, 0.1524 m from the top of the handle.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct PickupMoments {
    /// Mass, kg.
    pub mass_kg: f64,
    /// First moment, kg m: positive towards the toe.
    pub first_kg_m: f64,
    /// Second moment, kg m²: the swing moment.
    pub second_kg_m2: f64,
}

impl PickupMoments {
    /// Of a bat with this weight, balance point and swing moment.
    pub fn of(mass_kg: f64, balance_m: f64, swing_moment_kg_m2: f64) -> Self {
        let first_kg_m = mass_kg * (balance_m - PICKUP_AXIS_FROM_TOP_M);
        Self { mass_kg, first_kg_m, second_kg_m2: swing_moment_kg_m2 }
    }

    /// Of a shape.
    pub fn of_shape(shape: &BatShape) -> Self {
        let moments = shape.mass_moments();
        Self::of(moments.mass_kg, moments.com_B().x, moments.swing_moment_kg_m2())
    }

    /// Balance point from the top of the handle, m.
    pub fn balance_m(&self) -> f64 {
        PICKUP_AXIS_FROM_TOP_M + self.first_kg_m / self.mass_kg
    }

    /// Centre of percussion for the pickup axis, from the top of the handle, m.
    pub fn percussion_m(&self) -> f64 {
        PICKUP_AXIS_FROM_TOP_M + self.second_kg_m2 / self.first_kg_m
    }

    /// Time of ten swings about the pickup axis at the usual amplitude, s: what the watch reads; none where the
    /// bat does not hang from there.
    pub fn ten_swings_s(&self) -> Option<f64> {
        self.swings_s(10)
    }

    /// The same of so many swings.
    pub fn swings_s(&self, swings: u32) -> Option<f64> {
        usual_swings_s(self.mass_kg, self.balance_m(), self.second_kg_m2, swings)
    }

    /// As three numbers: kg, kg m, kg m².
    pub fn array(&self) -> [f64; 3] {
        [self.mass_kg, self.first_kg_m, self.second_kg_m2]
    }
}

impl Add for PickupMoments {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            mass_kg: self.mass_kg + other.mass_kg,
            first_kg_m: self.first_kg_m + other.first_kg_m,
            second_kg_m2: self.second_kg_m2 + other.second_kg_m2,
        }
    }
}

impl Sub for PickupMoments {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self + other * -1.0
    }
}

impl Mul<f64> for PickupMoments {
    type Output = Self;
    fn mul(self, by: f64) -> Self {
        Self {
            mass_kg: self.mass_kg * by,
            first_kg_m: self.first_kg_m * by,
            second_kg_m2: self.second_kg_m2 * by,
        }
    }
}

//! The bat: mass, centre of mass and full tensor of inertia, valid by construction.

pub mod beam;
pub mod blade;
pub mod bow;
mod built;
mod carve;
pub mod completed;
pub mod described;
pub mod expected;
pub mod family;
pub mod figures;
pub mod gauge;
pub mod handle;
pub mod laws;
pub mod lofted_solid;
pub mod makeable;
pub mod measured;
pub mod mesh;
pub mod missing;
pub mod moisture;
pub mod notes;
pub mod parallel_axis;
pub mod pendulum;
pub mod pickup_weight;
mod possible;
mod redescribed;
pub mod shape;
pub mod shape_fault;
pub mod shaped;
pub mod sizes;
pub mod sound;
pub mod stiffness;
pub mod weigh_fault;
pub mod willow;

use crate::frames::{DMat3, DVec3, STANDARD_GRAVITY_M_S2};
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;

/// One rigid bat. Frame B: origin at the top of the handle, x to the toe, z out of the face.
#[derive(Clone, Debug, PartialEq)]
pub struct Bat {
    label: String,
    length_m: f64,
    mass_kg: f64,
    com_B: DVec3,
    I_Com_B: DMat3,
    handle_diameter_m: Option<f64>,
}

/// Why a set of figures cannot be a bat.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum BatFault {
    /// Mass not a positive finite number.
    #[error("the mass {mass_kg} kg is not a positive number")]
    Mass {
        /// The offending mass.
        mass_kg: f64,
    },
    /// Centre of mass off the bat.
    #[error(
        "balance point {balance_m} m lies off the bat: it is {length_m} m long, measured from the top of the handle"
    )]
    BalanceOffTheBat {
        /// The offending balance point, from the top of the handle.
        balance_m: f64,
        /// Overall length.
        length_m: f64,
    },
    /// A tensor that no body can have.
    #[error(
        "moments of inertia {moments_kg_m2:?} kg m² about the centre of mass cannot belong to a rigid body: each must be positive and no larger than the sum of the other two"
    )]
    Inertia {
        /// Diagonal of the tensor.
        moments_kg_m2: [f64; 3],
    },
}

impl Bat {
    /// A bat from its mass properties; `com_B` from the top of the handle, `I_Com_B` about the centre
    /// of mass in the axes of B.
    pub fn new(
        label: impl Into<String>,
        length_m: f64,
        mass_kg: f64,
        com_B: DVec3,
        I_Com_B: DMat3,
    ) -> Result<Self, BatFault> {
        if !(mass_kg.is_finite() && mass_kg > 0.0) {
            return Err(BatFault::Mass { mass_kg });
        }
        if !(com_B.x > 0.0 && com_B.x < length_m) {
            return Err(BatFault::BalanceOffTheBat { balance_m: com_B.x, length_m });
        }
        let m = [I_Com_B.x_axis.x, I_Com_B.y_axis.y, I_Com_B.z_axis.z];
        let sum: f64 = m.iter().sum();
        if !m.iter().all(|&i| i.is_finite() && i > 0.0 && i <= 0.5 * sum * (1.0 + 1e-9)) {
            return Err(BatFault::Inertia { moments_kg_m2: m });
        }
        let label = label.into();
        Ok(Self { label, length_m, mass_kg, com_B, I_Com_B, handle_diameter_m: None })
    }

    /// The same bat with a handle that was measured, m over the grip at the bottom hand; none if it was not.
    pub fn with_handle_diameter_m(self, handle_diameter_m: Option<f64>) -> Self {
        Self { handle_diameter_m, ..self }
    }

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
        let d = DVec3::new(from_top_m, 0.0, 0.0) - self.com_B;
        let reduced_kg = self.mass_kg * added_kg / mass_kg;
        Self::new(
            self.label.clone(),
            self.length_m,
            mass_kg,
            self.com_B + d * (added_kg / mass_kg),
            parallel_axis::tensor_about_point(self.I_Com_B, reduced_kg, d),
        )
    }

    /// Name by which the user calls it.
    pub fn label(&self) -> &str {
        &self.label
    }
    /// The same bat under another name.
    pub fn called(self, label: &str) -> Self {
        Self { label: label.to_owned(), ..self }
    }
    /// Overall length, m.
    pub fn length_m(&self) -> f64 {
        self.length_m
    }
    /// Dead weight, kg.
    pub fn mass_kg(&self) -> f64 {
        self.mass_kg
    }
    /// Handle over the grip at the bottom hand, m, where it was measured.
    pub fn handle_diameter_m(&self) -> Option<f64> {
        self.handle_diameter_m
    }
    /// Centre of mass from the top of the handle, in B, m.
    pub fn com_B(&self) -> DVec3 {
        self.com_B
    }
    /// Tensor of inertia about the centre of mass, in B, kg m².
    pub fn I_Com_B(&self) -> DMat3 {
        self.I_Com_B
    }
    /// Balance point, m from the top of the handle.
    pub fn balance_m(&self) -> f64 {
        self.com_B.x
    }
    /// Swing moment: moment of inertia about the transverse axis (along y of B) through the pickup
    /// axis, 0.1524 m from the top of the handle, kg m².
    pub fn swing_moment_kg_m2(&self) -> f64 {
        parallel_axis::swing_moment_kg_m2(self.mass_kg, self.com_B, &self.I_Com_B)
    }
    /// Hold moment: static moment about the pickup axis with the bat level, N m.
    pub fn hold_moment_n_m(&self) -> f64 {
        self.mass_kg * STANDARD_GRAVITY_M_S2 * (self.com_B.x - PICKUP_AXIS_FROM_TOP_M)
    }
    /// Twist moment: moment of inertia about the long axis through the centre of mass, kg m².
    pub fn twist_moment_kg_m2(&self) -> f64 {
        self.I_Com_B.x_axis.x
    }
    /// Centre of percussion for the pickup axis, m from the top of the handle: `0.1524 + I/(m d)`.
    pub fn percussion_m(&self) -> f64 {
        let d = self.com_B.x - PICKUP_AXIS_FROM_TOP_M;
        PICKUP_AXIS_FROM_TOP_M + self.swing_moment_kg_m2() / (self.mass_kg * d)
    }
}

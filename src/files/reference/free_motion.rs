//! A bat that spins freely, and one that hangs from the bench pivot.

use serde::Deserialize;

use super::chain::{Chain, Triple};
use crate::frames::DMat3;

/// Three hinges through the bat's centre of mass without gravity, and the bench pendulum.
#[derive(Clone, Debug, Deserialize)]
pub struct FreeMotion {
    pub spin: Spin,
    pub pendulum: Pendulum,
}

/// Free spin.
#[derive(Clone, Debug, Deserialize)]
pub struct Spin {
    /// Principal moments about the centre of mass, kg m².
    pub inertia_com_kg_m2: Triple,
    /// The bat on three hinges.
    pub chain: Chain,
    pub cases: Vec<SpinCase>,
}

/// One start. The bat starts with its axes along W's.
#[derive(Clone, Debug, Deserialize)]
pub struct SpinCase {
    /// Hinge angles at the start, rad.
    pub chain_q0_rad: Vec<f64>,
    /// Hinge rates at the start, rad/s.
    pub chain_v0_rad_s: Vec<f64>,
    pub times_s: Vec<f64>,
    /// `R_WB`, row by row.
    pub rotation_rows: Vec<[f64; 9]>,
    /// Angular velocity in W, rad/s.
    pub omega_rad_s: Vec<Triple>,
    /// Angular momentum in W, kg m²/s.
    pub angular_momentum_kg_m2_s: Triple,
    pub kinetic_energy_j: f64,
}

/// A bat on the bench pivot.
#[derive(Clone, Debug, Deserialize)]
pub struct Pendulum {
    pub mass_kg: f64,
    pub pivot_to_com_m: f64,
    /// Moment of inertia about the pivot, kg m².
    pub pivot_inertia_kg_m2: f64,
    pub chain: Chain,
    pub cases: Vec<PendulumCase>,
}

/// One amplitude.
#[derive(Clone, Debug, Deserialize)]
pub struct PendulumCase {
    pub amplitude_deg: f64,
    pub period_s: f64,
}

/// A rotation from its rows.
pub fn from_rows(rows: &[f64; 9]) -> DMat3 {
    DMat3::from_cols_array(rows).transpose()
}

//! A bat that spins freely, and one that hangs from the bench pivot.

use backlift::frames::{DMat3, DVec3};
use serde::Deserialize;

use super::chain::{Chain, Triple};
use super::read;

/// `free_flight.json`: three hinges through the bat's centre of mass without gravity, and the bench pendulum.
#[derive(Deserialize)]
pub struct FreeMotion {
    pub spin: Spin,
    pub pendulum: Pendulum,
}

#[derive(Deserialize)]
pub struct Spin {
    pub mass_kg: f64,
    pub inertia_com_kg_m2: Triple,
    pub chain: Chain,
    pub cases: Vec<SpinCase>,
}

/// The bat starts with its axes along W's.
#[derive(Deserialize)]
pub struct SpinCase {
    pub omega0_rad_s: Triple,
    pub chain_q0_rad: Vec<f64>,
    pub chain_v0_rad_s: Vec<f64>,
    pub times_s: Vec<f64>,
    /// `R_WB`, row by row.
    pub rotation_rows: Vec<[f64; 9]>,
    /// In W.
    pub omega_rad_s: Vec<Triple>,
    pub angular_momentum_kg_m2_s: Triple,
    pub kinetic_energy_j: f64,
}

#[derive(Deserialize)]
pub struct Pendulum {
    pub mass_kg: f64,
    pub pivot_to_com_m: f64,
    pub com_inertia_kg_m2: f64,
    pub pivot_inertia_kg_m2: f64,
    pub chain: Chain,
    pub cases: Vec<PendulumCase>,
}

#[derive(Deserialize)]
pub struct PendulumCase {
    pub amplitude_deg: f64,
    pub period_s: f64,
    pub small_swing_period_s: f64,
}

/// A rotation from its rows.
pub fn from_rows(rows: &[f64; 9]) -> DMat3 {
    DMat3::from_cols_array(rows).transpose()
}

#[test]
fn a_spinning_bat_keeps_its_angular_momentum_in_the_reference() {
    let spin = read::<FreeMotion>("free_flight.json").spin;
    let inertia = DMat3::from_diagonal(DVec3::from_array(spin.inertia_com_kg_m2));
    for case in &spin.cases {
        for (rows, omega) in case.rotation_rows.iter().zip(&case.omega_rad_s) {
            let R_WB = from_rows(rows);
            let momentum_W = R_WB * (inertia * (R_WB.transpose() * DVec3::from_array(*omega)));
            assert!(momentum_W.distance(DVec3::from_array(case.angular_momentum_kg_m2_s)) < 1e-9);
        }
    }
}

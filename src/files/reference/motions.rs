//! Swings under given torques.

use std::collections::BTreeMap;

use serde::Deserialize;

use super::chain::{Chain, TorqueLaw, Triple};

/// Swings. Reference: Pinocchio and DOP853, rtol 1e-11.
#[derive(Clone, Debug, Deserialize)]
pub struct Swings {
    /// Adult and twelve-year-old.
    pub chains: Vec<Swing>,
}

/// One player's swings.
#[derive(Clone, Debug, Deserialize)]
pub struct Swing {
    /// `adult`, `twelve`.
    pub name: String,
    /// Player and bat.
    pub chain: Chain,
    pub duration_s: f64,
    /// Passive damping of each joint, N m s.
    pub damping_n_m_s_per_rad: Vec<f64>,
    pub q0_rad: Vec<f64>,
    pub v0_rad_s: Vec<f64>,
    /// Joint by joint, powers of t/duration from 0 up, N m.
    pub torque_n_m: Vec<Vec<f64>>,
    pub cases: Vec<Case>,
    /// Accelerations of one state.
    pub evaluation: Evaluation,
}

impl Swing {
    /// Torques of one amplitude.
    pub fn law(&self, case: &Case) -> TorqueLaw<'_> {
        TorqueLaw {
            duration_s: self.duration_s,
            coefficients: &self.torque_n_m,
            scale: vec![case.scale; self.q0_rad.len()],
            damping_n_m_s_per_rad: self.damping_n_m_s_per_rad.clone(),
        }
    }
}

/// One amplitude of the torques, sampled at `times_s`. The hands' loads stand only in the closed chain.
#[derive(Clone, Debug, Deserialize)]
pub struct Case {
    /// Factor on all torques.
    pub scale: f64,
    pub times_s: Vec<f64>,
    pub q_rad: Vec<Vec<f64>>,
    pub v_rad_s: Vec<Vec<f64>>,
    pub toe_m: Vec<Triple>,
    pub toe_velocity_m_s: Vec<Triple>,
    /// Kinetic and potential (zero at z = 0) energy.
    pub energy_j: Vec<f64>,
    /// Origin of the bat's link, m.
    #[serde(default)]
    pub bat_origin_m: Vec<Triple>,
    /// `R_WL` of the bat's link, row by row.
    #[serde(default)]
    pub bat_link_rotation_rows: Vec<[f64; 9]>,
    /// Force of the bottom hand on the bat, W.
    #[serde(default)]
    pub bottom_force_n: Vec<Triple>,
    /// Force of the top hand on the bat, W.
    #[serde(default)]
    pub top_force_n: Vec<Triple>,
    /// Couple of the top hand on the bat about the top hand's point, W.
    #[serde(default)]
    pub top_couple_n_m: Vec<Triple>,
    /// The second program, MuJoCo; keys `dt_0.001_s`, `dt_0.00025_s`.
    pub mujoco_rk4: BTreeMap<String, Mujoco>,
}

/// The second program's miss of the first.
#[derive(Clone, Debug, Deserialize)]
pub struct Mujoco {
    /// Largest difference of a component of the toe's velocity over all samples, m/s.
    pub toe_velocity_off_by_m_s: f64,
}

/// Accelerations of one state under given total torques.
#[derive(Clone, Debug, Deserialize)]
pub struct Evaluation {
    pub q_rad: Vec<f64>,
    pub v_rad_s: Vec<f64>,
    pub tau_n_m: Vec<f64>,
    pub acceleration_rad_s2: Vec<f64>,
    /// Force of the bottom hand on the bat, W; none in an open chain.
    pub bottom_force_n: Option<Triple>,
}

/// Drawn players, bats and torques.
#[derive(Clone, Debug, Deserialize)]
pub struct Drawn {
    pub duration_s: f64,
    /// Passive damping of the base chain, N m s.
    pub base_damping_n_m_s_per_rad: Vec<f64>,
    /// The player that is scaled.
    pub base_chain: Chain,
    /// Joint by joint, powers of t/duration from 0 up, N m.
    pub torque_n_m: Vec<Vec<f64>>,
    pub cases: Vec<DrawnCase>,
}

/// One draw: what is put into the base chain, and where its toe ends.
#[derive(Clone, Debug, Deserialize)]
pub struct DrawnCase {
    pub length_factor: f64,
    pub mass_factor: f64,
    /// Bat's link in the top hand's, m.
    pub bat_offset: Triple,
    /// Its mass, kg.
    pub bat_mass: f64,
    /// Its centre of mass, m.
    pub bat_com: Triple,
    /// Its tensor elements xx, yy, zz, xy, xz, yz, kg m².
    pub bat_inertia_com: [f64; 6],
    /// Where the bottom hand holds it, m.
    pub bottom_hand: Triple,
    /// Its toe, m.
    pub toe: Triple,
    /// Factor on the torque of each joint.
    pub torque_scale: Vec<f64>,
    pub q0_rad: Vec<f64>,
    pub v0_rad_s: Vec<f64>,
    /// Toe at the end, m.
    pub toe_m: Triple,
    /// Its velocity, m/s.
    pub toe_velocity_m_s: Triple,
    /// Largest component by which MuJoCo's differs, m/s.
    pub mujoco_off_by_m_s: f64,
}

impl Drawn {
    /// The chain of one case: the base chain's player scaled, the bat replaced.
    pub fn chain(&self, case: &DrawnCase) -> Chain {
        let (k, w) = (case.length_factor, case.mass_factor);
        let mut chain = self.base_chain.clone();
        for (n, link) in chain.links.iter_mut().enumerate() {
            if n == chain.bat.link {
                link.offset = case.bat_offset;
                link.mass = case.bat_mass;
                link.com = case.bat_com;
                link.inertia_com = case.bat_inertia_com;
                continue;
            }
            link.offset = link.offset.map(|it| k * it);
            link.mass *= w;
            link.com = link.com.map(|it| k * it);
            link.inertia_com = link.inertia_com.map(|it| w * k * k * it);
        }
        chain.bat.toe = case.toe;
        if let Some(closure) = &mut chain.closure {
            closure.point_a = case.bottom_hand;
            closure.point_b = closure.point_b.map(|it| k * it);
        }
        chain
    }

    /// Its torques.
    pub fn law(&self, case: &DrawnCase) -> TorqueLaw<'_> {
        let player = case.length_factor * case.mass_factor;
        let damping = self.base_damping_n_m_s_per_rad.iter().map(|it| player * it);
        TorqueLaw {
            duration_s: self.duration_s,
            coefficients: &self.torque_n_m,
            scale: case.torque_scale.clone(),
            damping_n_m_s_per_rad: damping.collect(),
        }
    }
}

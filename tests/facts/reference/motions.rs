//! Swings under given torques.

use std::collections::BTreeMap;

use backlift::frames::DVec3;
use serde::Deserialize;

use super::chain::{Chain, Link, TorqueLaw, Triple};
use super::read;

/// `open_chain.json`, `closed_chain.json`. Reference: Pinocchio and DOP853, rtol 1e-11.
#[derive(Deserialize)]
pub struct Swings {
    pub chains: Vec<Swing>,
}

#[derive(Deserialize)]
pub struct Swing {
    pub name: String,
    pub chain: Chain,
    pub duration_s: f64,
    pub damping_n_m_s_per_rad: Vec<f64>,
    pub q0_rad: Vec<f64>,
    pub v0_rad_s: Vec<f64>,
    /// Joint by joint, powers of t/duration from 0 up.
    pub torque_n_m: Vec<Vec<f64>>,
    pub cases: Vec<Case>,
    pub evaluation: Evaluation,
}

impl Swing {
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
#[derive(Deserialize)]
pub struct Case {
    pub scale: f64,
    pub times_s: Vec<f64>,
    pub q_rad: Vec<Vec<f64>>,
    pub v_rad_s: Vec<Vec<f64>>,
    pub toe_m: Vec<Triple>,
    pub toe_velocity_m_s: Vec<Triple>,
    /// Kinetic and potential (zero at z = 0) energy.
    pub energy_j: Vec<f64>,
    #[serde(default)]
    pub bat_origin_m: Vec<Triple>,
    /// `R_WL` of the bat's link, row by row.
    #[serde(default)]
    pub bat_link_rotation_rows: Vec<[f64; 9]>,
    #[serde(default)]
    pub bat_angular_velocity_rad_s: Vec<Triple>,
    /// Force of the bottom hand on the bat, W.
    #[serde(default)]
    pub bottom_force_n: Vec<Triple>,
    /// Force of the top hand on the bat and couple about the top hand's point, W.
    #[serde(default)]
    pub top_force_n: Vec<Triple>,
    #[serde(default)]
    pub top_couple_n_m: Vec<Triple>,
    /// Keys `dt_0.001_s`, `dt_0.00025_s`.
    pub mujoco_rk4: BTreeMap<String, Mujoco>,
}

#[derive(Deserialize)]
pub struct Mujoco {
    pub toe_m: Triple,
    pub toe_velocity_m_s: Triple,
    /// Largest difference of a component from the reference over all samples.
    pub toe_off_by_m: f64,
    pub toe_velocity_off_by_m_s: f64,
}

/// Accelerations of one state under given total torques.
#[derive(Deserialize)]
pub struct Evaluation {
    pub q_rad: Vec<f64>,
    pub v_rad_s: Vec<f64>,
    pub tau_n_m: Vec<f64>,
    pub acceleration_rad_s2: Vec<f64>,
    pub bottom_force_n: Option<Triple>,
}

/// `random_chains.json`.
#[derive(Deserialize)]
pub struct Drawn {
    pub duration_s: f64,
    pub base_damping_n_m_s_per_rad: Vec<f64>,
    pub base_chain: Chain,
    pub torque_n_m: Vec<Vec<f64>>,
    pub cases: Vec<DrawnCase>,
}

#[derive(Deserialize)]
pub struct DrawnCase {
    pub length_factor: f64,
    pub mass_factor: f64,
    pub bat_offset: Triple,
    pub bat_mass: f64,
    pub bat_com: Triple,
    pub bat_inertia_com: [f64; 6],
    pub bottom_hand: Triple,
    pub toe: Triple,
    pub torque_scale: Vec<f64>,
    pub q0_rad: Vec<f64>,
    pub v0_rad_s: Vec<f64>,
    pub toe_m: Triple,
    pub toe_velocity_m_s: Triple,
    pub mujoco_off_by_m_s: f64,
}

impl Drawn {
    /// The chain of one case: the base chain's player scaled, the bat replaced.
    pub fn chain(&self, case: &DrawnCase) -> Chain {
        let (k, w) = (case.length_factor, case.mass_factor);
        let mut chain = self.base_chain.clone();
        for link in &mut chain.links {
            *link = Link {
                offset: link.offset.map(|it| k * it),
                mass: w * link.mass,
                com: link.com.map(|it| k * it),
                inertia_com: link.inertia_com.map(|it| w * k * k * it),
                ..link.clone()
            };
        }
        let bat = &mut chain.links[chain.bat.link];
        bat.offset = case.bat_offset;
        bat.mass = case.bat_mass;
        bat.com = case.bat_com;
        bat.inertia_com = case.bat_inertia_com;
        chain.bat.toe = case.toe;
        if let Some(closure) = &mut chain.closure {
            closure.point_a = case.bottom_hand;
            closure.point_b = closure.point_b.map(|it| k * it);
        }
        chain
    }

    pub fn law(&self, case: &DrawnCase) -> TorqueLaw<'_> {
        let player = case.length_factor * case.mass_factor;
        TorqueLaw {
            duration_s: self.duration_s,
            coefficients: &self.torque_n_m,
            scale: case.torque_scale.clone(),
            damping_n_m_s_per_rad: self
                .base_damping_n_m_s_per_rad
                .iter()
                .map(|it| player * it)
                .collect(),
        }
    }
}

#[test]
fn outside_programs_put_the_toe_where_the_files_chain_has_it() {
    for file in ["open_chain.json", "closed_chain.json"] {
        for swing in read::<Swings>(file).chains {
            for case in &swing.cases {
                for (q_rad, toe_m) in case.q_rad.iter().zip(&case.toe_m) {
                    let off_m = swing.chain.toe_W(q_rad).distance(DVec3::from_array(*toe_m));
                    assert!(off_m < 1e-9, "{file} {}: {off_m} m", swing.name); // 12 digits are stored
                    assert!(swing.chain.gap_m(q_rad) < 1e-9);
                }
            }
        }
    }
}

#[test]
fn outside_programs_agree_on_the_toe_speed_within_a_hundredth_of_our_tolerance() {
    for file in ["open_chain.json", "closed_chain.json"] {
        for swing in read::<Swings>(file).chains {
            for case in &swing.cases {
                let speed_m_s = DVec3::from_array(*case.toe_velocity_m_s.last().unwrap()).length();
                let fine = &case.mujoco_rk4["dt_0.00025_s"];
                // ours is held to 0.5 %; the references must not eat into that
                assert!(fine.toe_velocity_off_by_m_s < 5e-5 * speed_m_s, "{file} {}", swing.name);
            }
        }
    }
}

#[test]
fn drawn_players_hold_their_bats_with_both_hands_at_the_start() {
    let drawn = read::<Drawn>("random_chains.json");
    assert_eq!(drawn.cases.len(), 200);
    for case in &drawn.cases {
        let gap_m = drawn.chain(case).gap_m(&case.q0_rad);
        assert!(gap_m < 1e-8, "{gap_m} m"); // chains are stored to 9 digits
    }
}

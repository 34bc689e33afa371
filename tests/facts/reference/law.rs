//! Figures of the stroke law: the prototype with its step (`pilot_figures.json`) and the same law
//! without a step (`continuous_law.json`), which is the one to be compared with.

use std::collections::BTreeMap;

use serde::Deserialize;

use super::chain::{Chain, Link, Triple};
use super::read;

#[derive(Deserialize)]
pub struct Prototype {
    pub law: Constants,
    /// Fifteen: three strokes, an adult with three bats, a twelve-year-old with two.
    pub searches: Vec<PrototypeSearch>,
    /// Keys `drive adult`, `drive twelve`, …
    pub rigs: BTreeMap<String, Rig>,
}

/// Constants of the law; names as in `tests/reference/swing_pilot.py`.
#[derive(Deserialize)]
pub struct Constants {
    /// Preview, s.
    pub h: f64,
    /// Weight of the barrier.
    pub mu: f64,
    /// Bandwidth, 1/s.
    pub omega: f64,
    pub wpos: f64,
    pub wrot: f64,
    pub wpost: f64,
    pub weff: f64,
    pub hill_curvature: f64,
    pub eccentric_plateau: f64,
    pub activation_time_s: f64,
    pub end_s: f64,
    pub spline_degree: usize,
    pub spline_points: usize,
}

#[derive(Deserialize)]
pub struct PrototypeSearch {
    pub stroke: String,
    pub player: String,
    pub bat: String,
    pub bat_mass_kg: f64,
    pub bat_length_m: f64,
    pub balance_from_top_m: f64,
    pub swing_moment_kg_m2: f64,
    #[serde(rename = "dt_0.001_s")]
    pub at_1_ms: Fastest,
    #[serde(rename = "dt_0.0005_s")]
    pub at_0_5_ms: Fastest,
    #[serde(rename = "dt_0.00025_s")]
    pub at_0_25_ms: Fastest,
}

#[derive(Deserialize)]
pub struct Fastest {
    pub fastest_s: f64,
    pub crossing_s: f64,
    pub speed_m_s: f64,
    pub toe_speed_m_s: f64,
    pub position_error_mm: f64,
    pub face_error_deg: f64,
    pub line_error_deg: f64,
}

/// Chain, capacities and path; the middle bat for the adult, the light one for the twelve-year-old.
#[derive(Deserialize)]
pub struct Rig {
    pub chain: Chain,
    pub joints: Vec<String>,
    pub capacity_positive_n_m: Vec<f64>,
    pub capacity_negative_n_m: Vec<f64>,
    pub fastest_joint_rad_s: Vec<f64>,
    /// Ten rows of joint angles; the spline has eleven points, the first one twice.
    pub control_points_rad: Vec<Vec<f64>>,
    /// The adult's only, as are the following.
    pub stroke_time_s: Option<f64>,
    pub planned_contact: Option<PlannedContact>,
    pub first_step_dt_1ms: Option<FirstStep>,
    /// Keys `dt_0.001_s` … `dt_0.000125_s`, and `limit`.
    #[serde(default)]
    pub at_fixed_time: BTreeMap<String, Crossing>,
    /// The pull only.
    #[serde(default)]
    pub series_dt_1ms: Vec<Moment>,
    #[serde(default, rename = "series_dt_0.125ms")]
    pub series_dt_0_125ms: Vec<Moment>,
}

#[derive(Deserialize)]
pub struct PlannedContact {
    pub point_m: Triple,
    /// Columns toe, y, face.
    pub bat_rotation_rows: [Triple; 3],
    pub velocity_dir: Triple,
}

/// Box and answer of the first step, before any motion.
#[derive(Deserialize)]
pub struct FirstStep {
    pub lower_n_m: Vec<f64>,
    pub upper_n_m: Vec<f64>,
    pub target_n_m: Vec<f64>,
    pub tau_n_m: Vec<f64>,
    pub acceleration_rad_s2: Vec<f64>,
}

/// Where the contact point crosses the plane through the planned contact.
#[derive(Deserialize)]
pub struct Crossing {
    pub error: f64,
    pub position_error_mm: f64,
    pub face_error_deg: f64,
    pub line_error_deg: f64,
    pub crossing_s: f64,
    pub speed_m_s: f64,
    pub toe_speed_m_s: f64,
    #[serde(default)]
    pub q_rad: Vec<f64>,
    #[serde(default)]
    pub v_rad_s: Vec<f64>,
    #[serde(default)]
    pub tau_n_m: Vec<f64>,
}

#[derive(Deserialize)]
pub struct Moment {
    pub t_s: f64,
    pub q_rad: Vec<f64>,
    pub v_rad_s: Vec<f64>,
    pub tau_n_m: Vec<f64>,
}

#[derive(Deserialize)]
pub struct Continuous {
    /// Keys `drive`, `pull`, `hook`; the adult's middle bat.
    pub fixed_time: BTreeMap<String, FixedTime>,
    pub searches_dt_0_5ms: Vec<Search>,
}

#[derive(Deserialize)]
pub struct FixedTime {
    pub stroke_time_s: f64,
    pub start_tau_n_m: Vec<f64>,
    pub first_rate: FirstRate,
    #[serde(rename = "dt_0.001_s")]
    pub at_1_ms: Crossing,
    #[serde(rename = "dt_0.0005_s")]
    pub at_0_5_ms: Crossing,
    #[serde(rename = "dt_0.00025_s")]
    pub at_0_25_ms: Crossing,
    #[serde(default, rename = "series_dt_0.25ms")]
    pub series_dt_0_25ms: Vec<Moment>,
}

/// `holding_law.json`: the same law with a bottom hand that holds the handle.
#[derive(Deserialize)]
pub struct Holding {
    pub limit_n_m: [f64; 3],
    pub traction_n: f64,
    /// Keys `drive`, `pull`, `hook`; the adult's middle bat.
    pub fixed_time: BTreeMap<String, HoldingTime>,
}

#[derive(Deserialize)]
pub struct HoldingTime {
    pub stroke_time_s: f64,
    pub start_tau_n_m: Vec<f64>,
    #[serde(rename = "dt_0.00025_s")]
    pub at_0_25_ms: HoldingCrossing,
}

#[derive(Deserialize)]
pub struct HoldingCrossing {
    #[serde(flatten)]
    pub crossing: Crossing,
    /// Couple of the bottom hand on the bat about the bat's axes, as a share of its limit.
    pub couple_share: [f64; 3],
}

/// Joint accelerations and rate of the torques at t = 0, at rest, under the starting torques.
#[derive(Deserialize)]
pub struct FirstRate {
    pub acceleration_rad_s2: Vec<f64>,
    pub torque_rate_n_m_s: Vec<f64>,
}

#[derive(Deserialize)]
pub struct Search {
    pub stroke: String,
    pub player: String,
    pub bat: String,
    /// Key into [`Prototype::rigs`]; this search has that rig with its bat link replaced.
    pub rig: String,
    pub bat_link: Link,
    pub fastest_s: f64,
    pub start_tau_n_m: Vec<f64>,
    pub at_fastest: Crossing,
    /// The middle bat only, at 1.10, 1.05, 0.97 and 0.94 times the fastest.
    #[serde(default)]
    pub at_other_times: Vec<OtherTime>,
}

#[derive(Deserialize)]
pub struct OtherTime {
    pub times_fastest: f64,
    #[serde(flatten)]
    pub crossing: Crossing,
}

#[test]
fn the_prototype_tends_to_the_law_without_a_step_as_its_step_shrinks() {
    let prototype = read::<Prototype>("pilot_figures.json");
    for (stroke, law) in read::<Continuous>("continuous_law.json").fixed_time {
        let steps = &prototype.rigs[&format!("{stroke} adult")].at_fixed_time;
        let off = |key: &str| (steps[key].speed_m_s / law.at_0_25_ms.speed_m_s - 1.0).abs();
        assert!(off("limit") < 2e-5, "{stroke}: {}", off("limit"));
        assert!(off("dt_0.000125_s") < 0.6 * off("dt_0.00025_s"), "{stroke}");
        assert!((steps["limit"].error - law.at_0_25_ms.error).abs() < 0.006, "{stroke}");
    }
}

#[test]
fn the_prototypes_fastest_time_tends_to_that_of_the_law_without_a_step() {
    let prototype = read::<Prototype>("pilot_figures.json");
    for search in read::<Continuous>("continuous_law.json").searches_dt_0_5ms {
        let same = |it: &&PrototypeSearch| {
            (&it.stroke, &it.player, &it.bat) == (&search.stroke, &search.player, &search.bat)
        };
        let stepped = prototype.searches.iter().find(same).unwrap();
        let limit_s = 2.0 * stepped.at_0_25_ms.fastest_s - stepped.at_0_5_ms.fastest_s;
        // the two programs share the law, not the dynamics, the closure or the integrator
        assert!((limit_s / search.fastest_s - 1.0).abs() < 2e-3, "{} {}", search.rig, search.bat);
    }
}

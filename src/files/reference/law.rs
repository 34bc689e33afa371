//! Figures of the stroke law: the prototype with its step, and the same law without a step, which is the
//! one to be compared with.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::player::joints::JOINT_COUNT;
use crate::stroke::joint_path::CONTROL_COUNT;

/// The prototype, MuJoCo 4.0.0 semi-implicit, the torque held over a step.
#[derive(Clone, Debug, Deserialize)]
pub struct Prototype {
    /// Fifteen: three strokes, an adult with three bats, a twelve-year-old with two.
    pub searches: Vec<PrototypeSearch>,
    /// Keys `drive adult`, `drive twelve`, …
    pub rigs: BTreeMap<String, Rig>,
}

/// One search for the fastest controlled swing.
#[derive(Clone, Debug, Deserialize)]
pub struct PrototypeSearch {
    /// `drive`, `pull`, `hook`.
    pub stroke: String,
    /// `adult`, `twelve`.
    pub player: String,
    /// `light`, `middle`, `heavy`.
    pub bat: String,
    pub bat_mass_kg: f64,
    pub bat_length_m: f64,
    pub balance_from_top_m: f64,
    pub swing_moment_kg_m2: f64,
    /// Its answer at a step of 0.5 ms.
    #[serde(rename = "dt_0.0005_s")]
    pub at_0_5_ms: Fastest,
    /// Its answer at a step of 0.25 ms.
    #[serde(rename = "dt_0.00025_s")]
    pub at_0_25_ms: Fastest,
}

/// A fastest controlled swing.
#[derive(Clone, Debug, Deserialize)]
pub struct Fastest {
    pub fastest_s: f64,
    /// Speed of the contact point, m/s.
    pub speed_m_s: f64,
}

/// A player's path, and the prototype's contacts on it.
#[derive(Clone, Debug, Deserialize)]
pub struct Rig {
    /// Ten rows of joint angles; the spline has eleven points, the first one twice.
    pub control_points_rad: [[f64; JOINT_COUNT]; CONTROL_COUNT],
    /// Keys `dt_0.001_s` … `dt_0.000125_s`, and `limit`; the adult's only.
    #[serde(default)]
    pub at_fixed_time: BTreeMap<String, Crossing>,
}

/// Where the contact point crosses the plane through the planned contact.
#[derive(Clone, Debug, Deserialize)]
pub struct Crossing {
    /// The three errors over their tolerances; 1 is the limit of control.
    pub error: f64,
    /// Distance from the planned place, mm.
    pub position_error_mm: f64,
    /// Angle of the face, degrees.
    pub face_error_deg: f64,
    /// Angle of the bat's line, degrees.
    pub line_error_deg: f64,
    /// Speed of the contact point, m/s.
    pub speed_m_s: f64,
    pub toe_speed_m_s: f64,
}

/// One instant of a swing.
#[derive(Clone, Debug, Deserialize)]
pub struct Moment {
    /// Time from the top of the backlift, s.
    pub t_s: f64,
    pub q_rad: [f64; JOINT_COUNT],
    pub tau_n_m: [f64; JOINT_COUNT],
}

/// The law without a step: Pinocchio and an adaptive integrator.
#[derive(Clone, Debug, Deserialize)]
pub struct Continuous {
    /// Keys `drive`, `pull`, `hook`; the adult's middle bat.
    pub fixed_time: BTreeMap<String, FixedTime>,
    /// The prototype's fifteen searches again.
    pub searches_dt_0_5ms: Vec<Search>,
}

/// A swing over a given stroke time.
#[derive(Clone, Debug, Deserialize)]
pub struct FixedTime<C = Crossing> {
    pub stroke_time_s: f64,
    /// Torques at the start, N m.
    pub start_tau_n_m: [f64; JOINT_COUNT],
    /// The contact.
    #[serde(rename = "dt_0.00025_s")]
    pub at_0_25_ms: C,
    /// The swing over time; the pull only.
    #[serde(default, rename = "series_dt_0.25ms")]
    pub series: Vec<Moment>,
}

/// The same law with a bottom hand that holds the handle (`holding_law.json`).
#[derive(Clone, Debug, Deserialize)]
pub struct Holding {
    /// Greatest couple of the bottom hand about the bat's axes, N m.
    pub limit_n_m: [f64; 3],
    /// Friction that the pull along the handle and the twist about it share, N.
    pub traction_n: f64,
    /// Keys `drive`, `pull`, `hook`; the adult's middle bat.
    pub fixed_time: BTreeMap<String, FixedTime<HoldingCrossing>>,
}

/// The contact, and what the bottom hand then does.
#[derive(Clone, Debug, Deserialize)]
pub struct HoldingCrossing {
    /// The contact.
    #[serde(flatten)]
    pub crossing: Crossing,
    /// Couple of the bottom hand on the bat about the bat's axes, as a share of its limit.
    pub couple_share: [f64; 3],
}

/// One search for the fastest controlled swing.
#[derive(Clone, Debug, Deserialize)]
pub struct Search {
    /// `drive`, `pull`, `hook`.
    pub stroke: String,
    /// `adult`, `twelve`.
    pub player: String,
    /// `light`, `middle`, `heavy`.
    pub bat: String,
    /// Shortest stroke time, s.
    pub fastest_s: f64,
    /// Torques at the start, N m.
    pub start_tau_n_m: [f64; JOINT_COUNT],
    /// The contact at that time.
    pub at_fastest: Crossing,
    /// The middle bat only, at 1.10, 1.05, 0.97 and 0.94 times the fastest.
    #[serde(default)]
    pub at_other_times: Vec<OtherTime>,
}

/// A swing slower or faster than the fastest controlled one.
#[derive(Clone, Debug, Deserialize)]
pub struct OtherTime {
    /// Stroke time as a multiple of the fastest.
    pub times_fastest: f64,
    /// The contact.
    #[serde(flatten)]
    pub crossing: Crossing,
}

//! From the keys of a stroke to its joint path: what others need to add a stroke.
//!
//! First the keys alone: inverse kinematics over the whole spline at once, which is continuous by
//! construction. Then, with the bottom hand's force as a further unknown, a path that the reference
//! player's limited torques can follow: planned slowly first, then faster step by step, each from the
//! one before. Contact and backlift stay where the keys have them; the way between gives.
//! Derivatives: geometry and mass matrix exactly, the rest of the inverse dynamics by differences.

pub mod least_squares;
pub mod paths;
pub mod pose_error;
pub mod reference_adult;
pub mod report;
pub mod task;
pub mod torque_demand;
pub mod unknowns;

use super::chain::{Chain, Grip};
use crate::bat::Bat;
use crate::dynamics::tree::TreeFault;
use crate::player::Player;
use crate::player::joints::{JOINTS, TOP_ARM};
use crate::player::posture::NEUTRAL_RAD;
use crate::stroke::Stroke;
use crate::stroke::joint_path::{CONTROL_COUNT, END, JointPath};
use core::ops::ControlFlow;
use least_squares::minimise;
use pose_error::Allowance;
use report::Report;
use task::Task;

/// How long a plan is worked on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Effort {
    /// Steps of the search by pose.
    pub pose_iterations: usize,
    /// Stroke time that the first plan by torque is asked for, s.
    pub slowest_s: f64,
    /// Ratio of one asked stroke time to the next.
    pub ratio: f64,
    /// Steps of the search at each stroke time.
    pub torque_iterations: usize,
}

impl Default for Effort {
    fn default() -> Self {
        Self { pose_iterations: 80, slowest_s: 0.60, ratio: 0.99, torque_iterations: 100 }
    }
}

/// Where the work stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Progress {
    /// Plans finished.
    pub done: usize,
    /// Plans to make.
    pub of: usize,
}

/// A planned joint path.
#[derive(Clone, Debug, PartialEq)]
pub struct Planned {
    /// The path.
    pub path: JointPath,
    /// How well it does what the keys ask.
    pub report: Report,
}

/// Why there is no joint path.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum PlanFault {
    /// The chain is not a tree.
    #[error(transparent)]
    Chain(#[from] TreeFault),
    /// Told to stop.
    #[error("stopped before the path was planned")]
    Stopped,
    /// The keys at contact cannot be reached.
    #[error(
        "{stroke}: at contact the hands miss their key by {grip_mm:.0} mm and the bat by {attitude_deg:.1}° (10 mm and 2° are allowed); move the key at p = 1, or give the stroke more time than {plan_time_s} s"
    )]
    MissesContact {
        /// Stroke.
        stroke: String,
        /// Middle of the hands off its key, mm.
        grip_mm: f64,
        /// Bat off its key, degrees.
        attitude_deg: f64,
        /// Stroke time asked for, s.
        plan_time_s: f64,
    },
    /// The bottom hand leaves the handle.
    #[error(
        "{stroke}: the bottom hand is {gap_mm:.1} mm off the handle (2 mm are allowed); bring the hands nearer to the body"
    )]
    HandOffHandle {
        /// Stroke.
        stroke: String,
        /// Largest gap, mm.
        gap_mm: f64,
    },
    /// A joint is bent further than it goes.
    #[error(
        "{stroke}: {joint} goes {excess_deg:.1}° beyond its range (3° are allowed); change the keys near p = {p:.2}"
    )]
    OutOfRange {
        /// Stroke.
        stroke: String,
        /// Joint angle.
        joint: &'static str,
        /// How far, degrees.
        excess_deg: f64,
        /// Path parameter where.
        p: f64,
    },
}

/// Hands at contact, m: further off, the plan is refused.
const GRIP_LIMIT_M: f64 = 0.010;
/// Bat at contact, degrees.
const ATTITUDE_LIMIT_DEG: f64 = 2.0;
/// Gap between bottom hand and handle, m.
const GAP_LIMIT_M: f64 = 0.002;
/// Joint angle out of its range, degrees.
const RANGE_LIMIT_DEG: f64 = 3.0;

/// Plans the joint path of a stroke from its keys, for its plan time.
///
/// `progress` is asked before each step of the search whether to go on.
pub fn plan(
    effort: &Effort,
    stroke: &Stroke,
    player: &Player,
    bat: &Bat,
    progress: &dyn Fn(Progress) -> ControlFlow<()>,
) -> Result<Planned, PlanFault> {
    let grip = Grip::for_stature(player.stature_m, stroke.oblique_rad, stroke.roll_rad);
    let chain = Chain::new(player, bat, grip)?;
    let task = Task::new(&chain, &player.strength, stroke);
    let times = stroke_times(effort, stroke.plan_time_s);
    let of = times.len() + 1;

    let mut x = unknowns::pack(&first_guess(stroke), effort.slowest_s.max(stroke.plan_time_s));
    x = minimise(
        x,
        effort.pose_iterations,
        &|x, sum| pose_error::add(&task, &Allowance::BY_POSE, x, sum),
        &mut || progress(Progress { done: 0, of }),
    )
    .ok_or(PlanFault::Stopped)?;
    for (n, &time_s) in times.iter().enumerate() {
        x[unknowns::LN_TIME] = libm::log(time_s);
        x = minimise(
            x,
            effort.torque_iterations,
            &|x, sum| {
                pose_error::add(&task, &Allowance::BY_TORQUE, x, sum);
                torque_demand::add(&task, time_s, x, sum);
            },
            &mut || progress(Progress { done: n + 1, of }),
        )
        .ok_or(PlanFault::Stopped)?;
    }
    let report = Report::new(&task, &x);
    refuse_bad(stroke, &report)?;
    Ok(Planned { path: unknowns::path(&x), report })
}

/// Stroke times asked for, from slow to the stroke's own.
fn stroke_times(effort: &Effort, plan_time_s: f64) -> Vec<f64> {
    let slower = core::iter::successors(Some(effort.slowest_s), |t| Some(t * effort.ratio))
        .take_while(|t| *t > plan_time_s * 1.01);
    slower.chain([plan_time_s]).collect()
}

/// Trunk after the keys, arms neutral.
fn first_guess(stroke: &Stroke) -> JointPath {
    let curves = stroke.curves();
    let mut control_rad = [NEUTRAL_RAD; CONTROL_COUNT];
    for (c, row) in control_rad.iter_mut().enumerate() {
        let s = END * c as f64 / (CONTROL_COUNT - 1) as f64;
        row[..TOP_ARM].copy_from_slice(&curves.pose(s).trunk_rad);
    }
    JointPath { control_rad }
}

fn refuse_bad(stroke: &Stroke, report: &Report) -> Result<(), PlanFault> {
    let name = || stroke.name.clone();
    if report.gap_m > GAP_LIMIT_M {
        return Err(PlanFault::HandOffHandle { stroke: name(), gap_mm: 1e3 * report.gap_m });
    }
    let attitude_deg = report.contact_attitude_rad.to_degrees();
    if report.contact_grip_m > GRIP_LIMIT_M || attitude_deg > ATTITUDE_LIMIT_DEG {
        return Err(PlanFault::MissesContact {
            stroke: name(),
            grip_mm: 1e3 * report.contact_grip_m,
            attitude_deg,
            plan_time_s: stroke.plan_time_s,
        });
    }
    let excess_deg = report.range_excess_rad.to_degrees();
    if excess_deg > RANGE_LIMIT_DEG {
        return Err(PlanFault::OutOfRange {
            stroke: name(),
            joint: JOINTS[report.range_joint].name,
            excess_deg,
            p: report.range_s * report.range_s,
        });
    }
    Ok(())
}

//! How well a planned path does what the keys ask.

use super::pose_error::{attitude_error, grip_error, range_excess_rad};
use super::task::Task;
use super::torque_demand::largest_share;
use super::unknowns;
use crate::dynamics::closed_loop::gap;
use crate::frames::DVec3;
use crate::player::joints::JOINT_COUNT;
use nalgebra::DVector;

/// Largest errors of a planned path.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Report {
    /// Middle of the hands off its key at contact, m.
    pub contact_grip_m: f64,
    /// Bat off its key at contact, rad.
    pub contact_attitude_rad: f64,
    /// Middle of the hands off the curve through the keys, anywhere, m.
    pub grip_m: f64,
    /// Bat off the curve through the keys, anywhere, rad.
    pub attitude_rad: f64,
    /// Gap between bottom hand and handle, m.
    pub gap_m: f64,
    /// Joint angle out of its range, rad.
    pub range_excess_rad: f64,
    /// The joint furthest out of its range.
    pub range_joint: usize,
    /// Normalised time at which it is.
    pub range_s: f64,
    /// Torque asked of a joint up to contact, as a share of what it can give at its speed.
    pub demand_share: f64,
    /// The joint asked for most.
    pub demand_joint: usize,
    /// Stroke time that the plan came to, s.
    pub stroke_time_s: f64,
}

impl Report {
    /// Measures the plan in the unknowns `x`.
    pub fn new(task: &Task<'_>, x: &DVector<f64>) -> Self {
        let (demand_share, demand_joint) = largest_share(task, x);
        let stroke_time_s = unknowns::time_s(x);
        let mut out = Self { demand_share, demand_joint, stroke_time_s, ..Self::default() };
        let path = unknowns::path(x);
        let mut k = task.chain.tree.kinematics();
        for wish in &task.wishes {
            let q = path.weighted(&wish.weights.value);
            task.chain.tree.forward_kinematics(&q, &[0.0; JOINT_COUNT], DVec3::ZERO, &mut k);
            let grip_m = grip_error(task, wish, &k).length();
            let attitude_rad = attitude_error(task, wish, &k).length();
            out.grip_m = out.grip_m.max(grip_m);
            out.attitude_rad = out.attitude_rad.max(attitude_rad);
            out.gap_m = out.gap_m.max(gap(&k, &task.chain.bottom_hand).length());
            if (wish.s - 1.0).abs() < 0.5 * task.spacing() {
                out.contact_grip_m = grip_m;
                out.contact_attitude_rad = attitude_rad;
            }
            for (j, q) in q.iter().enumerate() {
                let excess = range_excess_rad(j, *q).abs();
                if excess > out.range_excess_rad {
                    out.range_excess_rad = excess;
                    out.range_joint = j;
                    out.range_s = wish.s;
                }
            }
        }
        out
    }
}

//! What a plan looks for: control points of the joint angles and of the bottom hand's force, and the
//! logarithm of the stroke time.

use crate::frames::DVec3;
use crate::player::joints::JOINT_COUNT;
use crate::stroke::joint_path::{CONTROL_COUNT, JointPath};
use nalgebra::DVector;

/// Unknowns of one control point: the joint angles, then the force.
const PER_CONTROL: usize = JOINT_COUNT + 3;
/// Number of unknowns.
pub const COUNT: usize = CONTROL_COUNT * PER_CONTROL + 1;
/// Index of the logarithm of the stroke time, s.
pub const LN_TIME: usize = COUNT - 1;

/// Index of a joint angle at a control point.
pub const fn joint(control: usize, joint: usize) -> usize {
    control * PER_CONTROL + joint
}

/// Index of a component of the bottom hand's force at a control point.
pub const fn force(control: usize, component: usize) -> usize {
    control * PER_CONTROL + JOINT_COUNT + component
}

/// Unknowns of a path without a force, in a stroke time.
pub fn pack(path: &JointPath, time_s: f64) -> DVector<f64> {
    let mut x = DVector::zeros(COUNT);
    for (c, row) in path.control_rad.iter().enumerate() {
        for (j, q) in row.iter().enumerate() {
            x[joint(c, j)] = *q;
        }
    }
    x[LN_TIME] = libm::log(time_s);
    x
}

/// The joint path in the unknowns.
pub fn path(x: &DVector<f64>) -> JointPath {
    JointPath { control_rad: core::array::from_fn(|c| core::array::from_fn(|j| x[joint(c, j)])) }
}

/// The stroke time in the unknowns, s.
pub fn time_s(x: &DVector<f64>) -> f64 {
    libm::exp(x[LN_TIME])
}

/// Force of the bottom hand on the bat where the control points have these weights, N, W.
pub fn force_n(x: &DVector<f64>, weights: &[f64; CONTROL_COUNT]) -> DVec3 {
    let mut out = DVec3::ZERO;
    for (c, w) in weights.iter().enumerate() {
        out += DVec3::new(x[force(c, 0)], x[force(c, 1)], x[force(c, 2)]) * *w;
    }
    out
}

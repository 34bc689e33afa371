//! Joint paths from before hips and spine were two joints: the shoulders' turn in the world stood in the place of
//! the spine's, and the hips' was in the keys alone.

use super::joint_path::{CONTROL_COUNT, END, JointPath, Weights};
use super::key_spline::KeySpline;
use crate::player::joints::{HIP_TURN, JOINT_COUNT, SPINE_TURN};
use nalgebra::{SMatrix, SVector};

/// Instants at which the hips' turn is taken from the keys.
const SAMPLES: usize = 89;

/// The same motion with the hips' turn of the keys taken out of the first angle: what is left is the spine's.
pub fn parted(
    curves: &KeySpline,
    control_rad: &[[f64; JOINT_COUNT - 1]; CONTROL_COUNT],
) -> JointPath {
    let hips = hip_turn(curves);
    JointPath {
        control_rad: core::array::from_fn(|c| {
            let mut row = [0.0; JOINT_COUNT];
            row[SPINE_TURN..].copy_from_slice(&control_rad[c]);
            row[HIP_TURN] = hips[c];
            row[SPINE_TURN] -= hips[c];
            row
        }),
    }
}

/// Control points whose spline follows the hips' turn of the keys as nearly as one can, by least squares.
fn hip_turn(curves: &KeySpline) -> SVector<f64, CONTROL_COUNT> {
    let mut H = SMatrix::<f64, CONTROL_COUNT, CONTROL_COUNT>::zeros();
    let mut g = SVector::<f64, CONTROL_COUNT>::zeros();
    for i in 0..SAMPLES {
        let s = END * i as f64 / (SAMPLES - 1) as f64;
        let row = SVector::<f64, CONTROL_COUNT>::from(Weights::at(s).value);
        H += row * row.transpose();
        g += row * curves.pose(s).trunk_rad[HIP_TURN];
    }
    // The basis is independent over so many instants: there is a factor.
    H.cholesky().map_or_else(SVector::zeros, |it| it.solve(&g))
}

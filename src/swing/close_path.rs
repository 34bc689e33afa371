//! A player's own joint path: the one nearest to the stored path that brings both hands to the handle.

use super::chain::Chain;
use crate::dynamics::closed_loop::{gap, gap_rows};
use crate::frames::DVec3;
use crate::player::joints::JOINT_COUNT;
use crate::stroke::joint_path::{CONTROL_COUNT, END, JointPath, Weights};
use nalgebra::{DMatrix, DVector};

const N: usize = JOINT_COUNT;
/// Samples along the path at which the hands must meet the handle.
const SAMPLES: usize = 45;
/// Gap between hand and handle that counts as much as [`NEAR_RAD`], m.
const GAP_M: f64 = 0.0005;
/// Change of a joint angle that counts as much as [`GAP_M`], rad.
const NEAR_RAD: f64 = 0.087_266_462_599_716_48;
const ITERATIONS: usize = 20;

/// The path did not close.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[error(
    "the hands cannot follow this stroke: {gap_m:.4} m are left between the bottom hand and the handle"
)]
pub struct PathDoesNotClose {
    /// Largest gap left, m.
    pub gap_m: f64,
}

/// Largest gap accepted after the search, m.
const LARGEST_GAP_M: f64 = 0.002;

/// Gauss–Newton on the control points: least change of joint angles that closes the loop.
pub fn close_path(chain: &Chain, stored: &JointPath) -> Result<JointPath, PathDoesNotClose> {
    let n = CONTROL_COUNT * N;
    let weights: Vec<Weights> =
        (0..SAMPLES).map(|i| Weights::at(END * i as f64 / (SAMPLES - 1) as f64)).collect();
    // The wish to stay near the stored path has a constant matrix: the Gram matrix of the basis.
    let mut gram = DMatrix::<f64>::zeros(CONTROL_COUNT, CONTROL_COUNT);
    for w in &weights {
        for a in 0..CONTROL_COUNT {
            for b in 0..CONTROL_COUNT {
                gram[(a, b)] += w.value[a] * w.value[b] / (NEAR_RAD * NEAR_RAD);
            }
        }
    }
    let mut path = stored.clone();
    let mut k = chain.tree.kinematics();
    let still = [0.0; N];
    for _ in 0..ITERATIONS {
        let mut H = DMatrix::<f64>::zeros(n, n);
        let mut g = DVector::<f64>::zeros(n);
        for a in 0..CONTROL_COUNT {
            for b in 0..CONTROL_COUNT {
                for j in 0..N {
                    let change = path.control_rad[b][j] - stored.control_rad[b][j];
                    H[(a * N + j, b * N + j)] += gram[(a, b)];
                    g[a * N + j] += gram[(a, b)] * change;
                }
            }
        }
        for w in &weights {
            let q = path.weighted(&w.value);
            chain.tree.forward_kinematics(&q, &still, DVec3::ZERO, &mut k);
            let (rows, _) = gap_rows(&chain.tree, &k, &chain.bottom_hand);
            let open = gap(&k, &chain.bottom_hand);
            for a in (0..CONTROL_COUNT).filter(|&a| w.value[a] != 0.0) {
                for i in 0..N {
                    let wa = w.value[a] / (GAP_M * GAP_M);
                    g[a * N + i] += wa * rows[i].dot(open);
                    for b in (0..=a).filter(|&b| w.value[b] != 0.0) {
                        for j in 0..N {
                            H[(a * N + i, b * N + j)] += wa * w.value[b] * rows[i].dot(rows[j]);
                        }
                    }
                }
            }
        }
        // Only the lower triangle is filled and read.
        let Some(factor) = H.cholesky() else { break };
        let step = factor.solve(&g);
        for a in 0..CONTROL_COUNT {
            for j in 0..N {
                path.control_rad[a][j] -= step[a * N + j];
            }
        }
        if step.amax() < 1e-12 {
            break;
        }
    }
    let gap_m = weights
        .iter()
        .map(|w| {
            chain.tree.forward_kinematics(&path.weighted(&w.value), &still, DVec3::ZERO, &mut k);
            gap(&k, &chain.bottom_hand).length()
        })
        .fold(0.0, f64::max);
    if gap_m > LARGEST_GAP_M { Err(PathDoesNotClose { gap_m }) } else { Ok(path) }
}

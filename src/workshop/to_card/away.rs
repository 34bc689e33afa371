//! How far a carved blade is from the one it is carved from.

use super::{EDGE_MOVE_M, HOLLOW_MOVE, SWELL_MOVE_M};
use crate::bat::shape::BatShape;

/// What is more in one blade than in another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Away {
    /// Thickest edge, m.
    pub edge_m: f64,
    /// Spine height, m.
    pub depth_m: f64,
    /// Height of the swell over the toe, m.
    pub swell_m: f64,
    /// Hollowing at the swell.
    pub hollow: f64,
}

impl Away {
    /// What `shape` has more than `own`.
    pub(super) fn of(shape: &BatShape, own: &BatShape) -> Self {
        let figures = |it: &BatShape| {
            let swell = it.blade.deepest();
            let (depth_m, hollow) = swell.map_or((0.0, 0.0), |it| (it.depth_m, it.hollow));
            [it.blade.thickest_edge_m(), depth_m, it.swell_from_toe_m(), hollow]
        };
        let (a, b) = (figures(shape), figures(own));
        let [edge_m, depth_m, swell_m, hollow] = core::array::from_fn(|k| a[k] - b[k]);
        Self { edge_m, depth_m, swell_m, hollow }
    }

    /// All of it together, in the steps by which other answers are tried; a step of the spine is one of the edges.
    pub(super) fn steps(&self) -> f64 {
        let steps = [
            self.edge_m / EDGE_MOVE_M,
            self.depth_m / EDGE_MOVE_M,
            self.swell_m / SWELL_MOVE_M,
            self.hollow / HOLLOW_MOVE,
        ];
        libm::sqrt(steps.iter().map(|it| it * it).sum())
    }
}

//! What a plan is asked for, on an even grid of normalised times.

use crate::frames::{DMat3, DVec3};
use crate::player::Strength;
use crate::player::joints::TOP_ARM;
use crate::stroke::Stroke;
use crate::stroke::joint_path::{END, Weights};
use crate::swing::chain::Chain;

/// Instants from the top of the backlift to the end of the path; the planned contact is one of them.
const SAMPLES: usize = 45;

/// What the stroke asks for at one normalised time, mirrored for a left-hander.
#[derive(Clone, Copy, Debug)]
pub struct Wish {
    /// Normalised time.
    pub s: f64,
    /// Weights of the control points.
    pub weights: Weights,
    /// Middle of the hands from the hips, m, W.
    pub grip_W: DVec3,
    /// Attitude of the bat.
    pub R_WB: DMat3,
    /// Hips' turn, spine's turn on them, bend, lean, rad.
    pub trunk_rad: [f64; TOP_ARM],
    /// Second derivative of the pelvis's place with respect to normalised time, m, W.
    pub pelvis2_W: DVec3,
}

/// A stroke asked of a player with a bat.
#[derive(Clone, Debug)]
pub struct Task<'a> {
    /// Player and bat.
    pub chain: &'a Chain,
    /// Torque capacities.
    pub strength: &'a Strength,
    /// Wishes along the stroke.
    pub wishes: Vec<Wish>,
}

impl<'a> Task<'a> {
    /// Scales the keys of a stroke to the player.
    pub fn new(chain: &'a Chain, strength: &'a Strength, stroke: &Stroke) -> Self {
        let curves = stroke.curves();
        let shoulders = DVec3::new(0.0, 0.0, chain.shoulder_above_hip_m);
        let wishes = (0..SAMPLES)
            .map(|i| {
                let s = END * i as f64 / (SAMPLES - 1) as f64;
                let (pose, [.., pelvis2]) = (curves.pose(s), curves.pelvis(s));
                let toe = chain.mirror.vector(pose.R_WB.x_axis);
                let face = chain.mirror.vector(pose.R_WB.z_axis);
                Wish {
                    s,
                    weights: Weights::at(s),
                    grip_W: shoulders + chain.mirror.vector(pose.grip) * chain.arm_m,
                    R_WB: DMat3::from_cols(toe, face.cross(toe), face),
                    trunk_rad: pose.trunk_rad,
                    pelvis2_W: chain.mirror.vector(pelvis2) * chain.hip_height_m,
                }
            })
            .collect();
        Self { chain, strength, wishes }
    }

    /// Normalised time between two wishes.
    pub fn spacing(&self) -> f64 {
        END / (SAMPLES - 1) as f64
    }
}

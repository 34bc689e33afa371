//! The player: segments, strength by joint, grip.

pub mod calibrated;
pub mod capacity;
pub mod endurance;
pub mod force_velocity;
mod from_reading;
pub mod grip;
pub mod grip_by_age;
pub mod growth;
pub mod joints;
pub mod pelvis;
pub mod posture;
pub mod segments;
pub mod usual;

pub use from_reading::{Unusual, player, unusual};

use crate::bat::notes::EstimatedFigure;
use crate::measurement::nets::{Calibration, Lasting};
use crate::measurement::person::{Handed, Sex};
use crate::uncertain::Uncertain;
use joints::{GROUP_COUNT, JOINT_COUNT};

/// A player ready to swing: everything measured or estimated, with what was estimated named.
#[derive(Clone, Debug, PartialEq)]
pub struct Player {
    /// Age, years.
    pub age_y: f64,
    /// Sex.
    pub sex: Sex,
    /// Batting hand.
    pub handed: Handed,
    /// Stature, m.
    pub stature_m: f64,
    /// Body mass, kg.
    pub mass_kg: Uncertain,
    /// Lengths, masses and inertias of trunk and arms.
    pub segments: Segments,
    /// Torque capacities of the joints, fresh.
    pub strength: Strength,
    /// Wrist crease to tip of the middle finger, m.
    pub hand_length_m: Uncertain,
    /// Greatest grip force of the top hand, N.
    pub grip_top_n: Uncertain,
    /// Greatest grip force of the bottom hand, N.
    pub grip_bottom_n: Uncertain,
    /// How much of what legs lose in an innings trunk and arms lose.
    pub lasting: Lasting,
    /// What readings in the nets said, if there were any; `strength` and `lasting` have it in them.
    pub calibration: Option<Calibration>,
    /// What was not measured, in words, with where the estimate comes from.
    pub estimated: Vec<EstimatedFigure>,
}

/// One rigid segment; its long axis runs from the proximal to the distal joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Segment {
    /// Length, m.
    pub length_m: f64,
    /// Mass, kg.
    pub mass_kg: f64,
    /// Centre of mass from the proximal joint, m.
    pub com_m: f64,
    /// Radii of gyration about the centre of mass: sagittal, transverse, longitudinal axis, m.
    pub gyration_m: [f64; 3],
}

/// Lengths, masses and inertias of the bodies that swing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Segments {
    /// Hip joints above the ground, standing, m.
    pub hip_height_m: f64,
    /// Shoulder joints above the ground, standing, m.
    pub shoulder_height_m: f64,
    /// Half the distance between the shoulder joints, m.
    pub shoulder_half_breadth_m: f64,
    /// Half the distance between the hip joints, m.
    pub hip_half_breadth_m: f64,
    /// Trunk with head and neck, from the hips upwards, the pelvis in it.
    pub trunk: Segment,
    /// The pelvis alone, from the hips to the navel.
    pub pelvis: Segment,
    /// Moment of inertia of the legs about the vertical per turn of the pelvis, kg m².
    pub legs_turning_kg_m2: f64,
    /// Upper arm.
    pub upper_arm: Segment,
    /// Forearm.
    pub forearm: Segment,
    /// Hand, from the wrist.
    pub hand: Segment,
    /// Wrist to the centre of the grip, m.
    pub wrist_to_grip_m: f64,
}

impl Segments {
    /// Shoulder to the centre of the grip with the arm straight, m: the stroke's unit of length.
    pub fn arm_m(&self) -> f64 {
        self.upper_arm.length_m + self.forearm.length_m + self.wrist_to_grip_m
    }

    /// The same with trunk, what turns with the pelvis, and arms heavier by this factor, of the same build.
    pub fn heavier(mut self, factor: f64) -> Self {
        let Self { trunk, pelvis, upper_arm, forearm, hand, .. } = &mut self;
        for part in [trunk, pelvis, upper_arm, forearm, hand] {
            part.mass_kg *= factor;
        }
        self.legs_turning_kg_m2 *= factor;
        self
    }
}

/// Greatest torques of the joints, in the order of [`joints::JOINTS`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    /// Isometric maximum in the positive direction, N m.
    pub positive_n_m: [f64; JOINT_COUNT],
    /// Isometric maximum in the negative direction, N m (a positive number).
    pub negative_n_m: [f64; JOINT_COUNT],
    /// Joint speed at which no torque is left, rad/s.
    pub max_rate_rad_s: [f64; JOINT_COUNT],
    /// One standard deviation of each group's capacity, as a share.
    pub relative_sd: [f64; GROUP_COUNT],
}

impl Strength {
    /// The same with each group's capacity multiplied by its factor.
    pub fn times(&self, factors: &[f64; GROUP_COUNT]) -> Self {
        let mut out = *self;
        for (j, joint) in joints::JOINTS.iter().enumerate() {
            out.positive_n_m[j] *= factors[joint.group as usize];
            out.negative_n_m[j] *= factors[joint.group as usize];
        }
        out
    }
}

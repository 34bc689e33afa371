//! The planned motion that the player follows, sampled once per player and bat, in normalised time.

use super::chain::Chain;
use crate::dynamics::tree::Kinematics;
use crate::frames::{DMat3, DVec3};
use crate::player::joints::JOINT_COUNT;
use crate::stroke::joint_path::{END, JointPath, Weights};
use crate::stroke::key_spline::KeySpline;

/// The plan at one normalised time; derivatives are with respect to normalised time. Positions are
/// relative to the moving pelvis.
#[derive(Clone, Copy, Debug)]
pub struct Sample {
    /// Joint angles, rad.
    pub q: [f64; JOINT_COUNT],
    /// First derivative of the joint angles.
    pub q1: [f64; JOINT_COUNT],
    /// Second derivative of the joint angles.
    pub q2: [f64; JOINT_COUNT],
    /// Contact point of the bat, m.
    pub point: DVec3,
    /// Its first derivative.
    pub point1: DVec3,
    /// Its second derivative.
    pub point2: DVec3,
    /// Attitude of the bat.
    pub R: DMat3,
    /// Angular velocity of the bat.
    pub omega: DVec3,
    /// Angular acceleration of the bat.
    pub alpha: DVec3,
    /// Pelvis displacement, m.
    pub pelvis: DVec3,
    /// Its first derivative.
    pub pelvis1: DVec3,
    /// Its second derivative.
    pub pelvis2: DVec3,
}

/// Accelerations of the plan, interpolated between samples.
#[derive(Clone, Copy, Debug)]
pub struct Accelerations {
    /// Second derivative of the joint angles.
    pub q2: [f64; JOINT_COUNT],
    /// Second derivative of the contact point.
    pub point2: DVec3,
    /// Angular acceleration of the bat.
    pub alpha: DVec3,
}

/// The plan on an even grid from 0 to the end of the path.
#[derive(Clone, Debug)]
pub struct Reference {
    /// Samples, `per_unit` to one unit of normalised time.
    pub samples: Vec<Sample>,
    /// Samples per unit of normalised time.
    pub per_unit: usize,
    /// Contact point on the bat, m from the top of the handle.
    pub contact_m: f64,
    /// Attitude of the bat in the bottom hand as that hand closes on it, at the top of the backlift.
    pub held_R: DMat3,
}

impl Reference {
    /// Samples the plan for a chain; `contact_m` is the contact point from the top of the handle.
    pub fn new(
        chain: &Chain,
        path: &JointPath,
        curves: &KeySpline,
        contact_m: f64,
        per_unit: usize,
    ) -> Self {
        let mut k = chain.tree.kinematics();
        let leg = |v: DVec3| chain.mirror.vector(v) * chain.hip_height_m;
        let count = (END * per_unit as f64).round() as usize;
        let samples: Vec<Sample> = (0..=count)
            .map(|i| {
                let s = i as f64 / per_unit as f64;
                let w = Weights::at(s);
                let joints = [&w.value, &w.first, &w.second].map(|it| path.weighted(it));
                let pelvis = curves.pelvis(s).map(leg);
                Sample::new(chain, contact_m, joints, pelvis, &mut k)
            })
            .collect();
        let start = path.weighted(&Weights::at(0.0).value);
        chain.tree.forward_kinematics(&start, &[0.0; JOINT_COUNT], DVec3::ZERO, &mut k);
        let held_R = k.R[chain.bottom_hand.link_b].transpose() * k.R[chain.link.bat];
        Self { samples, per_unit, contact_m, held_R }
    }

    /// Accelerations at any normalised time, by cubic interpolation, held beyond the end.
    pub fn accelerations(&self, s: f64) -> Accelerations {
        let last = self.samples.len() - 1;
        let x = (s * self.per_unit as f64).clamp(0.0, last as f64);
        let i = (x.floor() as usize).clamp(1, last - 2);
        let u = x - i as f64;
        let w = [
            -u * (u - 1.0) * (u - 2.0) / 6.0,
            (u + 1.0) * (u - 1.0) * (u - 2.0) / 2.0,
            -(u + 1.0) * u * (u - 2.0) / 2.0,
            (u + 1.0) * u * (u - 1.0) / 6.0,
        ];
        let mut out =
            Accelerations { q2: [0.0; JOINT_COUNT], point2: DVec3::ZERO, alpha: DVec3::ZERO };
        for (w, r) in w.iter().zip(&self.samples[i - 1..i + 3]) {
            for (o, q) in out.q2.iter_mut().zip(&r.q2) {
                *o += w * q;
            }
            out.point2 += r.point2 * *w;
            out.alpha += r.alpha * *w;
        }
        out
    }

    /// The planned contact.
    pub fn at_contact(&self) -> &Sample {
        &self.samples[self.per_unit]
    }
}

impl Sample {
    /// The plan where joint angles and the pelvis's displacement, m, with their first and second derivatives are
    /// these.
    pub(super) fn new(
        chain: &Chain,
        contact_m: f64,
        joints: [[f64; JOINT_COUNT]; 3],
        [pelvis, pelvis1, pelvis2]: [DVec3; 3],
        k: &mut Kinematics<JOINT_COUNT>,
    ) -> Self {
        let [q, q1, q2] = joints;
        chain.tree.forward_kinematics(&q, &q1, DVec3::ZERO, k);
        let bat = chain.link.bat;
        let point = chain.on_bat(k, contact_m);
        let mut point2 = k.acceleration_bias(bat, point);
        let mut alpha = k.alpha_bias[bat];
        for j in chain.tree.joints_towards_base(bat) {
            point2 += (k.axis_moment[j] + k.axis[j].cross(point)) * q2[j];
            alpha += k.axis[j] * q2[j];
        }
        Self {
            q,
            q1,
            q2,
            point,
            point1: k.velocity(bat, point),
            point2,
            R: k.R[bat],
            omega: k.omega[bat],
            alpha,
            pelvis,
            pelvis1,
            pelvis2,
        }
    }
}

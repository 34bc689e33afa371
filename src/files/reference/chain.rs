//! A chain of hinged bodies as the reference files describe it.

use serde::Deserialize;

/// Components of a vector as they stand in the file.
pub type Triple = [f64; 3];

/// One body. Frames are parallel to the world at q = 0.
#[derive(Clone, Debug, Deserialize)]
pub struct Link {
    /// Index of the link that carries it; −1 is the world.
    pub parent: i32,
    /// Link origin in the parent's frame, m.
    pub offset: Triple,
    /// Hinge through the link origin; `None` is welded.
    pub axis: Option<Triple>,
    /// Mass, kg.
    pub mass: f64,
    /// Centre of mass in the link's frame, m.
    pub com: Triple,
    /// Tensor elements xx, yy, zz, xy, xz, yz about the centre of mass, kg m².
    pub inertia_com: [f64; 6],
}

/// Two points that stay together; the multiplier is the force of link b on link a, in W.
#[derive(Clone, Debug, Deserialize)]
pub struct Loop {
    /// First link: the bat.
    pub link_a: usize,
    /// Point in its frame, m.
    pub point_a: Triple,
    /// Second link: the bottom hand.
    pub link_b: usize,
    /// Point in its frame, m.
    pub point_b: Triple,
}

/// Points and directions of the bat, in the frame of its link.
#[derive(Clone, Debug, Deserialize)]
pub struct BatPoints {
    /// Index of the bat's link.
    pub link: usize,
    /// Top of the handle, m.
    pub top_of_handle: Triple,
    /// Unit vector to the toe.
    pub toe_dir: Triple,
    /// Unit vector out of the hitting face.
    pub face_dir: Triple,
    /// Middle of the top hand's grip, m.
    pub top_hand: Triple,
    /// Toe, m.
    pub toe: Triple,
}

/// A chain.
#[derive(Clone, Debug, Deserialize)]
pub struct Chain {
    /// Free fall, m/s².
    pub gravity_m_s2: f64,
    /// Bodies, parents first.
    pub links: Vec<Link>,
    /// The bottom hand on the bat; none in an open chain.
    #[serde(rename = "loop")]
    pub closure: Option<Loop>,
    /// The bat.
    pub bat: BatPoints,
}

/// `τ = scale · Σ c_k (t/duration)^k − damping · v` of every joint, N m.
#[derive(Clone, Debug)]
pub struct TorqueLaw<'a> {
    /// Duration of the swing, s.
    pub duration_s: f64,
    /// Joint by joint, powers of t/duration from 0 up, N m.
    pub coefficients: &'a [Vec<f64>],
    /// One factor a joint.
    pub scale: Vec<f64>,
    /// Passive damping, N m s.
    pub damping_n_m_s_per_rad: Vec<f64>,
}

impl TorqueLaw<'_> {
    /// Torques at a time and joint rates, N m.
    pub fn at<const N: usize>(&self, t_s: f64, v_rad_s: &[f64; N]) -> [f64; N] {
        let u = t_s / self.duration_s;
        let mut torque = [0.0; N];
        let joints = self.coefficients.iter().zip(&self.scale).zip(&self.damping_n_m_s_per_rad);
        for ((out, v), ((powers, scale), damping)) in torque.iter_mut().zip(v_rad_s).zip(joints) {
            let drive = powers.iter().rev().fold(0.0, |sum, c| sum * u + c);
            *out = scale * drive - damping * v;
        }
        torque
    }
}

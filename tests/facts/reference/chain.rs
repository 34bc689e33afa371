//! A chain of hinged bodies as the reference files describe it.

use backlift::frames::{DMat3, DVec3, rotation};
use serde::Deserialize;

/// Components of a vector as they stand in the file.
pub type Triple = [f64; 3];

/// One body. Frames are parallel to the world at q = 0.
#[derive(Clone, Deserialize)]
pub struct Link {
    pub name: String,
    /// Index of the link that carries it; −1 is the world.
    pub parent: i32,
    /// Link origin in the parent's frame, m.
    pub offset: Triple,
    /// Hinge through the link origin; `None` is welded.
    pub axis: Option<Triple>,
    pub mass: f64,
    pub com: Triple,
    /// Tensor elements xx, yy, zz, xy, xz, yz about the centre of mass, kg m².
    pub inertia_com: [f64; 6],
}

/// Two points that stay together; the multiplier is the force of link b on link a, in W.
#[derive(Clone, Deserialize)]
pub struct Loop {
    pub link_a: usize,
    pub point_a: Triple,
    pub link_b: usize,
    pub point_b: Triple,
    pub rows: usize,
}

/// Points and directions of the bat, in the frame of its link.
#[derive(Clone, Deserialize)]
pub struct BatPoints {
    pub link: usize,
    pub top_of_handle: Triple,
    pub toe_dir: Triple,
    pub face_dir: Triple,
    pub top_hand: Triple,
    pub toe: Triple,
    pub contact: Option<Triple>,
}

#[derive(Clone, Deserialize)]
pub struct Chain {
    pub gravity_m_s2: f64,
    pub links: Vec<Link>,
    #[serde(rename = "loop")]
    pub closure: Option<Loop>,
    pub bat: BatPoints,
}

impl Chain {
    /// Origin and rotation of every link in W.
    pub fn place(&self, q_rad: &[f64]) -> Vec<(DVec3, DMat3)> {
        let mut angles = q_rad.iter();
        let mut placed: Vec<(DVec3, DMat3)> = Vec::new();
        for link in &self.links {
            let (p, R) = match usize::try_from(link.parent) {
                Ok(parent) => placed[parent],
                Err(_) => (DVec3::ZERO, DMat3::IDENTITY),
            };
            let turn = link.axis.map_or(DMat3::IDENTITY, |axis| {
                rotation(DVec3::from_array(axis), *angles.next().unwrap())
            });
            placed.push((p + R * DVec3::from_array(link.offset), R * turn));
        }
        assert!(angles.next().is_none(), "more angles than hinges");
        placed
    }

    /// A point of one link in W.
    pub fn point_W(&self, q_rad: &[f64], link: usize, point: Triple) -> DVec3 {
        let (p, R) = self.place(q_rad)[link];
        p + R * DVec3::from_array(point)
    }

    pub fn toe_W(&self, q_rad: &[f64]) -> DVec3 {
        self.point_W(q_rad, self.bat.link, self.bat.toe)
    }

    /// Distance between the bottom hand and its place on the bat, m; zero without a bottom hand.
    pub fn gap_m(&self, q_rad: &[f64]) -> f64 {
        self.closure.as_ref().map_or(0.0, |it| {
            let a = self.point_W(q_rad, it.link_a, it.point_a);
            a.distance(self.point_W(q_rad, it.link_b, it.point_b))
        })
    }
}

/// `τ = scale · Σ c_k (t/duration)^k − damping · v` of every joint, N·m.
pub struct TorqueLaw<'a> {
    pub duration_s: f64,
    pub coefficients: &'a [Vec<f64>],
    /// One factor a joint.
    pub scale: Vec<f64>,
    pub damping_n_m_s_per_rad: Vec<f64>,
}

impl TorqueLaw<'_> {
    pub fn at(&self, t_s: f64, v_rad_s: &[f64]) -> Vec<f64> {
        let u = t_s / self.duration_s;
        let joint = |j: usize| {
            let drive = self.coefficients[j].iter().rev().fold(0.0, |sum, c| sum * u + c);
            self.scale[j] * drive - self.damping_n_m_s_per_rad[j] * v_rad_s[j]
        };
        (0..v_rad_s.len()).map(joint).collect()
    }
}

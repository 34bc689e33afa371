//! Mass matrix by the composite-rigid-body algorithm, and the bias torques, in one backward pass.

use super::tree::{Kinematics, Tree};
use crate::frames::{DMat3, DVec3};

/// Mass matrix and bias torques of a tree at one state: `M a + bias = tau`.
#[derive(Clone, Debug)]
pub struct MassMatrix<const N: usize> {
    /// Symmetric; the lower triangle is filled.
    pub M: [[f64; N]; N],
    /// Torques that hold the accelerations at zero: gravity, Coriolis and gyroscopic terms.
    pub bias: [f64; N],
    composite: Vec<Composite>,
}

#[derive(Clone, Copy, Debug)]
struct Composite {
    mass_kg: f64,
    first_moment: DVec3,
    inertia: DMat3,
    couple: DVec3,
    force: DVec3,
}

impl Composite {
    const MASSLESS: Self = Self {
        mass_kg: 0.0,
        first_moment: DVec3::ZERO,
        inertia: DMat3::ZERO,
        couple: DVec3::ZERO,
        force: DVec3::ZERO,
    };
}

impl<const N: usize> MassMatrix<N> {
    /// Room for a tree's matrix.
    pub fn new(tree: &Tree<N>) -> Self {
        let composite = vec![Composite::MASSLESS; tree.links().len()];
        Self { M: [[0.0; N]; N], bias: [0.0; N], composite }
    }

    /// Fills matrix and bias for the state whose kinematics is `k`.
    pub fn fill(&mut self, tree: &Tree<N>, k: &Kinematics<N>) {
        let n = tree.links.len();
        for i in 0..n {
            let l = &tree.links[i];
            let c = &mut self.composite[i];
            if l.mass_kg == 0.0 {
                *c = Composite::MASSLESS;
                continue;
            }
            let R = k.R[i];
            let com = k.p[i] + R * l.com;
            c.mass_kg = l.mass_kg;
            c.first_moment = com * l.mass_kg;
            let outer = DMat3::from_cols(com * com.x, com * com.y, com * com.z);
            c.inertia = R * l.I_Com * R.transpose()
                + (DMat3::from_diagonal(DVec3::splat(com.length_squared())) - outer) * l.mass_kg;
            (c.couple, c.force) = tree.rate_of_momentum(k, i, k.alpha_bias[i], k.a_bias[i]);
        }
        for i in (0..n).rev() {
            let c = self.composite[i];
            if let Some(j) = tree.joint_of[i] {
                let (s, m) = (k.axis[j], k.axis_moment[j]);
                self.bias[j] = s.dot(c.couple) + m.dot(c.force);
                let couple = c.inertia * s + c.first_moment.cross(m);
                let force = m * c.mass_kg - c.first_moment.cross(s);
                let row = &mut self.M[j];
                row[..j].fill(0.0);
                row[j] = s.dot(couple) + m.dot(force);
                let mut below = tree.parent_joint[j];
                while let Some(l) = below {
                    row[l] = k.axis[l].dot(couple) + k.axis_moment[l].dot(force);
                    below = tree.parent_joint[l];
                }
            }
            if let Some(parent) = tree.links[i].parent {
                let up = &mut self.composite[parent];
                up.mass_kg += c.mass_kg;
                up.first_moment += c.first_moment;
                up.inertia += c.inertia;
                up.couple += c.couple;
                up.force += c.force;
            }
        }
    }
}

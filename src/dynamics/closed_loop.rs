//! A loop closed by a ball joint: accelerations as an affine function of the hinge torques.
//!
//! With `J` the three rows that move the gap, `M a + h = tau + Jᵀ λ` and `J a + J̇v = 0` give
//! `a = a_free + P tau`, `P = M⁻¹ − M⁻¹Jᵀ (J M⁻¹ Jᵀ)⁻¹ J M⁻¹`.

use super::mass_matrix::MassMatrix;
use super::symmetric::{cholesky, inverse, mirror};
use super::tree::{Kinematics, Tree};
use crate::frames::{DMat3, DVec3};
use multiversion::multiversion;

/// Two points that stay together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BallJoint {
    /// First link and the point fixed in it.
    pub link_a: usize,
    /// Point in the frame of the first link, m.
    pub point_a: DVec3,
    /// Second link and the point fixed in it.
    pub link_b: usize,
    /// Point in the frame of the second link, m.
    pub point_b: DVec3,
}

/// Accelerations of a closed chain as an affine function of the hinge torques.
#[derive(Clone, Debug)]
pub struct ClosedChain<const N: usize> {
    /// Accelerations without torque, rad/s².
    pub a_free: [f64; N],
    /// Accelerations per unit of torque; symmetric, both triangles filled.
    pub P: [[f64; N]; N],
    lambda_free: DVec3,
    lambda_per_torque: [DVec3; N],
}

/// Rows of the gap's velocity, one vector per hinge, and the velocity-dependent rest of its acceleration.
pub fn gap_rows<const N: usize>(
    tree: &Tree<N>,
    k: &Kinematics<N>,
    ball: &BallJoint,
) -> ([DVec3; N], DVec3) {
    let pa = k.point(ball.link_a, ball.point_a);
    let pb = k.point(ball.link_b, ball.point_b);
    let mut rows = [DVec3::ZERO; N];
    for j in tree.joints_towards_base(ball.link_a) {
        rows[j] += k.axis_moment[j] + k.axis[j].cross(pa);
    }
    for j in tree.joints_towards_base(ball.link_b) {
        rows[j] -= k.axis_moment[j] + k.axis[j].cross(pb);
    }
    (rows, k.acceleration_bias(ball.link_a, pa) - k.acceleration_bias(ball.link_b, pb))
}

/// Distance between the two points that should coincide, from b to a.
pub fn gap<const N: usize>(k: &Kinematics<N>, ball: &BallJoint) -> DVec3 {
    k.point(ball.link_a, ball.point_a) - k.point(ball.link_b, ball.point_b)
}

impl<const N: usize> ClosedChain<N> {
    /// Solves for the chain at the state of `k` and `m`. `drift_rate_1_s` pulls a gap that rounding
    /// and the step have opened shut again (Baumgarte; zero for none).
    pub fn new(
        tree: &Tree<N>,
        k: &Kinematics<N>,
        m: &MassMatrix<N>,
        ball: Option<&BallJoint>,
        drift_rate_1_s: f64,
    ) -> Self {
        let mut it = Self {
            a_free: [0.0; N],
            P: [[0.0; N]; N],
            lambda_free: DVec3::ZERO,
            lambda_per_torque: [DVec3::ZERO; N],
        };
        inverse_mass(&m.M, &mut it.P);
        for (a, row) in it.a_free.iter_mut().zip(&it.P) {
            *a = -row.iter().zip(&m.bias).map(|(x, h)| x * h).sum::<f64>();
        }
        let Some(ball) = ball else { return it };
        let (J, mut gap_bias) = gap_rows(tree, k, ball);
        if drift_rate_1_s > 0.0 {
            let va = k.velocity(ball.link_a, k.point(ball.link_a, ball.point_a));
            let vb = k.velocity(ball.link_b, k.point(ball.link_b, ball.point_b));
            gap_bias +=
                2.0 * drift_rate_1_s * (va - vb) + drift_rate_1_s * drift_rate_1_s * gap(k, ball);
        }
        let mut MJ = [DVec3::ZERO; N];
        for (out, row) in MJ.iter_mut().zip(&it.P) {
            *out = row.iter().zip(&J).fold(DVec3::ZERO, |s, (x, j)| s + *j * *x);
        }
        let mut S = DMat3::ZERO;
        for (j, mj) in J.iter().zip(&MJ) {
            S += DMat3::from_cols(*mj * j.x, *mj * j.y, *mj * j.z);
        }
        let S_inverse = S.inverse();
        let gap_free = J.iter().zip(&it.a_free).fold(gap_bias, |s, (j, a)| s + *j * *a);
        it.lambda_free = -(S_inverse * gap_free);
        for (out, mj) in it.lambda_per_torque.iter_mut().zip(&MJ) {
            *out = -(S_inverse * *mj);
        }
        for (a, mj) in it.a_free.iter_mut().zip(&MJ) {
            *a += mj.dot(it.lambda_free);
        }
        add_products(&mut it.P, &MJ, &it.lambda_per_torque);
        it
    }

    /// Hinge accelerations under torques `tau`.
    pub fn accelerations(&self, tau: &[f64; N]) -> [f64; N] {
        let mut a = self.a_free;
        for (out, row) in a.iter_mut().zip(&self.P) {
            *out += row.iter().zip(tau).map(|(p, t)| p * t).sum::<f64>();
        }
        a
    }

    /// Force on link a at the ball joint under torques `tau`, N.
    pub fn joint_force_n(&self, tau: &[f64; N]) -> DVec3 {
        self.lambda_per_torque.iter().zip(tau).fold(self.lambda_free, |s, (l, t)| s + *l * *t)
    }
}

/// Puts the inverse of a mass matrix, of which the lower triangle is filled, into `out`.
#[multiversion(targets("x86_64+avx2", "x86_64+avx"))]
fn inverse_mass<const N: usize>(M: &[[f64; N]; N], out: &mut [[f64; N]; N]) {
    let mut u = *M;
    mirror(&mut u);
    cholesky(&mut u);
    inverse(&u, out);
}

/// Adds `a[i] · b[j]` to each element.
#[multiversion(targets("x86_64+avx2", "x86_64+avx"))]
fn add_products<const N: usize>(P: &mut [[f64; N]; N], a: &[DVec3; N], b: &[DVec3; N]) {
    let (x, y, z) = (b.map(|it| it.x), b.map(|it| it.y), b.map(|it| it.z));
    for (row, a) in P.iter_mut().zip(a) {
        for (j, p) in row.iter_mut().enumerate() {
            *p += a.x * x[j] + a.y * y[j] + a.z * z[j];
        }
    }
}

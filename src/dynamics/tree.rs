//! The tree: links, hinges, kinematics, and inverse dynamics by recursive Newton–Euler.

use crate::frames::{DMat3, DVec3, rotation};

/// One link. Its frame sits at `offset` in the parent's frame, turned by `R_rest`, and then by the
/// hinge angle about `axis`; a link without an axis is fixed to its parent. Massless links are fine.
#[derive(Clone, Debug, PartialEq)]
pub struct Link {
    /// Index of the parent link, before this one in the list; none for the base.
    pub parent: Option<usize>,
    /// Origin of this link's frame in the parent's frame, m.
    pub offset: DVec3,
    /// Attitude of this link's frame in the parent's at hinge angle zero.
    pub R_rest: DMat3,
    /// Unit vector of the hinge in this link's frame.
    pub axis: Option<DVec3>,
    /// Mass, kg.
    pub mass_kg: f64,
    /// Centre of mass in this link's frame, m.
    pub com: DVec3,
    /// Tensor of inertia about the centre of mass in this link's axes, kg m².
    pub I_Com: DMat3,
}

/// Why a list of links is not a tree of `N` hinges.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum TreeFault {
    /// A parent comes after its child.
    #[error("link {link} names link {parent} as its parent, which does not come before it")]
    ParentAfterChild {
        /// The child.
        link: usize,
        /// The parent it names.
        parent: usize,
    },
    /// Wrong number of hinges.
    #[error("{found} links have a hinge, {expected} were expected")]
    HingeCount {
        /// Hinges found.
        found: usize,
        /// Hinges expected.
        expected: usize,
    },
}

/// A tree of links with `N` hinges.
#[derive(Clone, Debug)]
pub struct Tree<const N: usize> {
    pub(super) links: Vec<Link>,
    /// Hinge of each link.
    pub(super) joint_of: Vec<Option<usize>>,
    /// Nearest hinge below each link, its own included.
    pub(super) nearest_joint: Vec<Option<usize>>,
    /// Nearest hinge below each hinge.
    pub(super) parent_joint: [Option<usize>; N],
}

/// Positions, velocities and velocity-dependent accelerations of every link at one state.
#[derive(Clone, Debug)]
pub struct Kinematics<const N: usize> {
    /// Attitude of each link.
    pub R: Vec<DMat3>,
    /// Origin of each link, m.
    pub p: Vec<DVec3>,
    /// Angular velocity of each link, rad/s.
    pub omega: Vec<DVec3>,
    /// Velocity of the point of each link that is passing the origin, m/s.
    pub v_origin: Vec<DVec3>,
    /// Angular acceleration of each link with the hinge accelerations at zero, rad/s².
    pub alpha_bias: Vec<DVec3>,
    /// Linear (spatial) acceleration at the origin with the hinge accelerations at zero, m/s².
    pub a_bias: Vec<DVec3>,
    /// Hinge axes.
    pub axis: [DVec3; N],
    /// Moments of the hinge axes about the origin: velocity of the origin per unit of hinge rate.
    pub axis_moment: [DVec3; N],
}

impl<const N: usize> Tree<N> {
    /// Checks the list and indexes it.
    pub fn new(links: Vec<Link>) -> Result<Self, TreeFault> {
        let mut joint_of = Vec::with_capacity(links.len());
        let mut nearest_joint: Vec<Option<usize>> = Vec::with_capacity(links.len());
        let mut parent_joint = [None; N];
        let mut count = 0;
        for (i, link) in links.iter().enumerate() {
            let below = match link.parent {
                Some(parent) if parent >= i => {
                    return Err(TreeFault::ParentAfterChild { link: i, parent });
                }
                Some(parent) => nearest_joint[parent],
                None => None,
            };
            if link.axis.is_some() {
                if count < N {
                    parent_joint[count] = below;
                }
                joint_of.push(Some(count));
                nearest_joint.push(Some(count));
                count += 1;
            } else {
                joint_of.push(None);
                nearest_joint.push(below);
            }
        }
        if count != N {
            return Err(TreeFault::HingeCount { found: count, expected: N });
        }
        Ok(Self { links, joint_of, nearest_joint, parent_joint })
    }

    /// The links, parents first.
    pub fn links(&self) -> &[Link] {
        &self.links
    }

    /// Hinges that move a link, from the link towards the base.
    pub fn joints_towards_base(&self, link: usize) -> impl Iterator<Item = usize> + '_ {
        std::iter::successors(self.nearest_joint[link], |&j| self.parent_joint[j])
    }

    /// Room for the kinematics of this tree.
    pub fn kinematics(&self) -> Kinematics<N> {
        let n = self.links.len();
        Kinematics {
            R: vec![DMat3::IDENTITY; n],
            p: vec![DVec3::ZERO; n],
            omega: vec![DVec3::ZERO; n],
            v_origin: vec![DVec3::ZERO; n],
            alpha_bias: vec![DVec3::ZERO; n],
            a_bias: vec![DVec3::ZERO; n],
            axis: [DVec3::ZERO; N],
            axis_moment: [DVec3::ZERO; N],
        }
    }

    /// Forward pass: fills `k` for hinge angles `q` and rates `v`; the base accelerates by `a_base`
    /// (gravity enters as a base accelerating upwards at g).
    pub fn forward_kinematics(
        &self,
        q: &[f64; N],
        v: &[f64; N],
        a_base: DVec3,
        k: &mut Kinematics<N>,
    ) {
        for (i, link) in self.links.iter().enumerate() {
            let (Rp, pp, wp, vp, alp, ap) = match link.parent {
                Some(l) => {
                    (k.R[l], k.p[l], k.omega[l], k.v_origin[l], k.alpha_bias[l], k.a_bias[l])
                }
                None => {
                    (DMat3::IDENTITY, DVec3::ZERO, DVec3::ZERO, DVec3::ZERO, DVec3::ZERO, a_base)
                }
            };
            let p = pp + Rp * link.offset;
            let mut R = Rp * link.R_rest;
            let (mut w, mut vo, mut al, mut a) = (wp, vp, alp, ap);
            if let (Some(axis), Some(j)) = (link.axis, self.joint_of[i]) {
                let s = R * axis;
                let m = p.cross(s);
                k.axis[j] = s;
                k.axis_moment[j] = m;
                al += wp.cross(s) * v[j];
                a += (wp.cross(m) + vp.cross(s)) * v[j];
                w += s * v[j];
                vo += m * v[j];
                R *= rotation(axis, q[j]);
            }
            k.R[i] = R;
            k.p[i] = p;
            k.omega[i] = w;
            k.v_origin[i] = vo;
            k.alpha_bias[i] = al;
            k.a_bias[i] = a;
        }
    }

    /// Inverse dynamics by recursive Newton–Euler: the hinge torques that give accelerations `a`
    /// at the state whose kinematics is `k` (gravity included through its base acceleration).
    pub fn inverse_dynamics(&self, k: &Kinematics<N>, a: &[f64; N]) -> [f64; N] {
        let n = self.links.len();
        let mut force = vec![(DVec3::ZERO, DVec3::ZERO); n];
        let mut acc = vec![(DVec3::ZERO, DVec3::ZERO); n];
        for i in 0..n {
            let (mut al, mut lin) =
                self.links[i].parent.map_or((DVec3::ZERO, DVec3::ZERO), |l| acc[l]);
            if let Some(j) = self.joint_of[i] {
                al += k.axis[j] * a[j];
                lin += k.axis_moment[j] * a[j];
            }
            acc[i] = (al, lin);
            force[i] = self.rate_of_momentum(k, i, k.alpha_bias[i] + al, k.a_bias[i] + lin);
        }
        let mut tau = [0.0; N];
        for i in (0..n).rev() {
            let (couple, f) = force[i];
            if let Some(j) = self.joint_of[i] {
                tau[j] = k.axis[j].dot(couple) + k.axis_moment[j].dot(f);
            }
            if let Some(l) = self.links[i].parent {
                force[l].0 += couple;
                force[l].1 += f;
            }
        }
        tau
    }

    /// Rate of change of a link's momentum about the origin: (angular, linear), for its spatial
    /// acceleration (`alpha`, `a` at the origin).
    pub(super) fn rate_of_momentum(
        &self,
        k: &Kinematics<N>,
        link: usize,
        alpha: DVec3,
        a: DVec3,
    ) -> (DVec3, DVec3) {
        let l = &self.links[link];
        if l.mass_kg == 0.0 {
            return (DVec3::ZERO, DVec3::ZERO);
        }
        let (R, w, v) = (k.R[link], k.omega[link], k.v_origin[link]);
        let c = k.p[link] + R * l.com;
        let v_com = v + w.cross(c);
        let a_com = a + alpha.cross(c) + w.cross(v_com);
        let f = l.mass_kg * a_com;
        let about_com = |x: DVec3| R * (l.I_Com * (R.transpose() * x));
        let couple = about_com(alpha) + w.cross(about_com(w));
        (couple + c.cross(f), f)
    }

    /// Kinetic and potential energy, J; `g` is the acceleration of free fall, m/s² (towards −z).
    pub fn energy_j(&self, k: &Kinematics<N>, g: f64) -> (f64, f64) {
        let mut kinetic = 0.0;
        let mut potential = 0.0;
        for (i, l) in self.links.iter().enumerate() {
            let c = k.p[i] + k.R[i] * l.com;
            let v = k.v_origin[i] + k.omega[i].cross(c);
            let w = k.R[i].transpose() * k.omega[i];
            kinetic += 0.5 * (l.mass_kg * v.length_squared() + w.dot(l.I_Com * w));
            potential += l.mass_kg * g * c.z;
        }
        (kinetic, potential)
    }
}

impl<const N: usize> Kinematics<N> {
    /// Position of a point fixed in a link.
    pub fn point(&self, link: usize, p_in_link: DVec3) -> DVec3 {
        self.p[link] + self.R[link] * p_in_link
    }
    /// Velocity of the point of a link now at `p`.
    pub fn velocity(&self, link: usize, p: DVec3) -> DVec3 {
        self.v_origin[link] + self.omega[link].cross(p)
    }
    /// Acceleration of the point of a link now at `p`, with the hinge accelerations at zero; with
    /// the base's own acceleration in it.
    pub fn acceleration_bias(&self, link: usize, p: DVec3) -> DVec3 {
        self.a_bias[link]
            + self.alpha_bias[link].cross(p)
            + self.omega[link].cross(self.velocity(link, p))
    }
}

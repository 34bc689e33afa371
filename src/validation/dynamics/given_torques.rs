//! A chain of the reference files in our own module, swung by given torques with the classical
//! Runge–Kutta rule, the torque law evaluated inside each stage.

use crate::dynamics::closed_loop::{BallJoint, ClosedChain};
use crate::dynamics::mass_matrix::MassMatrix;
use crate::dynamics::tree::{Kinematics, Link, Tree, TreeFault};
use crate::files::reference::chain::Chain;
use crate::frames::{DMat3, DVec3};

/// Steps of the product's swings from the top of the backlift to the planned contact.
pub const PRODUCT_STEPS: usize = crate::swing::run::STEPS;
/// The product's rate at which a gap is pulled shut, 1/s.
const DRIFT_RATE_1_S: f64 = 50.0;

/// A figure for each joint.
pub fn each_joint<const N: usize>(figures: &[f64]) -> Result<[f64; N], String> {
    let found = figures.len();
    let fault = || format!("a reference file gives {found} figures where its chain has {N} joints");
    figures.try_into().map_err(|_| fault())
}

/// A chain to be swung.
#[derive(Clone, Debug)]
pub struct Given<const N: usize> {
    pub tree: Tree<N>,
    /// The bottom hand on the bat, if there is one.
    pub ball: Option<BallJoint>,
    /// Free fall, m/s².
    pub gravity_m_s2: f64,
    /// The bat's link.
    pub bat: usize,
    /// The toe in the bat's link, m.
    pub toe: DVec3,
}

/// Joint angles, rad, and rates, rad/s.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State<const N: usize> {
    pub q: [f64; N],
    pub v: [f64; N],
}

impl<const N: usize> State<N> {
    pub fn new(q: &[f64], v: &[f64]) -> Result<Self, String> {
        Ok(Self { q: each_joint(q)?, v: each_joint(v)? })
    }

    fn moved(&self, rate: &Self, dt: f64) -> Self {
        Self {
            q: core::array::from_fn(|j| self.q[j] + dt * rate.q[j]),
            v: core::array::from_fn(|j| self.v[j] + dt * rate.v[j]),
        }
    }
}

/// Tensor from its elements xx, yy, zz, xy, xz, yz.
fn tensor([xx, yy, zz, xy, xz, yz]: [f64; 6]) -> DMat3 {
    DMat3::from_cols(DVec3::new(xx, xy, xz), DVec3::new(xy, yy, yz), DVec3::new(xz, yz, zz))
}

/// The bodies of a file's chain as ours.
pub fn links(chain: &Chain) -> Vec<Link> {
    let link = |it: &crate::files::reference::chain::Link| Link {
        parent: usize::try_from(it.parent).ok(),
        offset: DVec3::from_array(it.offset),
        R_rest: DMat3::IDENTITY,
        axis: it.axis.map(DVec3::from_array),
        mass_kg: it.mass,
        com: DVec3::from_array(it.com),
        I_Com: tensor(it.inertia_com),
    };
    chain.links.iter().map(link).collect()
}

impl<const N: usize> Given<N> {
    pub fn new(chain: &Chain) -> Result<Self, TreeFault> {
        let ball = chain.closure.as_ref().map(|it| BallJoint {
            link_a: it.link_a,
            point_a: DVec3::from_array(it.point_a),
            link_b: it.link_b,
            point_b: DVec3::from_array(it.point_b),
        });
        Ok(Self {
            tree: Tree::new(links(chain))?,
            ball,
            gravity_m_s2: chain.gravity_m_s2,
            bat: chain.bat.link,
            toe: DVec3::from_array(chain.bat.toe),
        })
    }

    /// Kinematics of a state, gravity as a base that accelerates upwards.
    pub fn kinematics(&self, s: &State<N>) -> Kinematics<N> {
        let mut k = self.tree.kinematics();
        self.tree.forward_kinematics(&s.q, &s.v, DVec3::Z * self.gravity_m_s2, &mut k);
        k
    }

    /// What torques do at that state.
    pub fn closed(&self, k: &Kinematics<N>, drift_rate_1_s: f64) -> ClosedChain<N> {
        let mut m = MassMatrix::new(&self.tree);
        m.fill(&self.tree, k);
        ClosedChain::new(&self.tree, k, &m, self.ball.as_ref(), drift_rate_1_s)
    }

    /// Place, m, and velocity of the toe, m/s.
    pub fn toe(&self, s: &State<N>) -> (DVec3, DVec3) {
        let k = self.kinematics(s);
        let p = k.point(self.bat, self.toe);
        (p, k.velocity(self.bat, p))
    }

    /// Kinetic and potential energy, J.
    pub fn energy_j(&self, s: &State<N>) -> (f64, f64) {
        self.tree.energy_j(&self.kinematics(s), self.gravity_m_s2)
    }

    /// Swings in even steps under torques that hang on time, angles and rates; `see` gets the count of
    /// steps taken and the state, the start included.
    pub fn swing(
        &self,
        from: State<N>,
        duration_s: f64,
        steps: usize,
        law: impl Fn(f64, &State<N>) -> [f64; N],
        mut see: impl FnMut(usize, &State<N>),
    ) -> State<N> {
        let dt = duration_s / steps as f64;
        let rate = |t: f64, s: &State<N>| {
            let closed = self.closed(&self.kinematics(s), DRIFT_RATE_1_S);
            State { q: s.v, v: closed.accelerations(&law(t, s)) }
        };
        let mut s = from;
        for i in 0..steps {
            see(i, &s);
            let t = i as f64 * dt;
            let k1 = rate(t, &s);
            let k2 = rate(t + 0.5 * dt, &s.moved(&k1, 0.5 * dt));
            let k3 = rate(t + 0.5 * dt, &s.moved(&k2, 0.5 * dt));
            let k4 = rate(t + dt, &s.moved(&k3, dt));
            for (k, w) in [(k1, 1.0), (k2, 2.0), (k3, 2.0), (k4, 1.0)] {
                s = s.moved(&k, w * dt / 6.0);
            }
        }
        see(steps, &s);
        s
    }
}

/// Largest length of `a − b` over the samples, as a share of the longest `b`; not a number if they
/// are not as many.
pub fn off_by_share(a: &[DVec3], b: &[[f64; 3]]) -> f64 {
    if a.len() != b.len() {
        return f64::NAN;
    }
    let b = || b.iter().map(|v| DVec3::from_array(*v));
    let longest = b().map(DVec3::length).fold(0.0, f64::max);
    let off = a.iter().zip(b()).map(|(a, b)| a.distance(b)).fold(0.0, f64::max);
    off / longest
}

/// The last of a file's vectors, as a length.
pub fn last_length(vectors: &[[f64; 3]]) -> f64 {
    vectors.last().map_or(f64::NAN, |it| DVec3::from_array(*it).length())
}

//! A chain of the reference files in our own module, swung by given torques with the classical
//! Runge–Kutta rule, the torque law evaluated inside each stage.

use backlift::dynamics::closed_loop::{BallJoint, ClosedChain};
use backlift::dynamics::mass_matrix::MassMatrix;
use backlift::dynamics::tree::{Kinematics, Link, Tree};
use backlift::frames::{DMat3, DVec3};

use crate::reference::chain::{Chain, TorqueLaw};

/// Steps of the product's swings from the top of the backlift to the planned contact.
pub const PRODUCT_STEPS: usize = backlift::swing::run::STEPS;
/// The product's rate at which a gap is pulled shut, 1/s.
pub const DRIFT_RATE_1_S: f64 = 50.0;

pub struct Given<const N: usize> {
    pub tree: Tree<N>,
    pub ball: Option<BallJoint>,
    pub gravity_m_s2: f64,
    pub bat: usize,
    pub toe: DVec3,
}

#[derive(Clone, Copy)]
pub struct State<const N: usize> {
    pub q: [f64; N],
    pub v: [f64; N],
}

impl<const N: usize> State<N> {
    pub fn new(q: &[f64], v: &[f64]) -> Self {
        Self { q: q.try_into().unwrap(), v: v.try_into().unwrap() }
    }

    fn moved(&self, rate: &Self, dt: f64) -> Self {
        Self {
            q: std::array::from_fn(|j| self.q[j] + dt * rate.q[j]),
            v: std::array::from_fn(|j| self.v[j] + dt * rate.v[j]),
        }
    }
}

/// Tensor from its elements xx, yy, zz, xy, xz, yz.
pub fn tensor([xx, yy, zz, xy, xz, yz]: [f64; 6]) -> DMat3 {
    DMat3::from_cols(DVec3::new(xx, xy, xz), DVec3::new(xy, yy, yz), DVec3::new(xz, yz, zz))
}

pub fn links(chain: &Chain) -> Vec<Link> {
    let link = |it: &crate::reference::chain::Link| Link {
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

pub fn torque<const N: usize>(law: &TorqueLaw<'_>, t_s: f64, v: &[f64; N]) -> [f64; N] {
    law.at(t_s, v).try_into().unwrap()
}

impl<const N: usize> Given<N> {
    pub fn new(chain: &Chain) -> Self {
        let ball = chain.closure.as_ref().map(|it| BallJoint {
            link_a: it.link_a,
            point_a: DVec3::from_array(it.point_a),
            link_b: it.link_b,
            point_b: DVec3::from_array(it.point_b),
        });
        Self {
            tree: Tree::new(links(chain)).unwrap(),
            ball,
            gravity_m_s2: chain.gravity_m_s2,
            bat: chain.bat.link,
            toe: DVec3::from_array(chain.bat.toe),
        }
    }

    /// Kinematics of a state, gravity as a base that accelerates upwards.
    pub fn kinematics(&self, s: &State<N>) -> Kinematics<N> {
        let mut k = self.tree.kinematics();
        self.tree.forward_kinematics(&s.q, &s.v, DVec3::Z * self.gravity_m_s2, &mut k);
        k
    }

    pub fn closed(&self, k: &Kinematics<N>, drift_rate_1_s: f64) -> ClosedChain<N> {
        let mut m = MassMatrix::new(&self.tree);
        m.fill(&self.tree, k);
        ClosedChain::new(&self.tree, k, &m, self.ball.as_ref(), drift_rate_1_s)
    }

    pub fn toe(&self, s: &State<N>) -> (DVec3, DVec3) {
        let k = self.kinematics(s);
        let p = k.point(self.bat, self.toe);
        (p, k.velocity(self.bat, p))
    }

    pub fn energy_j(&self, s: &State<N>) -> (f64, f64) {
        self.tree.energy_j(&self.kinematics(s), self.gravity_m_s2)
    }

    /// Swings in even steps; `see` gets the count of steps taken and the state, the start included.
    pub fn swing(
        &self,
        from: State<N>,
        duration_s: f64,
        steps: usize,
        law: impl Fn(f64, &[f64; N]) -> [f64; N],
        mut see: impl FnMut(usize, &State<N>),
    ) -> State<N> {
        let dt = duration_s / steps as f64;
        let rate = |t: f64, s: &State<N>| {
            let closed = self.closed(&self.kinematics(s), DRIFT_RATE_1_S);
            State { q: s.v, v: closed.accelerations(&law(t, &s.v)) }
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

/// Largest length of `a − b` over the samples, as a share of the longest `b`.
pub fn off_by_share(a: &[DVec3], b: &[[f64; 3]]) -> f64 {
    assert_eq!(a.len(), b.len());
    let longest = b.iter().map(|v| DVec3::from_array(*v).length()).fold(0.0, f64::max);
    let off = a.iter().zip(b).map(|(a, b)| a.distance(DVec3::from_array(*b))).fold(0.0, f64::max);
    off / longest
}

//! The law: how the player follows the plan. The wanted accelerations of the bat, and of the joints as a
//! lesser wish, met as nearly as limited torques allow, all joints at once.
//!
//! Each wish is `a_ref + 2w(v_ref − v) + w²(x_ref − x)`, w the bandwidth, the reference read a preview ahead.
//! Its objective, over the joint torques and the bottom hand's couple τ, with the weights of [`Control`]:
//!
//! ```text
//! min  |bat point|² + 0.35² |bat turn|² + 0.06² |joints|² + |τ / capacity|²  −  0.1 Σ ln((hi − τ)(τ − lo))
//! ```
//!
//! `lo` and `hi` are what torques can reach within the preview: activation moves with 30 ms, capacity is isometric
//! strength × Hill factor × what fatigue leaves of the group. The box is over a fixed preview, not over a step, or the
//! law would not converge as the step shrinks. Joints clamped one by one will not do: a spent wrist breaks the balance
//! of the loop and the face rolls, by up to 56°.

use super::activation::{ACTIVATION_TIME_S, Available};
use super::barrier;
use super::bottom_grip;
use super::chain::Chain;
use super::reference::{Accelerations, Sample};
use crate::dynamics::closed_loop::ClosedChain;
use crate::dynamics::mass_matrix::MassMatrix;
use crate::dynamics::symmetric::{add_scaled, mirror};
use crate::dynamics::tree::Kinematics;
use crate::frames::{DMat3, DVec3, rotation_vector};
use crate::player::Strength;
use crate::player::joints::JOINT_COUNT;
use multiversion::multiversion;

const N: usize = JOINT_COUNT;

/// Constants of the law; the values are those the pilot study found to give a smooth, monotone
/// fastest swing (assumption of this project, robustness in the study's range).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Control {
    /// How far ahead torque can be called up, s.
    pub preview_s: f64,
    /// Time constant of the rise and fall of torque, s.
    pub activation_time_s: f64,
    /// Weight of the wall round the capacities.
    pub barrier: f64,
    /// Bandwidth with which errors are corrected, 1/s.
    pub bandwidth_1_s: f64,
    /// Weight of the bat point's acceleration, per m/s².
    pub weight_position: f64,
    /// Weight of the bat's angular acceleration, per rad/s².
    pub weight_rotation: f64,
    /// Weight of the joints' accelerations, per rad/s².
    pub weight_posture: f64,
    /// Weight of effort (torque over capacity, couple over what the grip holds).
    pub weight_effort: f64,
    /// Weight of the handle's angular acceleration in the bottom hand, per rad/s².
    pub weight_hold: f64,
}

impl Default for Control {
    fn default() -> Self {
        Self {
            preview_s: 0.003,
            activation_time_s: ACTIVATION_TIME_S,
            barrier: 0.1,
            bandwidth_1_s: 25.0,
            weight_position: 1.0,
            weight_rotation: 0.35,
            weight_posture: 0.06,
            weight_effort: 1.0,
            weight_hold: 0.35,
        }
    }
}

/// The plan at one instant, in seconds.
#[derive(Clone, Copy, Debug)]
pub struct Wanted<'a> {
    /// Plan now.
    pub now: &'a Sample,
    /// Accelerations of the plan a preview ahead.
    pub ahead: Accelerations,
    /// Stroke time, s.
    pub stroke_time_s: f64,
}

/// State-dependent terms at one instant.
pub struct Instant<'a> {
    /// Chain.
    pub chain: &'a Chain,
    /// Kinematics of the present state.
    pub k: &'a Kinematics<N>,
    /// Accelerations as a function of the torques.
    pub closed: &'a ClosedChain<N>,
    /// Acceleration of the base, gravity included, m/s².
    pub a_base: DVec3,
    /// Joint angles and rates.
    pub q: &'a [f64; N],
    /// Joint rates, rad/s.
    pub v: &'a [f64; N],
    /// Contact point from the top of the handle, m.
    pub contact_m: f64,
    /// Greatest couples of the bottom hand, N m, in the bat's axes.
    pub couple_limit_n_m: [f64; 3],
    /// Attitude of the bat in the bottom hand that this hand holds on to.
    pub held_R: &'a DMat3,
}

/// Which torques can be reached.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reach {
    /// From the present activation, within the preview.
    FromActivation,
    /// All that the joints can give: at the start of a stroke, prepared in the backlift.
    Full,
}

/// Room for the mass matrix and the last solution, reused from instant to instant.
#[derive(Clone, Debug)]
pub struct Law {
    /// Constants.
    pub control: Control,
    /// Where in the box the last torques lay: where the next search starts.
    place: [f64; N],
    /// The same with the bottom hand's couple.
    place_holding: [f64; HOLDING],
}

/// What the player calls for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Called {
    /// Joint torques, N m.
    pub torque_n_m: [f64; N],
    /// Couple of the bottom hand on the bat about the bat's axes, as a share of what its grip holds.
    pub couple_share: [f64; 3],
}

/// Joint torques and the three components of the bottom hand's couple.
const HOLDING: usize = N + 3;

impl Law {
    /// A law with its constants.
    pub fn new(control: Control) -> Self {
        Self { control, place: [0.5; N], place_holding: [0.5; HOLDING] }
    }

    /// Torques and couple the player calls for.
    pub fn target(
        &mut self,
        it: &Instant<'_>,
        wanted: &Wanted<'_>,
        strength: &Strength,
        available: &Available,
        activation: &[f64; N],
        reach: Reach,
    ) -> Called {
        let gain = match reach {
            Reach::FromActivation => {
                1.0 - libm::exp(-self.control.preview_s / self.control.activation_time_s)
            }
            Reach::Full => 1.0,
        };
        let mut lo = [0.0; N];
        let mut hi = [0.0; N];
        for j in 0..N {
            let a = activation[j];
            hi[j] = available.signed(j, a + gain * (1.0 - a));
            lo[j] = available.signed(j, a + gain * (-1.0 - a));
        }
        let effort: [f64; N] =
            core::array::from_fn(|j| 0.5 * (strength.positive_n_m[j] + strength.negative_n_m[j]));
        let limit = it.couple_limit_n_m;
        let mut wishes = self.of_bat(it, wanted);
        let a_joint = self.of_joints(it, wanted);
        let weights = (self.control.weight_posture, self.control.weight_effort);
        if limit.iter().all(|it| *it == 0.0) {
            let (H, g) = normal_equations(&it.closed.P, &a_joint, &wishes, &effort, weights);
            let x = barrier::minimise(&H, &g, &lo, &hi, self.control.barrier, &mut self.place);
            return Called { torque_n_m: x, couple_share: [0.0; 3] };
        }
        // Friction asks no time: the whole of what the grip holds is there at once.
        let with = |torque: &[f64; N], couple: [f64; 3]| -> [f64; HOLDING] {
            core::array::from_fn(|u| if u < N { torque[u] } else { couple[u - N] })
        };
        let (lo, hi) = (with(&lo, limit.map(|it| -it)), with(&hi, limit));
        let turning = bottom_grip::turning(it.chain, it.k);
        let response = bottom_grip::response(it.chain, it.k, &turning, &it.closed.P);
        bottom_grip::add_hold(&self.control, it, &turning, &mut wishes);
        let size = with(&effort, limit);
        let (H, g) = normal_equations(&response, &a_joint, &wishes, &size, weights);
        let x = barrier::minimise(&H, &g, &lo, &hi, self.control.barrier, &mut self.place_holding);
        Called {
            torque_n_m: core::array::from_fn(|j| x[j]),
            couple_share: core::array::from_fn(|i| x[N + i] / limit[i]),
        }
    }

    /// What the player wants of the bat; nothing yet of the handle in the bottom hand.
    fn of_bat(&self, it: &Instant<'_>, wanted: &Wanted<'_>) -> Wishes {
        let c = &self.control;
        let (rate, square) = (2.0 * c.bandwidth_1_s, c.bandwidth_1_s * c.bandwidth_1_s);
        let (t1, t2) =
            (1.0 / wanted.stroke_time_s, 1.0 / (wanted.stroke_time_s * wanted.stroke_time_s));
        let bat = it.chain.link.bat;
        let p = it.chain.on_bat(it.k, it.contact_m);
        let (now, ahead) = (wanted.now, &wanted.ahead);

        let a_point = ahead.point2 * t2
            + (now.point1 * t1 - it.k.velocity(bat, p)) * rate
            + (now.point - p) * square;
        let a_turn = ahead.alpha * t2
            + (now.omega * t1 - it.k.omega[bat]) * rate
            + rotation_vector(&(now.R * it.k.R[bat].transpose())) * square;

        // Of each joint's acceleration, and what is left without any torque.
        let mut by_joint = [[0.0; WISHES]; N];
        let mut left_point = a_point - (it.k.acceleration_bias(bat, p) - it.a_base);
        let mut left_turn = a_turn - it.k.alpha_bias[bat];
        for j in it.chain.tree.joints_towards_base(bat) {
            let axis = it.k.axis[j];
            let arm = it.k.axis_moment[j] + axis.cross(p);
            left_point -= arm * it.closed.a_free[j];
            left_turn -= axis * it.closed.a_free[j];
            let [x, y, z] = (arm * c.weight_position).to_array();
            let [u, v, w] = (axis * c.weight_rotation).to_array();
            by_joint[j] = [x, y, z, u, v, w, 0.0, 0.0, 0.0];
        }
        let [x, y, z] = (left_point * c.weight_position).to_array();
        let [u, v, w] = (left_turn * c.weight_rotation).to_array();
        Wishes { by_joint, left: [x, y, z, u, v, w, 0.0, 0.0, 0.0] }
    }

    /// Accelerations that the player wants of the joints, less those without any torque, rad/s².
    fn of_joints(&self, it: &Instant<'_>, wanted: &Wanted<'_>) -> [f64; N] {
        let bandwidth = self.control.bandwidth_1_s;
        let (t1, t2) =
            (1.0 / wanted.stroke_time_s, 1.0 / (wanted.stroke_time_s * wanted.stroke_time_s));
        core::array::from_fn(|j| {
            wanted.ahead.q2[j] * t2
                + 2.0 * bandwidth * (wanted.now.q1[j] * t1 - it.v[j])
                + bandwidth * bandwidth * (wanted.now.q[j] - it.q[j])
                - it.closed.a_free[j]
        })
    }
}

/// Wishes for the bat's point (3) and attitude (3), and for the handle's attitude in the bottom hand (3).
pub(super) const WISHES: usize = 9;

/// Weighted accelerations that the player wants of bat and handle.
pub(super) struct Wishes {
    /// By joint, how much of each a unit of its acceleration makes.
    pub(super) by_joint: [[f64; WISHES]; N],
    /// How much of each is left without any torque.
    pub(super) left: [f64; WISHES],
}

/// Quadratic form, both triangles filled, and gradient of the sum of squares of the accelerations missed and of
/// effort; `response` holds the joints' accelerations per unit of what is called for, `size` how much of it counts as
/// one; weights of posture and of effort.
#[multiversion(targets("x86_64+avx2", "x86_64+avx"))]
fn normal_equations<const U: usize>(
    response: &[[f64; U]; N],
    a_joint: &[f64; N],
    wishes: &Wishes,
    size: &[f64; U],
    (weight_posture, weight_effort): (f64, f64),
) -> ([[f64; U]; U], [f64; U]) {
    let posture2 = weight_posture * weight_posture;
    let mut g = [0.0; U];
    let mut rows = [[0.0; U]; WISHES];
    for ((response, a), factors) in response.iter().zip(a_joint).zip(&wishes.by_joint) {
        add_scaled(&mut g, posture2 * a, response);
        for (row, factor) in rows.iter_mut().zip(factors) {
            add_scaled(row, *factor, response);
        }
    }
    for (row, left) in rows.iter().zip(&wishes.left) {
        add_scaled(&mut g, *left, row);
    }
    let mut H = [[0.0; U]; U];
    for (i, out) in H.iter_mut().enumerate() {
        let all = (response, posture2, &rows);
        match i / BLOCK {
            0 => row_of_products::<BLOCK, U>(all, i, out),
            1 => row_of_products::<{ 2 * BLOCK }, U>(all, i, out),
            2 => row_of_products::<{ 3 * BLOCK }, U>(all, i, out),
            3 => row_of_products::<{ 4 * BLOCK }, U>(all, i, out),
            _ => row_of_products::<U, U>(all, i, out),
        }
        let effort = weight_effort / size[i];
        out[i] += effort * effort;
    }
    mirror(&mut H);
    (H, g)
}

/// Elements of a row of H that are computed together, in wide registers; those beyond the diagonal are not read.
const BLOCK: usize = 4;

/// The first W elements of row i of `w² RᵀR + WᵀW`, with R the response and W the wishes' rows.
#[inline(always)]
fn row_of_products<const W: usize, const U: usize>(
    (response, posture2, rows): (&[[f64; U]; N], f64, &[[f64; U]; WISHES]),
    i: usize,
    out: &mut [f64; U],
) {
    let mut sums = [0.0; W];
    for row in response {
        add_scaled(&mut sums, posture2 * row[i], &row[..W]);
    }
    for row in rows {
        add_scaled(&mut sums, row[i], &row[..W]);
    }
    out[..W].copy_from_slice(&sums);
}

/// Kinematics, mass matrix and loop of the chain at one state.
pub fn closed_chain(
    chain: &Chain,
    q: &[f64; N],
    v: &[f64; N],
    a_base: DVec3,
    k: &mut Kinematics<N>,
    m: &mut MassMatrix<N>,
) -> ClosedChain<N> {
    chain.tree.forward_kinematics(q, v, a_base, k);
    m.fill(&chain.tree, k);
    ClosedChain::new(&chain.tree, k, m, Some(&chain.bottom_hand), DRIFT_RATE_1_S)
}

/// Rate at which a gap between bottom hand and handle is pulled shut, 1/s.
const DRIFT_RATE_1_S: f64 = 50.0;

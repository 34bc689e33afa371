//! What the player wants at one instant: accelerations of the bat, of the joints, and of the handle in the bottom hand.
//!
//! Each wish is `a_ref + 2w(v_ref − v) + w²(x_ref − x)`, w the bandwidth, the reference read a preview ahead.

use super::chain::Chain;
use super::control::Control;
use super::reference::{Accelerations, Sample};
use crate::dynamics::closed_loop::ClosedChain;
use crate::dynamics::tree::Kinematics;
use crate::frames::{DMat3, DVec3, rotation_vector};
use crate::player::joints::JOINT_COUNT;

const N: usize = JOINT_COUNT;

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

/// Wishes for the bat's point (3) and attitude (3), and for the handle's attitude in the bottom hand (3).
pub(super) const WISHES: usize = 9;

/// Weighted accelerations that the player wants of bat and handle.
pub(super) struct Wishes {
    /// By joint, how much of each a unit of its acceleration makes.
    pub(super) by_joint: [[f64; WISHES]; N],
    /// How much of each is left without any torque.
    pub(super) left: [f64; WISHES],
}

/// What the player wants of the bat; nothing yet of the handle in the bottom hand.
pub(super) fn of_bat(c: &Control, it: &Instant<'_>, wanted: &Wanted<'_>) -> Wishes {
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
pub(super) fn of_joints(c: &Control, it: &Instant<'_>, wanted: &Wanted<'_>) -> [f64; N] {
    let bandwidth = c.bandwidth_1_s;
    let (t1, t2) =
        (1.0 / wanted.stroke_time_s, 1.0 / (wanted.stroke_time_s * wanted.stroke_time_s));
    core::array::from_fn(|j| {
        wanted.ahead.q2[j] * t2
            + 2.0 * bandwidth * (wanted.now.q1[j] * t1 - it.v[j])
            + bandwidth * bandwidth * (wanted.now.q[j] - it.q[j])
            - it.closed.a_free[j]
    })
}

/// Adds the wish that the handle stay in the bottom hand as it was grasped.
pub(super) fn add_hold(
    control: &Control,
    it: &Instant<'_>,
    turning: &[DVec3; N],
    wishes: &mut Wishes,
) {
    let (chain, k) = (it.chain, it.k);
    let (bat, hand) = (chain.link.bat, chain.bottom_hand.link_b);
    let w = control.bandwidth_1_s;
    let turned = rotation_vector(&(k.R[hand] * *it.held_R * k.R[bat].transpose()));
    let mut left = (k.omega[hand] - k.omega[bat]) * (2.0 * w) + turned * (w * w)
        - (k.alpha_bias[bat] - k.alpha_bias[hand]);
    for ((axis, a), of_joint) in turning.iter().zip(&it.closed.a_free).zip(&mut wishes.by_joint) {
        left -= *axis * *a;
        of_joint[HOLD].copy_from_slice(&(*axis * control.weight_hold).to_array());
    }
    wishes.left[HOLD].copy_from_slice(&(left * control.weight_hold).to_array());
}

/// Where this wish stands among the others.
const HOLD: core::ops::Range<usize> = WISHES - 3..WISHES;

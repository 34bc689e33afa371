//! The bottom hand holds on: a couple within what its grip can hold keeps the handle from turning in it.
//!
//! Dry friction takes what value it must, up to its limit, so that nothing slips. Here it is called for
//! together with the joint torques, among the same wishes and inside the same smooth wall: a wish of its
//! own, that the handle stay in the hand as it was grasped, stands beside those for bat and joints. Where
//! the grip does not suffice the hand gives way. Friction as a function of slip will not do: smooth enough to
//! integrate it hardly holds, steep enough to hold it needs steps of 0.1 ms.
//!
//! About the handle the limit is friction × weaker grip × diameter (a hand presses on both sides with what a
//! dynamometer reads): a bat has no inertia to speak of about its long axis, so that one hand's twist is the
//! other's. Across it, grip × half the breadth of the hand (assumption: the handle begins to lift at a third, rests
//! on the edges alone at the whole). A stroke says whether the hand holds (`bottom_hand_holds`).

use super::chain::Chain;
use crate::dynamics::tree::Kinematics;
use crate::frames::DVec3;
use crate::player::joints::JOINT_COUNT;

const N: usize = JOINT_COUNT;

/// How the joints turn the bat in the bottom hand: its angular velocity there per unit of each rate, W.
pub(super) fn turning(chain: &Chain, k: &Kinematics<N>) -> [DVec3; N] {
    let mut rows = [DVec3::ZERO; N];
    for j in chain.tree.joints_towards_base(chain.link.bat) {
        rows[j] += k.axis[j];
    }
    for j in chain.tree.joints_towards_base(chain.bottom_hand.link_b) {
        rows[j] -= k.axis[j];
    }
    rows
}

/// Greatest couples of the bottom hand at this instant, N m, in the bat's axes.
///
/// The bat pulls along the handle as it swings round, and friction that bears the pull is not there for
/// the couple about the handle: what is left is √((2μG)² − pull²) × radius, kept a little above nought by
/// a smooth corner. The pull is the bat's with the joints' accelerations left out, and borne by one hand.
pub fn limit_n_m(chain: &Chain, k: &Kinematics<N>) -> [f64; 3] {
    let [about, across, other] = chain.grip.bottom_couple_n_m;
    if about == 0.0 {
        return [about, across, other];
    }
    let bat = chain.link.bat;
    let link = &chain.tree.links()[bat];
    let a = k.acceleration_bias(bat, k.point(bat, link.com));
    let pull = link.mass_kg * a.dot(k.R[bat].x_axis) / chain.grip.traction_n;
    let smooth = |x: f64| 0.5 * (x + (x * x + CORNER * CORNER).sqrt());
    let left = (smooth(1.0 - pull * pull) / smooth(1.0)).sqrt();
    [about * left, across, other]
}

/// Where the friction is used up by the pull, the couple's limit is left at √(half of this) of the whole.
const CORNER: f64 = 0.05;

/// Joint torques and the couple of the bottom hand on the bat (W) as what the joints feel, N m.
pub fn with_couple(
    chain: &Chain,
    k: &Kinematics<N>,
    torque_n_m: &[f64; N],
    couple_W: DVec3,
) -> [f64; N] {
    if couple_W == DVec3::ZERO {
        return *torque_n_m;
    }
    let rows = turning(chain, k);
    core::array::from_fn(|j| torque_n_m[j] + rows[j].dot(couple_W))
}

/// Puts the accelerations per unit of joint torque, and after them per unit of couple about the bat's axes, into `out`.
pub(super) fn respond<const U: usize>(
    chain: &Chain,
    k: &Kinematics<N>,
    turning: &[DVec3; N],
    P: &[[f64; N]; N],
    out: &mut [[f64; U]; N],
) {
    let R = k.R[chain.link.bat];
    let in_bat = turning.map(|row| R.transpose() * row);
    for (out, P) in out.iter_mut().zip(P) {
        let couple = P.iter().zip(&in_bat).fold(DVec3::ZERO, |s, (p, row)| s + *row * *p);
        out[..N].copy_from_slice(P);
        out[N..].copy_from_slice(&couple.to_array());
    }
}

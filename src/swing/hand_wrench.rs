//! Force and couple of each hand on the bat, from the bat's rate of momentum.

use super::chain::Chain;
use super::state::Instantaneous;
use crate::dynamics::tree::Kinematics;
use crate::frames::DVec3;
use crate::player::joints::JOINT_COUNT;

/// Load of one hand on the bat: force, and couple about the hand's own point, both in W.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HandWrench {
    /// Force on the bat, N.
    pub force_W: DVec3,
    /// Couple on the bat about the hand's centre, N m.
    pub couple_W: DVec3,
}

/// Both hands at one instant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hands {
    /// Top hand.
    pub top: HandWrench,
    /// Bottom hand.
    pub bottom: HandWrench,
}

/// Loads of the hands; `k` must hold the kinematics of the instant, gravity included.
///
/// The bottom hand's force is the loop's multiplier, its couple what was called for; the top hand gives
/// the rest of
/// `F = m a`, `M = I α + ω × I ω` about the centre of mass.
pub fn hands(chain: &Chain, k: &Kinematics<JOINT_COUNT>, at: &Instantaneous) -> Hands {
    let bat = chain.link.bat;
    let link = &chain.tree.links()[bat];
    let com = k.point(bat, link.com);
    let mut a_com = k.acceleration_bias(bat, com);
    let mut alpha = k.alpha_bias[bat];
    for j in chain.tree.joints_towards_base(bat) {
        a_com += (k.axis_moment[j] + k.axis[j].cross(com)) * at.acceleration[j];
        alpha += k.axis[j] * at.acceleration[j];
    }
    let R = k.R[bat];
    let about_com = |x: DVec3| R * (link.I_Com * (R.transpose() * x));
    let omega = k.omega[bat];
    let force = a_com * link.mass_kg;
    let moment = about_com(alpha) + omega.cross(about_com(omega));
    let p_top = chain.on_bat(k, chain.grip.top_hand_m);
    let p_bottom = chain.on_bat(k, chain.grip.bottom_hand_m);
    let force_bottom = at.force_bottom_W;
    let force_top = force - force_bottom;
    let couple_bottom = at.couple_bottom_W;
    let couple_top = moment
        - (p_top - com).cross(force_top)
        - (p_bottom - com).cross(force_bottom)
        - couple_bottom;
    Hands {
        top: HandWrench { force_W: force_top, couple_W: couple_top },
        bottom: HandWrench { force_W: force_bottom, couple_W: couple_bottom },
    }
}

//! Exit speed, the ball speed off the bat: a free rigid bat and a ball along the normal of the face, off the middle as
//! well.
//!
//! Along the bat the contact counts as instant. Off the middle line it may not: the bat is struck at a lever of some
//! centimetres about an axis about which it resists little, turns by several degrees while they touch, and the ball's
//! centre, which stands a ball's radius and half a blade over that axis, comes to lie nearer over it. See
//! [`FreeBat::recoil_ratio`].

use crate::bat::Bat;
use crate::uncertain::{Origin, Uncertain};

/// Restitution of ball on bat at the contact point: a chosen round figure, no source for cricket. The
/// same for every bat, so that it moves the exit speeds together and their order hardly.
pub const RESTITUTION: Uncertain = Uncertain { value: 0.5, sd: 0.05, origin: Origin::Assumed };

/// How long ball and face touch, s: about a millisecond for balls of this size and hardness (from memory, medium; a
/// baseball's 1 ms is the figure most often given). Off the middle only; along the bat it does not matter.
pub const CONTACT_S: Uncertain = Uncertain { value: 1.1e-3, sd: 0.25e-3, origin: Origin::Assumed };

/// The ball's centre over the axis about which the bat twists, m: radius 36 mm (Law 4), and the face 20 mm over the
/// centre of mass of the adult's reference bat (17 mm of the smallest, which changes what is lost by a hundredth of
/// it).
pub const CENTRE_OVER_TWIST_AXIS_M: f64 = 0.056;

/// Speed of the ball at the bat as a share of its speed out of the hand: assumption, no source.
pub const SPEED_AT_BAT_SHARE: f64 = 0.80;

/// Recoil ratio `r = m (1/M + b²/I)`: ball mass over the bat's effective mass where it is struck; b from
/// the balance point to the contact point, I about the transverse axis through the balance point.
///
/// Source: Nathan 2003, Am J Phys 71:134; Cross & Nathan 2006, Am J Phys 74:896 (from memory, high).
pub fn recoil_ratio(ball_kg: f64, bat_kg: f64, offset_m: f64, com_moment_kg_m2: f64) -> f64 {
    ball_kg * (1.0 / bat_kg + offset_m * offset_m / com_moment_kg_m2)
}

/// Apparent restitution `e_A = (e − r)/(1 + r)`: rebound over arrival speed on a bat at rest.
pub fn apparent_restitution(restitution: f64, recoil_ratio: f64) -> f64 {
    (restitution - recoil_ratio) / (1.0 + recoil_ratio)
}

/// Speed of the ball off the bat, m/s: `e_A v_ball + (1 + e_A) v_bat`, bat speed at the contact point.
pub fn exit_speed_m_s(apparent_restitution: f64, ball_m_s: f64, bat_m_s: f64) -> f64 {
    apparent_restitution * ball_m_s + (1.0 + apparent_restitution) * bat_m_s
}

/// A rigid bat that nothing holds. The hands are too soft to matter within a millisecond of contact (common in
/// the literature cited at [`recoil_ratio`]).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FreeBat {
    /// Dead weight, kg.
    pub mass_kg: f64,
    /// Balance point from the top of the handle, m.
    pub balance_m: f64,
    /// Moment of inertia about the transverse axis through the balance point, kg m².
    pub com_moment_kg_m2: f64,
    /// About the long axis, kg m².
    pub twist_moment_kg_m2: f64,
}

/// Ball and bat as they meet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Meeting {
    /// Mass of the ball, kg.
    pub ball_kg: f64,
    /// Restitution where they touch.
    pub restitution: f64,
    /// Speed at which they close, m/s.
    pub closing_m_s: f64,
    /// How long they touch, s.
    pub contact_s: f64,
}

impl FreeBat {
    /// A bat as it is.
    pub fn of(bat: &Bat) -> Self {
        Self {
            mass_kg: bat.mass_kg(),
            balance_m: bat.balance_m(),
            com_moment_kg_m2: bat.I_Com_B().y_axis.y,
            twist_moment_kg_m2: bat.twist_moment_kg_m2(),
        }
    }

    /// Recoil ratio `r = m (1/M + b²/I + y²/(I_t + H J T/4))` at a place: m from the top of the handle, m off
    /// the middle line.
    ///
    /// The last term is the twist. An instant contact would give y²/I_t. In a contact of T in which the ball gives
    /// the impulse J the face turns by θ, and the lever falls from y to `y − Hθ`, H the height of the ball's centre
    /// over the axis of twist. For a pulse F(t) that is half a sine, with P the share of the impulse given so far,
    /// θ averaged over the impulse is `(yJT/I_t) ½∫P(1 − P)dt/T = yJT/(8 I_t)`, and the mean of the lever's square
    /// y² (1 − HJT/(4 I_t)): to first order, the bat resists as if I_t were larger by HJT/4. J is that of the instant
    /// contact, `m (1 + e) V/(1 + r)`. Against the equations of motion in space (`assets/reference/off_middle.py`) and
    /// the hit over time see `validate`, `off the middle`.
    pub fn recoil_ratio(&self, [from_top_m, across_m]: [f64; 2], it: &Meeting) -> f64 {
        let along_m = from_top_m - self.balance_m;
        let middle = recoil_ratio(it.ball_kg, self.mass_kg, along_m, self.com_moment_kg_m2);
        let twist = |moment_kg_m2: f64| it.ball_kg * across_m * across_m / moment_kg_m2;
        let instant = middle + twist(self.twist_moment_kg_m2);
        let impulse_n_s = it.ball_kg * (1.0 + it.restitution) * it.closing_m_s / (1.0 + instant);
        let more_kg_m2 = 0.25 * CENTRE_OVER_TWIST_AXIS_M * impulse_n_s * it.contact_s;
        middle + twist(self.twist_moment_kg_m2 + more_kg_m2)
    }

    /// Apparent restitution at a place: m from the top of the handle, m off the middle line.
    pub fn apparent_restitution(&self, place: [f64; 2], it: &Meeting) -> f64 {
        apparent_restitution(it.restitution, self.recoil_ratio(place, it))
    }
}

/// Speed off this bat struck at a place (m from the top of the handle, m off the middle line), m/s.
pub fn exit_speed_off_bat_m_s(
    bat: &Bat,
    place: [f64; 2],
    bat_m_s: f64,
    ball_m_s: f64,
    ball_kg: f64,
    restitution: f64,
) -> f64 {
    let closing_m_s = ball_m_s + bat_m_s;
    let meeting = Meeting { ball_kg, restitution, closing_m_s, contact_s: CONTACT_S.value };
    exit_speed_m_s(FreeBat::of(bat).apparent_restitution(place, &meeting), ball_m_s, bat_m_s)
}

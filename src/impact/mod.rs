//! When ball meets bat: what comes of the hit along the blade, and what the hands feel of it.
//!
//! Ball, blade, handle and both hands are bodies of the engine rapier ([`world`]). Handle and blade hang
//! together by a sprung hinge at the shoulder, its stiffness from beam theory ([`splice`]); the hands are
//! masses on soft springs ([`hand`]). Where ball and face touch is asked of the engine's geometry; the force
//! there is our own law of a compressed ball ([`ball`]): the engine's restitution acts in an instant, and the
//! feel of a hit lies in its thousandth of a second. The bat is given as a shape ([`parts`]). A bowed face is met on its
//! arc, by the tangent plane there ([`Bow`](crate::bat::bow::Bow)); the ball comes along the normal of the chord.
//!
//! Left out: bending of the blade and vibration beyond the hinge's one mode, friction and spin on the face,
//! the arms behind the hands, the load of the swing itself.

pub mod ball;
pub mod doubt;
pub mod face;
pub mod hand;
pub mod hit;
pub mod parts;
pub mod splice;
pub mod strike;
mod world;

/// Why there is no hit.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum ImpactFault {
    /// The ball does not meet the face.
    #[error(
        "the ball meets no face {from_top_m:.3} m from the top of the handle and {across_m:.3} m off the middle: the face runs from {shoulder_m:.3} m to {toe_m:.3} m and is {half_width_m:.3} m wide to each side"
    )]
    OffTheFace {
        /// Where it was aimed, m from the top of the handle.
        from_top_m: f64,
        /// Off the middle, m.
        across_m: f64,
        /// Where the face begins, m from the top of the handle.
        shoulder_m: f64,
        /// Where it ends, m.
        toe_m: f64,
        /// Half its greatest width, m.
        half_width_m: f64,
    },
    /// Ball and bat move apart or not at all.
    #[error("ball and bat close at {closing_m_s} m/s: nothing is hit")]
    NotClosing {
        /// Closing speed, m/s.
        closing_m_s: f64,
    },
    /// The state ran away, or ball and bat do not part.
    #[error("the engine lost the hit after {at_s} s")]
    Lost {
        /// Time since first touch, s.
        at_s: f64,
    },
}

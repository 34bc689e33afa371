//! What one hand can put on the handle, and the grip it takes.

use super::Player;
use crate::uncertain::{Origin, Uncertain};

/// Friction between a batting glove and a rubber grip: assumption, no source. Leather on rubber,
/// neither new nor wet through; a sweaty glove lies below, a new octopus grip above.
pub const FRICTION: Uncertain = Uncertain { value: 0.6, sd: 0.15, origin: Origin::Assumed };

/// Greatest force of one hand's skin on the handle, N: 2 × friction × grip force.
///
/// What a dynamometer reads is pressed on *both* sides of it, by the fingers and against them by the palm, and
/// each side rubs. Source: Pheasant, Bodyspace (couple of a hand on a cylinder: friction × grip × diameter).
pub fn traction_n(grip_n: f64, friction: f64) -> f64 {
    2.0 * friction * grip_n
}

/// Greatest couple of one hand about the long axis of the handle before it turns in the hand, N m:
/// the skin's force on its radius, so friction × grip force × handle diameter.
pub fn twist_limit_n_m(grip_n: f64, handle_diameter_m: f64, friction: f64) -> f64 {
    traction_n(grip_n, friction) * 0.5 * handle_diameter_m
}

/// Greatest couple of one hand across the handle, N m: grip force × breadth of the hand / 2.
///
/// Fingers and palm press with the grip force each, evenly over the breadth of the hand. Leaning across
/// the handle moves the two middles of pressure apart, by a third of the breadth until the handle starts
/// to lift from one edge of the hand, by the whole of it when it rests on the edges alone; half of it is
/// an assumption, no source.
pub fn cross_limit_n_m(grip_n: f64, hand_breadth_m: f64) -> f64 {
    0.5 * grip_n * hand_breadth_m
}

/// Breadth of the hand across the knuckles over its length: 88.3 / 193 mm for men, 78.2 / 181 mm for women;
/// one figure for all. Source: ANSUR II, 4082 men and 1986 women, computed from the raw records.
pub const HAND_BREADTH_PER_LENGTH: f64 = 0.45;

/// Grip force needed so that the handle neither slides through the hand nor turns in it, N.
///
/// Force along the handle and couple about it share one skin: the traction of the couple is
/// couple / radius, at right angles to that of the force, and both sides of the hand rub, so `√(F² + (C/r)²) / 2μ`.
pub fn grip_needed_n(
    force_along_n: f64,
    couple_about_n_m: f64,
    radius_m: f64,
    friction: f64,
) -> f64 {
    let turning_n = couple_about_n_m / radius_m;
    libm::sqrt(force_along_n * force_along_n + turning_n * turning_n) / (2.0 * friction)
}

/// Handle diameter that feels best at greatest grip, m: 0.197 × hand length (bare cylinders of
/// 25–50 mm, 24 adults; not bats). Source: Kong & Lowe 2005, Int J Ind Ergon 35:495, read (abstract).
pub fn comfortable_diameter_m(hand_length_m: f64) -> f64 {
    0.197 * hand_length_m
}

impl Player {
    /// Diameter that a handle which was not measured is taken to have, m: the one most comfortable to this hand.
    pub fn comfortable_handle_m(&self) -> f64 {
        comfortable_diameter_m(self.hand_length_m.value)
    }
}

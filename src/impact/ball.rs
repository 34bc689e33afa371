//! The ball: what it weighs, how hard it is, and what of the closing speed it gives back.

use crate::comparison::collision::RESTITUTION;
use crate::uncertain::{Origin, Uncertain};

/// Radius of the ball, m: circumference 22.4–22.9 cm, Law 4 (read).
pub const RADIUS_M: f64 = 0.036;

/// Stiffness of the ball against the face, N/m^1.5: assumption, no source. At 40 m/s it gives a pulse of
/// about a millisecond. As one standard deviation half as much again or less.
pub const STIFFNESS: Uncertain = Uncertain { value: 1.2e7, sd: 0.6e7, origin: Origin::Assumed };

/// A ball as the hit needs it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ball {
    /// Mass, kg.
    pub mass_kg: f64,
    /// Radius, m.
    pub radius_m: f64,
    /// Stiffness k of `F = k x^1.5`, N/m^1.5.
    pub stiffness_n_m15: f64,
    /// Parting over closing speed of ball and face where they touch.
    pub restitution: f64,
}

impl Ball {
    /// A ball of this mass, else as assumed.
    pub fn of(mass_kg: f64) -> Self {
        Self {
            mass_kg,
            radius_m: RADIUS_M,
            stiffness_n_m15: STIFFNESS.value,
            restitution: RESTITUTION.value,
        }
    }
}

/// Force of a ball pressed in by `pressed_m` and going on at `rate_m_s`, parted into what springs back and
/// what is lost: `F = k x^1.5 (1 + d ẋ/v)`, v the closing speed.
///
/// Source: Hunt & Crossley 1975, J Appl Mech 42:440 (from memory, high). The loss grows with the force, so
/// that the ball neither hits nor clings at once, and restitution hangs on d alone: not on the masses, the
/// stiffness or the exponent.
pub fn force_n(
    ball: &Ball,
    loss: f64,
    closing_m_s: f64,
    pressed_m: f64,
    rate_m_s: f64,
) -> [f64; 2] {
    if pressed_m <= 0.0 {
        return [0.0; 2];
    }
    let spring = ball.stiffness_n_m15 * pressed_m * pressed_m.sqrt();
    [spring, spring * (loss * rate_m_s / closing_m_s).max(-1.0)]
}

/// Work stored in the ball, J.
pub fn stored_j(ball: &Ball, pressed_m: f64) -> f64 {
    let x = pressed_m.max(0.0);
    0.4 * ball.stiffness_n_m15 * x * x * x.sqrt()
}

/// The loss d that gives a restitution e: `d (1 + e) = ln((1 + d)/(1 − e d))`, from integrating the law above
/// over the contact (`v dv/(1 + d v/v₀) = −k x^1.5 dx/m`, in and out). By halving; nought at e = 1.
///
/// Real restitutions below about 0.02 need a loss of more than 40 and are taken as that.
pub fn loss(restitution: f64) -> f64 {
    let e = restitution.clamp(0.02, 1.0);
    let miss = |d: f64| d * (1.0 + e) - libm::log((1.0 + d) / (1.0 - e * d));
    // Positive just above nought, and falling without bound towards 1/e.
    let (mut low, mut high) = (0.0, 1.0 / e);
    for _ in 0..80 {
        let d = 0.5 * (low + high);
        if miss(d) > 0.0 { low = d } else { high = d }
    }
    low
}

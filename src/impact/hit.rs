//! Everything that a hit hangs on: bat, ball and hands, and how and where ball and bat meet.

use super::ImpactFault;
use super::ball::Ball;
use super::hand::Hand;
use super::parts::Parts;
use super::splice::Hinge;

/// Everything a hit hangs on.
#[derive(Clone, Debug, PartialEq)]
pub struct Hit {
    /// Bat.
    pub parts: Parts,
    /// Hinge at the shoulder.
    pub hinge: Hinge,
    /// Ball.
    pub ball: Ball,
    /// Hands: the top one and the bottom one, or none for a free bat.
    pub hands: Vec<Hand>,
    /// Where the ball meets the face, m from the top of the handle.
    pub contact_from_top_m: f64,
    /// Where it meets the face across, m off the middle, along y of B.
    pub across_m: f64,
    /// Bat speed at the place met, m/s, out of the face.
    pub bat_m_s: f64,
    /// The bat turns about an axis across it there, m from the top of the handle.
    pub turns_about_m: f64,
    /// Ball speed towards the bat, m/s.
    pub ball_m_s: f64,
}

impl Hit {
    /// Angular speed of the bat before the hit, rad/s.
    pub fn turning_rad_s(&self) -> f64 {
        self.bat_m_s / (self.contact_from_top_m - self.turns_about_m)
    }

    pub(super) fn fault(&self) -> Option<ImpactFault> {
        let parts = &self.parts;
        let on = (parts.shoulder_m..=parts.toe_m).contains(&self.contact_from_top_m)
            && self.across_m.abs() <= parts.half_width_m;
        if !on {
            return Some(ImpactFault::OffTheFace {
                from_top_m: self.contact_from_top_m,
                across_m: self.across_m,
                shoulder_m: parts.shoulder_m,
                toe_m: parts.toe_m,
                half_width_m: parts.half_width_m,
            });
        }
        let closing_m_s = self.ball_m_s + self.bat_m_s;
        let closing = closing_m_s > 0.0 && closing_m_s.is_finite();
        (!closing).then_some(ImpactFault::NotClosing { closing_m_s })
    }
}

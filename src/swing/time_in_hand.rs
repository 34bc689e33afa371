//! Whether a stroke can be started after the ball is read, and the fastest ball that can be pulled.

use crate::measurement::plan::Bowling;

/// From the bowler's hand to the bat: the pitch less the two popping creases, 1.22 m each in front of
/// the stumps. Source: Law 7, from memory (high). Where in front of the crease the ball is met is
/// not known to the model.
const CREASES_M: f64 = 2.44;

/// Mean speed of the ball from hand to bat as a share of its speed out of the hand: drag and the
/// bounce. Assumption, no source; 0.80 to 0.95 with length and pitch.
pub const MEAN_SPEED_SHARE: f64 = 0.88;

impl Bowling {
    /// Time from hand to bat, s.
    pub fn flight_s(self) -> f64 {
        (self.pitch_length_m - CREASES_M) / (MEAN_SPEED_SHARE * self.speed_m_s)
    }

    /// What is left over when a stroke of this time is started as soon as the ball is read, s;
    /// negative when the stroke comes too late.
    pub fn time_in_hand_s(self, stroke_time_s: f64) -> f64 {
        self.flight_s() - self.reaction_time_s - stroke_time_s
    }

    /// Fastest ball, out of the hand, that a stroke of this time can still meet, m/s.
    pub fn fastest_ball_m_s(self, stroke_time_s: f64) -> f64 {
        (self.pitch_length_m - CREASES_M)
            / (MEAN_SPEED_SHARE * (self.reaction_time_s + stroke_time_s))
    }
}

//! How steadily a player brings the middle of a bat to the ball: where the ball meets the blade about the place meant.
//!
//! Three things scatter, each by itself: the muscles' torques, carried through the swing
//! ([`noise`](crate::swing::noise)); the time at which the bat comes, which moves the ball along the blade where
//! the two do not run against each other; and where the ball is thought to come.

use crate::frames::DVec3;
use crate::player::joints::FRESH;
use crate::swing::noise::{MotorNoise, scatter};
use crate::swing::player_stroke::Held;

/// One stroke with one bat.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Steadiness {
    /// Along and across the blade, one standard deviation over that of the torque, m.
    pub by_noise_m: [f64; 2],
    /// Along and across, how far off a ball is met that comes a second early, m/s.
    pub by_timing_m_s: [f64; 2],
}

/// Noisy swings of a stroke: few; a thousand say the same within a half.
const NOISY_SWINGS: u64 = 8;

impl Steadiness {
    /// Of a stroke that takes so long, fresh, against a ball that comes to the bat at this speed; none where the bat
    /// does not come to it.
    pub fn of(held: &Held, stroke_time_s: f64, ball_m_s: f64) -> Option<Self> {
        let noise = MotorNoise::default();
        let ball_W = DVec3::new(-ball_m_s, 0.0, 0.0);
        let it = scatter(&held.swinger(&FRESH), stroke_time_s, &noise, ball_W, NOISY_SWINGS)?;
        Some(Self {
            by_noise_m: [it.along_m, it.across_m].map(|it| it / noise.share),
            by_timing_m_s: it.early_m_s.map(f64::abs),
        })
    }

    /// One standard deviation of where the ball meets the blade, along and across, m.
    pub fn scatter_m(&self, torque_noise: f64, timing_s: f64, judged_place_m: f64) -> [f64; 2] {
        core::array::from_fn(|i| {
            let noise_m = torque_noise * self.by_noise_m[i];
            let timing_m = timing_s * self.by_timing_m_s[i];
            let squares = noise_m * noise_m + timing_m * timing_m;
            libm::sqrt(squares + judged_place_m * judged_place_m)
        })
    }
}

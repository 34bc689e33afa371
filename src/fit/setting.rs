//! The player in the innings, for the figures that are simulated.

use crate::bat::Bat;
use crate::innings::ball_by_ball::capacity_at_scores;
use crate::innings::played::{InningsFault, ball_loads, schedule};
use crate::measurement::plan::InningsPlan;
use crate::player::joints::FRESH;
use crate::swing::batter::Batter;
use crate::swing::player_stroke::SwingFault;
use crate::swing::time_in_hand::Delivery;
use rayon::prelude::*;

/// The likeliest player, and what is asked of him or her.
#[derive(Clone, Debug)]
pub struct Setting {
    /// Player and strokes.
    pub batter: Batter,
    /// Innings.
    pub plan: InningsPlan,
    /// Bowling faced.
    pub delivery: Delivery,
    /// Asked time of each stroke, s: for the loads in play and the wrist shares.
    pub asked_time_s: Vec<f64>,
}

/// One stroke at the end of the innings with one bat, simulated for the likeliest player.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StrokeAtEnd {
    /// Fastest controlled time, s.
    pub time_s: f64,
    /// Speed of the contact point, m/s.
    pub bat_speed_m_s: f64,
    /// Wrist share at the asked time.
    pub wrist_share: f64,
}

impl Setting {
    /// Swings every stroke at the end of the innings with a bat. The times in `near` are near answers.
    pub fn at_end(
        &self,
        bat: &Bat,
        near_s: Option<&[f64]>,
    ) -> Result<Vec<StrokeAtEnd>, InningsFault> {
        let taken_up = self.batter.take_up(bat)?;
        let loads = ball_loads(&self.batter, &taken_up, &self.plan, &self.asked_time_s);
        let schedule = schedule(&self.plan, &self.batter);
        let left = capacity_at_scores(&schedule, &loads, &[self.plan.runs])?;
        let capacity = left.first().map_or(FRESH, |it| it.with_slow);
        let mut out = Vec::with_capacity(taken_up.held.len());
        for (i, held) in taken_up.held.iter().enumerate() {
            let near_s = near_s.and_then(|near| near.get(i).copied());
            let fastest = held.fastest(&capacity, near_s)?;
            let seen = self.batter.observe(held, &capacity, self.asked_time_s[i]);
            out.push(StrokeAtEnd {
                time_s: fastest.stroke_time_s,
                bat_speed_m_s: fastest.contact.bat_speed_m_s,
                wrist_share: seen.wrist_share(),
            });
        }
        Ok(out)
    }

    /// Asked times: `factor` times the fresh fastest with a bat, the standard one of the player's size, so
    /// that they are the same for all bats and scores.
    pub fn asked_times_s(batter: &Batter, bat: &Bat, factor: f64) -> Result<Vec<f64>, SwingFault> {
        let taken_up = batter.take_up(bat)?;
        let fresh = taken_up.held.par_iter().map(|held| held.fastest(&FRESH, None));
        fresh.map(|found| Ok(factor * found?.stroke_time_s)).collect()
    }
}

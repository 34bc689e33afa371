//! The player in the innings, for the figures that are simulated.

use crate::bat::Bat;
use crate::innings::played::{InningsFault, StrokeNow, left_at, stroke_now};
use crate::measurement::plan::{Bowling, InningsPlan};
use crate::player::joints::FRESH;
use crate::swing::batter::Batter;
use crate::swing::player_stroke::{Held, SwingFault};
use rayon::prelude::*;

/// The likeliest player, and what is asked of him or her.
#[derive(Clone, Debug)]
pub struct Setting {
    /// Player and strokes.
    pub batter: Batter,
    /// Innings.
    pub plan: InningsPlan,
    /// Bowling faced.
    pub delivery: Bowling,
    /// Asked time of each stroke, s: for the loads in play and the wrist shares.
    pub asked_time_s: Vec<f64>,
}

impl Setting {
    /// Swings every stroke at the end of the innings with a bat. The times in `near` are near answers.
    pub fn at_end(
        &self,
        bat: &Bat,
        near_s: Option<&[f64]>,
    ) -> Result<Vec<StrokeNow>, InningsFault> {
        let taken_up = self.batter.take_up(bat)?;
        let plan = &self.plan;
        let left = left_at(&self.batter, &taken_up, plan, &self.asked_time_s, plan.runs)?;
        let stroke = |(i, held): (usize, &Held)| {
            let near_s = near_s.and_then(|near| near.get(i).copied());
            stroke_now(
                &self.batter,
                held,
                &left.with_slow,
                self.asked_time_s[i],
                near_s,
                self.delivery,
            )
        };
        Ok(taken_up.iter().enumerate().map(stroke).collect::<Result<_, _>>()?)
    }

    /// Asked times: `factor` times the fresh fastest with a bat, the standard one of the player's size, so
    /// that they are the same for all bats and scores.
    pub fn asked_times_s(batter: &Batter, bat: &Bat, factor: f64) -> Result<Vec<f64>, SwingFault> {
        let taken_up = batter.take_up(bat)?;
        let fresh = taken_up.par_iter().map(|held| held.fastest(&FRESH, None));
        fresh.map(|found| Ok(factor * found?.stroke_time_s)).collect()
    }
}

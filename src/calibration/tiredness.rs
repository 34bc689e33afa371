//! What an innings leaves of each part's strength, for every degree of lasting fatigue.

use crate::innings::ball_by_ball::{BallLoads, GREATEST_SCORE, capacity_at_scores};
use crate::innings::schedule::{Schedule, ScheduleFault};
use crate::measurement::nets::{Lasting, PART_COUNT};
use crate::player::calibrated::Part;
use crate::player::joints::{GROUP_COUNT, Group};

/// Strength left after some runs, on the logarithm: linear in the share of the knee's loss.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tiredness {
    /// With no lasting fatigue.
    pub ln_without: [f64; PART_COUNT],
    /// Added for a share of 1.
    pub ln_per_share: [f64; PART_COUNT],
}

impl Tiredness {
    /// Nothing tired.
    pub const NONE: Self = Self { ln_without: [0.0; PART_COUNT], ln_per_share: [0.0; PART_COUNT] };

    /// At each of these scores.
    pub fn at(
        schedule: &Schedule,
        loads: &BallLoads,
        runs: &[f64],
    ) -> Result<Vec<Self>, ScheduleFault> {
        let schedule = Schedule { lasting: Lasting::UNKNOWN, ..schedule.clone() };
        let runs: Vec<f64> = runs.iter().map(|it| it.min(GREATEST_SCORE)).collect();
        let left = capacity_at_scores(&schedule, loads, &runs)?;
        let of = |runs: f64, without: &[f64; GROUP_COUNT], high: &[f64; GROUP_COUNT]| {
            if runs == 0.0 {
                return Self::NONE;
            }
            let (without, high) = (by_part(without), by_part(high));
            let span = Lasting::UNKNOWN.high;
            Self {
                ln_without: without,
                ln_per_share: core::array::from_fn(|i| (high[i] - without[i]) / span),
            }
        };
        Ok(left.iter().map(|it| of(it.runs, &it.without_slow, &it.with_slow_high)).collect())
    }

    /// Strength, as logarithms over the tables', of a player who was this strong when fresh.
    pub fn tired(&self, ln_fresh: &[f64; PART_COUNT], lasting: f64) -> [f64; PART_COUNT] {
        core::array::from_fn(|i| ln_fresh[i] + self.ln_without[i] + lasting * self.ln_per_share[i])
    }
}

/// Mean of the logarithm over the groups of each part.
fn by_part(capacity: &[f64; GROUP_COUNT]) -> [f64; PART_COUNT] {
    Part::ALL.map(|part| {
        let groups = Group::ALL.into_iter().filter(|it| Part::of(*it) == part);
        let (sum, count) = groups.fold((0.0, 0.0), |(sum, count), group| {
            (sum + libm::log(capacity[group as usize]), count + 1.0)
        });
        sum / count
    })
}

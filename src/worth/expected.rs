//! What a bat is worth to each possible player: the ball speed off it that may be expected.
//!
//! Over the innings, fresh to its end, and over the mix: `in time × exit speed where it was met`, and for a ball
//! that is late the share of it that a ball defended or left is worth. A stroke to the short ball is in time when the
//! time there is, which scatters from ball to ball, is no less than the stroke takes; other strokes are never late
//! here. The time there is stands where this possible player, fresh, with the bat now used, is in time as often as
//! was seen or assumed: only ratios of times enter.

use super::constants::{DOUBTFUL_ABOVE, NEAR_BEST};
use super::meeting::Struck;
use super::possible::Possible;
use super::scores::Scores;
use super::steadiness::Steadiness;
use crate::calibration::limit::FIGURES;
use crate::calibration::response::Triangle;
use crate::measurement::plan::{Bowling, Goal};
use crate::normal;
use crate::stroke::Stroke;
use crate::swing::player_stroke::contact_station_m;
use rayon::prelude::*;

/// The possible players with the time there is for each of their strokes.
#[derive(Clone, Debug)]
pub struct Knowledge {
    /// The players.
    pub draws: Vec<Possible>,
    /// Strokes, with their shares of the mix, which sum to 1.
    pub strokes: Vec<(Stroke, f64)>,
    /// Bowling to face.
    pub delivery: Bowling,
    /// By stroke, how steadily these players bring a bat to the ball: eight noisy swings do not yet tell what one bat
    /// does to it.
    pub steadiness: Vec<Steadiness>,
    /// What is made the most of.
    pub goal: Goal,
    /// By player and stroke, the time there is on average, s.
    pub there_is_s: Vec<Vec<f64>>,
    /// The likeliest player and the time there is for his or her strokes: for the place that is aimed at.
    pub likeliest: Possible,
}

/// A bat as it is judged: what the ball meets, and how it is swung.
pub struct Judged<'a> {
    /// What the ball meets.
    pub struck: Struck,
    /// Errors of the bench: index of the bat among those weighed, and the triangle of their covariance.
    pub bench: Option<(usize, Triangle)>,
    /// Logarithms of time, bat speed, normal and toe speed of a stroke at a score.
    pub figures: &'a (dyn Fn(usize, usize, &Possible) -> [f64; FIGURES] + Sync),
}

/// One stroke with one bat, over all possible players.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StrokeWorth {
    /// Chance of being in time, fresh.
    pub in_time_fresh: f64,
    /// Chance of being in time at the end of the innings.
    pub in_time_late: f64,
    /// Ball speed at the end of the innings when in time, m/s: the mean over where the ball is met.
    pub ball_m_s: f64,
    /// One standard deviation of it over the possible players, m/s.
    pub ball_sd_m_s: f64,
    /// One standard deviation of the bat speed at the end of the innings over the possible players, m/s.
    pub bat_sd_m_s: f64,
    /// Where on the bat it is best met, m from the top of the handle.
    pub aim_m: f64,
}

/// What a bat is worth.
#[derive(Clone, Debug, PartialEq)]
pub struct Worth {
    /// To each possible player, m/s.
    pub by_draw: Vec<f64>,
    /// Strokes.
    pub strokes: Vec<StrokeWorth>,
    /// Chance that a short ball late in the innings is met in time.
    pub chance_in_time: f64,
    /// Ball speed late in the innings over the mix, every ball in time, m/s.
    pub ball_m_s: f64,
}

impl Worth {
    /// Expected worth, m/s.
    pub fn mean_m_s(&self) -> f64 {
        mean(&self.by_draw)
    }

    /// One standard deviation over the possible players, m/s.
    pub fn sd_m_s(&self) -> f64 {
        sd(&self.by_draw)
    }

    /// Whether this bat is near another, the best, to more than four possible players of ten.
    pub fn often_near(&self, best: &Self) -> bool {
        let near =
            self.by_draw.iter().zip(&best.by_draw).filter(|(it, best)| is_near(**it, **best));
        near.count() as f64 > DOUBTFUL_ABOVE.value * best.by_draw.len() as f64
    }

    /// Another bat's worth less this one's, player by player: mean and one standard deviation, m/s.
    pub fn to(&self, other: &Self) -> [f64; 2] {
        let by: Vec<f64> = other.by_draw.iter().zip(&self.by_draw).map(|(b, a)| b - a).collect();
        [mean(&by), sd(&by)]
    }
}

/// Whether a worth counts as the best one.
pub fn is_near(it: f64, best: f64) -> bool {
    it >= (1.0 - NEAR_BEST.value) * best
}

/// Mean of some values; nought of none.
pub fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len().max(1) as f64
}

/// One standard deviation of some values.
pub fn sd(values: &[f64]) -> f64 {
    let mean = mean(values);
    let squares: f64 = values.iter().map(|it| (it - mean) * (it - mean)).sum();
    libm::sqrt(squares / values.len().max(1) as f64)
}

impl Knowledge {
    /// Chance that a possible player is in time with a stroke that takes so long.
    fn in_time(&self, draw: usize, stroke: usize, time_s: f64) -> f64 {
        if !self.strokes[stroke].0.answers_short_ball {
            return 1.0;
        }
        let spread_s = self.draws[draw].spread_s(self.delivery.flight_s());
        normal::below((self.there_is_s[draw][stroke] - time_s) / spread_s)
    }

    /// Shares of the mix that go to strokes to the short ball, summing to 1 among them.
    fn short(&self) -> Vec<f64> {
        let share = |(stroke, share): &(Stroke, f64)| match stroke.answers_short_ball {
            true => share.max(LEAST_SHARE),
            false => 0.0,
        };
        let shares: Vec<f64> = self.strokes.iter().map(share).collect();
        let sum: f64 = shares.iter().sum();
        shares.into_iter().map(|it| if sum > 0.0 { it / sum } else { 0.0 }).collect()
    }

    /// What one bat is worth.
    pub fn worth(&self, bat: &Judged<'_>) -> Worth {
        let stations: Vec<(f64, f64)> = (0..self.strokes.len())
            .map(|k| {
                (contact_station_m(&self.strokes[k].0, bat.struck.length_m), self.aim_m(bat, k))
            })
            .collect();
        let short = self.short();
        let by_draw: Vec<One> = (0..self.draws.len())
            .into_par_iter()
            .map(|draw| self.one(bat, draw, &stations, &short))
            .collect();
        let over =
            |of: &dyn Fn(&One) -> f64| by_draw.iter().map(of).sum::<f64>() / by_draw.len() as f64;
        let spread = |of: &dyn Fn(&One) -> f64| sd(&by_draw.iter().map(of).collect::<Vec<f64>>());
        let strokes = (0..self.strokes.len())
            .map(|k| StrokeWorth {
                in_time_fresh: over(&|it| it.fresh[k]),
                in_time_late: over(&|it| it.late[k]),
                ball_m_s: over(&|it| it.ball_m_s[k]),
                ball_sd_m_s: spread(&|it| it.ball_m_s[k]),
                bat_sd_m_s: spread(&|it| it.bat_m_s[k]),
                aim_m: stations[k].1,
            })
            .collect();
        Worth {
            strokes,
            chance_in_time: over(&|it| it.late.iter().zip(&short).map(|(p, s)| p * s).sum()),
            ball_m_s: over(&|it| it.ball_m_s.iter().zip(&self.strokes).map(|(v, s)| v * s.1).sum()),
            by_draw: by_draw.into_iter().map(|it| it.worth_m_s).collect(),
        }
    }

    /// Where this bat is best met in a stroke.
    fn aim_m(&self, bat: &Judged<'_>, stroke: usize) -> f64 {
        let likely = &self.likeliest;
        let contact_m = contact_station_m(&self.strokes[stroke].0, bat.struck.length_m);
        let figures = (bat.figures)(stroke, Scores::END, likely);
        let (bat_m_s, turn_rad_s) = moving(&figures, contact_m, bat.struck.length_m);
        let ball_m_s = likely.ball_at_bat * self.delivery.speed_m_s;
        let scatter = likely.scatter(&self.steadiness[stroke]);
        bat.struck.best_place_m(contact_m, &scatter, [ball_m_s, bat_m_s, turn_rad_s])
    }

    fn one(&self, bat: &Judged<'_>, draw: usize, stations: &[(f64, f64)], short: &[f64]) -> One {
        let it = &self.draws[draw];
        let struck = read(bat, it);
        let ball_m_s = it.ball_at_bat * self.delivery.speed_m_s;
        let mut one = One::default();
        for (k, (contact_m, aim_m)) in stations.iter().enumerate() {
            let share = self.strokes[k].1;
            let fresh = (bat.figures)(k, Scores::FRESH, it);
            let closing_m_s = ball_m_s + moving(&fresh, *contact_m, struck.length_m).0;
            let met = struck.met(*aim_m, *contact_m, closing_m_s, &it.scatter(&self.steadiness[k]));
            let off = |score: usize| {
                let figures = (bat.figures)(k, score, it);
                let off = match self.goal {
                    Goal::BallSpeed => {
                        let (bat_m_s, turn_rad_s) = moving(&figures, *contact_m, struck.length_m);
                        met.exit_speed_m_s(ball_m_s, bat_m_s, turn_rad_s).max(0.0)
                    }
                    Goal::BatSpeed => libm::exp(figures[1]),
                };
                (off, self.in_time(draw, k, libm::exp(figures[0])))
            };
            if share > 0.0 {
                for (score, weight) in Scores::mean() {
                    let (off_m_s, in_time) = off(score);
                    one.worth_m_s +=
                        share * weight * off_m_s * (in_time + (1.0 - in_time) * it.late_ball);
                }
            }
            let (late_m_s, late) = off(Scores::END);
            one.ball_m_s.push(late_m_s);
            one.bat_m_s.push(libm::exp((bat.figures)(k, Scores::END, it)[1]));
            one.late.push(late);
            one.fresh.push(match short[k] > 0.0 {
                true => self.in_time(draw, k, libm::exp(fresh[0])),
                false => 1.0,
            });
        }
        one
    }
}

/// Keeps a stroke to the short ball in the chance of being in time though it is not in the mix.
const LEAST_SHARE: f64 = 1e-9;

/// One bat with one possible player.
#[derive(Clone, Debug, Default)]
struct One {
    worth_m_s: f64,
    fresh: Vec<f64>,
    late: Vec<f64>,
    ball_m_s: Vec<f64>,
    bat_m_s: Vec<f64>,
}

/// The bat with this player's errors of the bench.
fn read(bat: &Judged<'_>, it: &Possible) -> Struck {
    let Some((index, triangle)) = &bat.bench else { return bat.struck };
    let Some(errors) = it.bench.get(*index) else { return bat.struck };
    let by = crate::calibration::response::times(triangle, *errors);
    let struck = &bat.struck;
    struck.read_as([
        struck.mass_kg + by[0],
        struck.balance_m + by[1],
        struck.swing_moment_kg_m2 + by[2],
    ])
}

/// Speed of the contact station along the normal, m/s, and the turn that the toe's speed tells of, rad/s.
fn moving(figures: &[f64; FIGURES], contact_m: f64, length_m: f64) -> (f64, f64) {
    let [_, speed, normal, toe] = *figures;
    let bat_m_s = libm::exp(normal);
    (bat_m_s, bat_m_s * libm::expm1(toe - speed) / (length_m - contact_m))
}

//! The pull at fifty with the bat to ask for, and what the second dynamics says to the same swings.

use super::fault::FitFault;
use super::fitting::{Fitting, Progress};
use crate::innings::played::{AtScore, FIFTY, play};
use crate::ounce::cost::StrokeOunce;
use crate::ounce::swung::ounce_cost;
use crate::player::joints::FRESH;
use crate::swing::engine::pair::engine_swing;
use rayon::prelude::*;

/// One stroke at one score by both dynamics, at the same stroke time.
#[derive(Clone, Debug, PartialEq)]
pub struct BothWays {
    /// Index of the stroke.
    pub stroke: usize,
    /// Score.
    pub runs: f64,
    /// Bat speed by the search dynamics, m/s.
    pub bat_speed_m_s: f64,
    /// Bat speed by the engine, m/s.
    pub engine_bat_speed_m_s: f64,
    /// Largest difference of bat, toe and normal speed, as a share.
    pub difference: f64,
}

/// The innings with the bat to ask for.
#[derive(Clone, Debug)]
pub struct Headline {
    /// All strokes at 0, 10, … 50, … and at the end.
    pub points: Vec<AtScore>,
    /// Index of the point at fifty.
    pub fifty: usize,
    /// Index of the point at the end of the innings.
    pub end: usize,
    /// Both dynamics, fresh and at the end.
    pub both_ways: Vec<BothWays>,
    /// What an ounce on the bat to order costs each stroke at the end.
    pub ounces: Vec<StrokeOunce>,
}

impl Headline {
    /// Largest difference between the two dynamics, as a share.
    pub fn largest_difference(&self) -> f64 {
        self.both_ways.iter().map(|b| b.difference).fold(0.0, f64::max)
    }
}

/// Scores at which an innings of so many runs is looked at, with the places of fifty and of the end.
fn scores(runs: f64) -> (Vec<f64>, usize, usize) {
    let mut scores: Vec<f64> = (0..=5).map(|i| 10.0 * f64::from(i)).collect();
    let mut next = 75.0;
    while next < runs {
        scores.push(next);
        next += 25.0;
    }
    if !scores.contains(&runs) {
        scores.push(runs);
    }
    scores.sort_by(f64::total_cmp);
    let place = |wanted: f64| scores.iter().position(|s| *s == wanted).unwrap_or(0);
    let (fifty, end) = (place(FIFTY), place(runs));
    (scores, fifty, end)
}

/// Plays the innings with the recommended bat and swings its strokes on the engine too.
pub fn headline(fitting: &Fitting, progress: Progress<'_>) -> Result<Headline, FitFault> {
    let begin = |what: &'static str, done: f64| match progress(what, done).is_break() {
        true => Err(FitFault::Cancelled),
        false => Ok(()),
    };
    let setting = fitting.setting();
    let bat = &fitting.recommendation.made.bat;
    begin("playing the innings", 0.0)?;
    let (scores, fifty, end) = scores(setting.plan.runs);
    let points = play(
        &setting.batter,
        bat,
        &setting.plan,
        setting.delivery,
        &setting.asked_time_s,
        &scores,
    )?;
    begin("swinging the card's strokes a second way", 0.5)?;
    let taken_up = setting.batter.take_up(bat)?;
    let mut jobs = Vec::new();
    for point in [points.first(), points.get(end)].into_iter().flatten() {
        let capacity = point.left.with_slow;
        for (stroke, now) in point.with_slow.iter().enumerate() {
            jobs.push((stroke, point.left.runs, capacity, now.fastest));
        }
    }
    let both_ways = jobs
        .into_par_iter()
        .map(|(stroke, runs, capacity, own)| {
            let swinger = taken_up[stroke].swinger(&capacity);
            let engine = engine_swing(&swinger, own.stroke_time_s)?;
            let d = engine.difference(&own);
            Ok::<_, FitFault>(BothWays {
                stroke,
                runs,
                bat_speed_m_s: own.bat_speed_m_s,
                engine_bat_speed_m_s: engine.contact.bat_speed_m_s,
                difference: [d.bat_speed, d.toe_speed, d.normal_speed]
                    .map(f64::abs)
                    .into_iter()
                    .fold(0.0, f64::max),
            })
        })
        .collect::<Result<Vec<_>, FitFault>>()?;
    begin("putting an ounce here and there", 0.9)?;
    let late = points.get(end).map_or(FRESH, |it| it.left.with_slow);
    let ounces = ounce_cost(&setting.batter, bat, &late)?;
    Ok(Headline { points, fifty, end, both_ways, ounces })
}

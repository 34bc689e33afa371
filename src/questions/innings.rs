//! An innings played with one bat, and the leading stroke late in it with its band.

use super::loaded::Loaded;
use super::{Progress, Stop};
use crate::innings::played::{AtScore, FIFTY, StrokeNow, stroke_now};
use crate::measurement::nets::Lasting;
use crate::player::Strength;

/// Scores looked at between two chances to cancel.
const SCORES_AT_A_TIME: usize = 3;

/// An innings and what is told about it.
#[derive(Clone, Debug)]
pub struct Played<'a> {
    /// Whose innings it is.
    pub loaded: &'a Loaded,
    /// Label of the bat.
    pub bat_label: String,
    /// Place of the bat in the scenario.
    pub bat: usize,
    /// Every strength was multiplied by it.
    pub capacity: f64,
    /// Which strokes are shown.
    pub shown: Vec<usize>,
    /// All strokes at the scores looked at, rising.
    pub points: Vec<AtScore>,
    /// What every joint gives at the first ball.
    pub strength: Strength,
    /// In which each stroke is asked for, s.
    pub asked_time_s: Vec<f64>,
    /// The leading stroke at fifty.
    pub at_fifty: Lead,
    /// The leading stroke at the end of the innings.
    pub at_end: Lead,
    /// Tired readings narrowed the band of lasting fatigue.
    pub read_in_nets: bool,
}

/// The leading stroke at one score, by what is believed of lasting fatigue.
#[derive(Clone, Copy, Debug)]
pub struct Lead {
    /// The score.
    pub runs: f64,
    /// At the first ball.
    pub fresh: StrokeNow,
    /// The slow state's central value.
    pub with_slow: StrokeNow,
    /// No lasting fatigue.
    pub without_slow: StrokeNow,
    /// Its lowest: as without, unless the player was read in the nets.
    pub with_slow_low: StrokeNow,
    /// Its highest.
    pub with_slow_high: StrokeNow,
}

impl Lead {
    /// Bat speed lost since the first ball, as a share.
    pub fn drop_share(&self, now: &StrokeNow) -> f64 {
        1.0 - now.bat_speed_m_s() / self.fresh.bat_speed_m_s()
    }
}

/// 0, 10, 20 … to fifty or the end of the innings, whichever is later; wider steps beyond 100.
pub fn scores(runs: f64) -> Vec<f64> {
    let last = runs.max(FIFTY);
    let mut out = Vec::new();
    let mut score = 0.0;
    while score < last - 1e-9 {
        out.push(score);
        score += if score < 100.0 { 10.0 } else { 50.0 };
    }
    out.push(last);
    if !out.contains(&runs) {
        out.push(runs);
        out.sort_by(f64::total_cmp);
    }
    out
}

/// Plays the innings; `shown` is the only stroke to be shown, if not all are.
///
/// # Errors
/// If no such innings can be played, a stroke has no controlled swing, or the work is cancelled.
pub fn play<'a>(
    loaded: &'a Loaded,
    bat: usize,
    shown: Option<usize>,
    capacity: f64,
    progress: &dyn Progress,
) -> Result<Played<'a>, Stop> {
    let runs = loaded.scenario.innings.runs;
    let weighed = &loaded.bats[bat];
    progress.step("finding the player's strokes", 0.0)?;
    let batter = loaded.batter(weighed, capacity)?;
    progress.step("timing the strokes fresh", 0.1)?;
    let asked_time_s = loaded.asked_times_s(&batter)?;
    let bowled = loaded.scenario.bowling;
    let lead = loaded.lead();
    let asked_scores = scores(runs);
    let mut points = Vec::with_capacity(asked_scores.len());
    for some in asked_scores.chunks(SCORES_AT_A_TIME) {
        let done = points.len() as f64 / asked_scores.len() as f64;
        progress.step("playing ball by ball", 0.25 + 0.65 * done)?;
        points.extend(loaded.play(&batter, &weighed.bat, &asked_time_s, some)?);
    }
    progress.step("asking what lasting fatigue could do at most", 0.9)?;
    let held = batter.strokes[lead].hold(&weighed.bat)?;
    let read_in_nets = batter.player.lasting != Lasting::UNKNOWN;
    let lead_at = |runs: f64| -> Result<Lead, Stop> {
        let at = |runs: f64| points.iter().find(|it| it.left.runs == runs);
        let (Some(start), Some(now)) = (at(0.0), at(runs)) else {
            return Err(Stop::OurMistake(format!("the innings was not looked at at {runs} runs")));
        };
        let (with_slow, without_slow) = (now.with_slow[lead], now.without_slow[lead]);
        let guess = Some(with_slow.fastest.stroke_time_s);
        let with = |left| stroke_now(&batter, &held, left, asked_time_s[lead], guess, bowled);
        let with_slow_high = with(&now.left.with_slow_high)?;
        let with_slow_low = match read_in_nets {
            true => with(&now.left.with_slow_low)?,
            false => without_slow,
        };
        let fresh = start.without_slow[lead];
        Ok(Lead { runs, fresh, with_slow, without_slow, with_slow_low, with_slow_high })
    };
    Ok(Played {
        loaded,
        at_fifty: lead_at(FIFTY)?,
        at_end: lead_at(runs)?,
        read_in_nets,
        bat_label: weighed.reading.label.clone(),
        bat,
        capacity,
        shown: shown.map_or_else(|| (0..loaded.strokes.len()).collect(), |it| vec![it]),
        points,
        strength: batter.player.strength,
        asked_time_s,
    })
}

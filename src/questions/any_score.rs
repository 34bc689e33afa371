//! One bat through an innings of a hundred runs, and what stands at any score between.

use std::sync::Arc;

use rayon::prelude::*;

use super::loaded::Loaded;
use super::{Progress, Stop};
use crate::frames::DVec3;
use crate::innings::played::{AtScore, StrokeNow, stroke_now};
use crate::measurement::plan::Bowling;
use crate::swing::batter::Batter;
use crate::swing::chain::Chain;
use crate::swing::film::{self, Film, Picture, Way};
use crate::swing::observed::observe;
use crate::swing::player_stroke::Held;

/// Scores looked at first, one after the other, so that there is something to see at once.
const FIRST: [f64; 3] = [0.0, 50.0, 100.0];
/// Scores looked at when there is time.
const FINER: [f64; 5] = [25.0, 75.0, 10.0, 35.0, 85.0];

/// In which time a stroke is seen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Tempo {
    /// As fast as it can be and stay under control: every bat with the same effort.
    #[default]
    Fastest,
    /// In which it is asked for: every bat in the same time.
    Asked,
}

/// One score.
#[derive(Clone, Debug)]
pub struct Point {
    /// All strokes, with the fatigue believed and with the least.
    pub at: AtScore,
    /// With the most lasting fatigue there may be.
    pub most_tired: Vec<StrokeNow>,
    /// Each stroke to be seen, by [`Tempo`]: the fastest controlled swing, and that in which it is asked for.
    pub films: [Vec<Film>; 2],
}

/// A bat through the innings.
#[derive(Clone, Debug)]
pub struct Innings {
    /// Names of the strokes.
    pub strokes: Vec<String>,
    /// In which each is asked for, s.
    pub asked_time_s: Vec<f64>,
    /// Bowling faced.
    pub delivery: Bowling,
    /// Score at which the scenario's innings ends.
    pub end_runs: f64,
    /// Player and bat as they hang together in each stroke, with the bat's contact point from the top of
    /// the handle, m.
    pub chains: Arc<[(Chain, f64)]>,
    /// Scores so far, rising.
    pub points: Vec<Point>,
}

/// A stroke at a score, ready to be seen.
#[derive(Clone, Debug)]
pub struct Reel<'a> {
    /// Player and bat.
    pub chain: &'a Chain,
    /// Contact point of the bat from the top of its handle, m.
    pub contact_from_top_m: f64,
    low: &'a Film,
    high: &'a Film,
    part: f64,
}

impl Reel<'_> {
    /// When bat meets ball, s.
    pub fn contact_s(&self) -> f64 {
        self.low.contact_s + self.part * (self.high.contact_s - self.low.contact_s)
    }

    /// Where it does, m, W.
    pub fn contact_W(&self) -> DVec3 {
        self.low.contact_W + (self.high.contact_W - self.low.contact_W) * self.part
    }

    /// Way of the contact point at that time.
    pub fn way(&self, t_s: f64) -> Option<Way> {
        let gone_m = |t_s| Some(self.at(t_s)?.gone_m);
        Some(Way { gone_m: gone_m(t_s)?, whole_m: gone_m(self.contact_s())? })
    }

    /// The instant so long after the top of the backlift.
    pub fn at(&self, t_s: f64) -> Option<Picture> {
        film::between(self.low, self.high, self.part, t_s / self.contact_s())
    }
}

/// What is known before an innings is played.
#[derive(Clone, Default)]
pub struct Before {
    /// The innings as far as it was played.
    pub innings: Option<Arc<Innings>>,
    /// In which each stroke is asked for, s: the same for every bat in these hands.
    pub asked_time_s: Option<Vec<f64>>,
    /// Older figures of the bat are on the screen: all scores come together, and so sooner.
    pub together: bool,
}

/// A figure between what may be least and most.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// With the most lasting fatigue.
    pub low: f64,
    /// Believed.
    pub best: f64,
    /// With the least.
    pub high: f64,
}

/// A figure of a stroke.
pub type Of = fn(&StrokeNow) -> f64;

impl Innings {
    /// Plays it at the first scores, or at the finer ones where those are there; `tell` hears of it as
    /// it grows.
    ///
    /// # Errors
    /// If the innings cannot be played, the player cannot swing the bat, or the work is asked to stop.
    pub fn play(
        loaded: &Loaded,
        bat: usize,
        before: &Before,
        progress: &dyn Progress,
        tell: &dyn Fn(Self),
    ) -> Result<Self, Stop> {
        let step = |share: f64| progress.step("playing ball by ball", share);
        step(0.0)?;
        let Some(weighed) = loaded.bats.get(bat) else {
            return Err(Stop::OurMistake(format!("there is no bat {bat}")));
        };
        let batter = loaded.batter(weighed, 1.0)?;
        step(0.1)?;
        let held = batter.take_up(&weighed.bat)?;
        let mut it = match &before.innings {
            Some(innings) => Self::clone(innings),
            None => Self {
                strokes: loaded.strokes.iter().map(|it| it.name.clone()).collect(),
                asked_time_s: match &before.asked_time_s {
                    Some(known) => known.clone(),
                    None => loaded.asked_times_s(&batter)?,
                },
                delivery: loaded.scenario.bowling,
                end_runs: loaded.scenario.innings.runs,
                chains: held.iter().map(|it| (it.chain.clone(), it.reference.contact_m)).collect(),
                points: Vec::new(),
            },
        };
        let scores: &[f64] = if before.innings.is_some() { &FINER } else { &FIRST };
        let count = scores.len();
        let at_once = if before.together { count } else { 1 };
        for (n, scores) in scores.chunks(at_once).enumerate() {
            step(0.2 + 0.8 * (n * at_once) as f64 / count as f64)?;
            for at in loaded.play(&batter, &weighed.bat, &it.asked_time_s, scores)? {
                let most_tired = it.most_tired(&batter, &held, &at)?;
                let films = films(&held, &at, &it.asked_time_s);
                it.points.push(Point { at, most_tired, films });
            }
            it.points.sort_by(|a, b| a.at.left.runs.total_cmp(&b.at.left.runs));
            if (n + 1) * at_once < count {
                tell(it.clone());
            }
        }
        Ok(it)
    }

    fn most_tired(
        &self,
        batter: &Batter,
        held: &[Held],
        at: &AtScore,
    ) -> Result<Vec<StrokeNow>, Stop> {
        let left = &at.left.with_slow_high;
        if *left == at.left.with_slow {
            return Ok(at.with_slow.clone());
        }
        let all = held.par_iter().zip(&self.asked_time_s).zip(&at.with_slow);
        all.map(|((held, asked), now)| {
            let guess = Some(now.fastest.stroke_time_s);
            Ok(stroke_now(batter, held, left, *asked, guess, self.delivery)?)
        })
        .collect()
    }

    /// Whether the first scores are there.
    pub fn has_first(&self) -> bool {
        self.points.len() >= FIRST.len()
    }

    /// Whether all scores are there.
    pub fn is_complete(&self) -> bool {
        self.points.len() >= FIRST.len() + FINER.len()
    }

    /// Place of the stroke of that name.
    pub fn stroke(&self, name: &str) -> Option<usize> {
        self.strokes.iter().position(|it| it == name)
    }

    /// The two scores looked at on either side, and how far between them.
    fn around(&self, runs: f64) -> Option<(&Point, &Point, f64)> {
        let after = self.points.iter().position(|it| it.at.left.runs >= runs);
        let after = after.unwrap_or(self.points.len().checked_sub(1)?);
        let (low, high) = (self.points.get(after.saturating_sub(1))?, self.points.get(after)?);
        let span = high.at.left.runs - low.at.left.runs;
        let part = if span > 0.0 { (runs - low.at.left.runs) / span } else { 0.0 };
        Some((low, high, part.clamp(0.0, 1.0)))
    }

    /// A figure at a score, evenly between the scores looked at.
    pub fn at(&self, stroke: usize, runs: f64, of: Of) -> Option<Band> {
        let (low, high, part) = self.around(runs)?;
        let between = |from: &StrokeNow, to: &StrokeNow| of(from) + part * (of(to) - of(from));
        let pick = |side: fn(&Point) -> &Vec<StrokeNow>| {
            Some(between(side(low).get(stroke)?, side(high).get(stroke)?))
        };
        let a = pick(|it| &it.most_tired)?;
        let b = pick(|it| &it.at.without_slow)?;
        Some(Band { low: a.min(b), best: pick(|it| &it.at.with_slow)?, high: a.max(b) })
    }

    /// The stroke at a score, to be seen.
    pub fn reel(&self, stroke: usize, runs: f64, tempo: Tempo) -> Option<Reel<'_>> {
        let (low, high, part) = self.around(runs)?;
        let [low, high] = [low, high].map(|it| it.films[tempo as usize].get(stroke));
        let (low, high) = (low?, high?);
        let (chain, contact_from_top_m) = self.chains.get(stroke)?;
        Some(Reel { chain, contact_from_top_m: *contact_from_top_m, low, high, part })
    }

    /// Balls faced by a score.
    pub fn balls_at(&self, runs: f64) -> Option<f64> {
        let (low, high, part) = self.around(runs)?;
        let [a, b] = [low, high].map(|it| f64::from(it.at.left.balls_faced));
        Some(a + part * (b - a))
    }
}

fn films(held: &[Held], at: &AtScore, asked_time_s: &[f64]) -> [Vec<Film>; 2] {
    let fastest_s: Vec<f64> = at.with_slow.iter().map(|it| it.fastest.stroke_time_s).collect();
    [&fastest_s[..], asked_time_s].map(|times_s| {
        let all = held.par_iter().zip(times_s);
        all.map(|(held, time_s)| Film::of(&observe(held, &at.left.with_slow, *time_s))).collect()
    })
}

//! One bat as every possible player swings it.

use super::innings::Innings;
use super::other_path::{OnPaths, on_paths};
use super::possible::Possible;
use super::scores::Scores;
use super::swings_fault::SwingsFault;
use super::ways::Ways;
use crate::bat::Bat;
use crate::calibration::limit::{FIGURES, LnSwing, Near, swing_at};
use crate::calibration::response::Response;
use crate::calibration::tiredness::Tiredness;
use crate::innings::played::{InningsFault, ball_loads, schedule};
use crate::measurement::nets::PART_COUNT;
use crate::swing::batter::TakenUp;
use crate::swing::player_stroke::Held;
use rayon::prelude::*;

/// One bat in the hands of every possible player.
#[derive(Clone, Debug)]
pub struct SwungBat {
    /// By stroke.
    pub strokes: Vec<SwungStroke>,
    /// What each score leaves of the strength, with this bat.
    pub tired: Vec<Tiredness>,
}

/// One stroke with one bat.
#[derive(Clone, Debug)]
pub struct SwungStroke {
    /// Over all strengths.
    pub(super) response: Response,
    /// On the other paths; what the one adds that suits player and bat best.
    pub on_paths: OnPaths,
    /// Added with a slow rise of torque.
    pub rise: [f64; FIGURES],
    /// Added by the law that holds harder to the path.
    pub law: [f64; FIGURES],
    /// Added for each independent standard error of the bench.
    pub(super) bench: [[f64; FIGURES]; 3],
}

impl SwungBat {
    /// Figures of a stroke at a score for a possible player, the bench's errors of this bat among them.
    pub fn figures(
        &self,
        stroke: usize,
        score: usize,
        it: &Possible,
        bench: Option<&[f64; 3]>,
    ) -> [f64; FIGURES] {
        let swung = &self.strokes[stroke];
        let strength = self.tired[score].tired(&it.strength.ln_strength, it.strength.lasting);
        let mut out = swung.response.at(&strength).figures();
        for (f, out) in out.iter_mut().enumerate() {
            *out +=
                it.path * swung.on_paths.best[f] + it.rise * swung.rise[f] + it.law * swung.law[f];
            if let Some(errors) = bench {
                *out += errors.iter().zip(&swung.bench).map(|(z, by)| z * by[f]).sum::<f64>();
            }
        }
        out
    }
}

/// What each score leaves of the strength, with a bat taken up.
pub fn tiredness(
    ways: &Ways,
    innings: Innings<'_>,
    taken_up: &TakenUp,
    scores: &Scores,
) -> Result<Vec<Tiredness>, SwingsFault> {
    let loads = ball_loads(&ways.batter, taken_up, innings.plan, innings.asked_time_s);
    let schedule = schedule(innings.plan, &ways.batter);
    Ok(Tiredness::at(&schedule, &loads, &scores.runs).map_err(InningsFault::from)?)
}

/// How much longer a stroke takes with a slow rise of torque, on the logarithm, about.
const USUAL_WAY: f64 = 0.2;

/// One bat of which the responses are known: its fatigue, and what path, rise and law do.
/// `like` is another bat of the same player, for where to look.
pub(super) fn swung(
    ways: &Ways,
    innings: Innings<'_>,
    bat: &Bat,
    taken_up: &TakenUp,
    responses: Vec<Response>,
    (scores, like): (&Scores, Option<&SwungBat>),
) -> Result<SwungBat, SwingsFault> {
    let tired = tiredness(ways, innings, taken_up, scores)?;
    let slow = ways.slow_rise.take_up(bat)?;
    let harder = ways.held_harder.take_up(bat)?;
    let strokes = responses
        .into_par_iter()
        .enumerate()
        .map(|(k, response)| {
            let here = response.at(&[0.0; PART_COUNT]);
            // Another way takes about as much longer as it does with a bat like this one.
            let like = like.map(|it| &it.strokes[k]);
            let [rise_ln, law_ln] = like.map_or([USUAL_WAY, 0.0], |it| [it.rise[0], it.law[0]]);
            let near = |ln_time: f64| response.near(ln_time);
            Ok(SwungStroke {
                on_paths: on_paths(
                    &ways.other_paths[k],
                    bat,
                    &here,
                    &near,
                    like.map(|it| &it.on_paths),
                )?,
                rise: moved(&slow.held[k], &here, near(here.ln_time + rise_ln)),
                law: moved(&harder.held[k], &here, near(here.ln_time + law_ln)),
                bench: [[0.0; FIGURES]; 3],
                response,
            })
        })
        .collect::<Result<Vec<_>, SwingsFault>>()?;
    Ok(SwungBat { strokes, tired })
}

/// Figures of a stroke at the likeliest strength less those given; nothing where it cannot be controlled.
pub fn moved(held: &Held, here: &LnSwing, near: Near) -> [f64; FIGURES] {
    let there = swing_at(held, &[0.0; PART_COUNT], Some(near));
    there.map_or([0.0; FIGURES], |it| it.swing.less(here))
}

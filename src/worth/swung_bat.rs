//! One bat as every possible player swings it.

use super::possible::Possible;
use super::scores::Scores;
use super::swings::{Innings, SwingsFault};
use super::ways::{Ways, differs};
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
    /// Added on the second path.
    pub path: [f64; FIGURES],
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
            *out += it.path * swung.path[f] + it.rise * swung.rise[f] + it.law * swung.law[f];
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

/// How much longer a stroke takes on another path or with a slow rise of torque, on the logarithm, about.
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
            let [path_ln, rise_ln, law_ln] = like.map_or([USUAL_WAY, USUAL_WAY, 0.0], |it| {
                let it = &it.strokes[k];
                [it.path[0], it.rise[0], it.law[0]]
            });
            let near = |longer: f64| response.near(here.ln_time + longer);
            let name = &ways.batter.strokes[k].stroke.name;
            let other = ways.other_path.stroke_index(name);
            let other = other.filter(|i| differs(ways, &ways.other_path, k, *i));
            let path = other.map(|i| ways.other_path.strokes[i].hold(bat)).transpose()?;
            Ok(SwungStroke {
                path: path.map_or([0.0; FIGURES], |held| moved(&held, &here, near(path_ln))),
                rise: moved(&slow.held[k], &here, near(rise_ln)),
                law: moved(&harder.held[k], &here, near(law_ln)),
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

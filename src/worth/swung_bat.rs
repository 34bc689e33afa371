//! One bat as every possible player swings it.

use super::other_path::{OnPaths, on_paths};
use super::possible::Possible;
use super::scores::Scores;
use super::ways::{SwingsFault, Ways};
use crate::bat::Bat;
use crate::bat::expected::bat_with_swing_moment;
use crate::bat::figures::WeighedBat;
use crate::calibration::limit::{FIGURES, LN_TIME, LnSwing, Near, less, swing_at};
use crate::calibration::response::{Response, triangle};
use crate::calibration::tiredness::Tiredness;
use crate::measurement::nets::PART_COUNT;
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
    bench: [[f64; FIGURES]; 3],
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
        let mut out = swung.response.at(&strength);
        for (f, out) in out.iter_mut().enumerate() {
            *out +=
                it.path * swung.on_paths.best[f] + it.rise * swung.rise[f] + it.law * swung.law[f];
            if let Some(errors) = bench {
                *out += errors.iter().zip(&swung.bench).map(|(z, by)| z * by[f]).sum::<f64>();
            }
        }
        out
    }

    /// With what the errors of the bench do to each stroke.
    pub(super) fn read_at_bench(mut self, slopes: &Slopes, weighed: &WeighedBat) -> Self {
        let errors = triangle(&weighed.covariance());
        for (k, stroke) in self.strokes.iter_mut().enumerate() {
            // A standard error of the bench moves all three figures together: a column of the triangle.
            stroke.bench = core::array::from_fn(|column| {
                core::array::from_fn(|f| {
                    (0..3).map(|axis| slopes[axis][k][f] * errors[axis][column]).sum()
                })
            });
        }
        self
    }
}

/// How much longer a stroke takes with a slow rise of torque, on the logarithm, about.
const USUAL_WAY: f64 = 0.2;

/// One bat of which the responses are known: its fatigue, and what path, rise and law do.
/// `like` is another bat of the same player, for where to look.
pub(super) fn swung(
    ways: &Ways,
    bat: &Bat,
    taken_up: &[Held],
    responses: Vec<Response>,
    scores: &Scores,
    like: Option<&SwungBat>,
) -> Result<SwungBat, SwingsFault> {
    let tired = ways.tiredness(taken_up, scores)?;
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
                rise: moved(&slow[k], &here, near(here[LN_TIME] + rise_ln)),
                law: moved(&harder[k], &here, near(here[LN_TIME] + law_ln)),
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
    there.map_or([0.0; FIGURES], |it| less(&it.swing, here))
}

/// Steps of weight (kg), balance point (m) and swing moment (kg m²) at which the bench's errors are looked at.
const BENCH_STEPS: [f64; 3] = [0.03, 0.01, 0.008];

/// By axis and stroke: change of the figures for a kilogram, a metre and a kg m².
pub(super) type Slopes = [Vec<[f64; FIGURES]>; 3];

/// What weight, balance point and swing moment do to each stroke, by the base bat: in logarithms nearly the same for
/// any bat. `family` is that of any weighed bat; without one nothing was weighed.
pub(super) fn bench_slopes(
    ways: &Ways,
    base: &SwungBat,
    bat: &Bat,
    family: Option<&WeighedBat>,
) -> Result<Slopes, SwingsFault> {
    let none = vec![[0.0; FIGURES]; base.strokes.len()];
    let Some(family) = family else { return Ok([none.clone(), none.clone(), none]) };
    let middle = [bat.mass_kg(), bat.balance_m(), bat.swing_moment_kg_m2()];
    let slopes = |axis: usize| -> Result<Vec<[f64; FIGURES]>, SwingsFault> {
        let mut figures = middle;
        figures[axis] += BENCH_STEPS[axis];
        let [mass_kg, balance_m, swing] = figures;
        let moved_bat = bat_with_swing_moment(family.family(), "", mass_kg, balance_m, swing)
            .and_then(|it| Bat::new("", bat.length_m(), it.mass_kg(), it.com_B(), it.I_Com_B()));
        let Ok(moved_bat) = moved_bat else { return Ok(none.clone()) };
        let taken_up = ways.batter.take_up(&moved_bat)?;
        let by = |(swung, held): (&SwungStroke, _)| {
            let here = swung.response.at(&[0.0; PART_COUNT]);
            let near = swung.response.near(here[LN_TIME]);
            moved(held, &here, near).map(|it| it / BENCH_STEPS[axis])
        };
        Ok(base.strokes.iter().zip(&taken_up).map(by).collect())
    };
    let (mass, (balance, swing)) =
        rayon::join(|| slopes(0), || rayon::join(|| slopes(1), || slopes(2)));
    Ok([mass?, balance?, swing?])
}

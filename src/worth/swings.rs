//! Every bat as every possible player swings it, fresh and through the innings.
//!
//! Full simulations of the bat now used over all strengths ([`Response`]), and for every other bat the difference
//! at four of them; what the second path, a slow rise of torque and the bench's errors do to each bat is simulated
//! at the likeliest strength. Figures are logarithms: of stroke time, bat speed, its part along the normal, toe speed.

use super::possible::{Possible, Prior};
use super::scores::Scores;
use crate::bat::Bat;
use crate::bat::expected::bat_with_swing_moment;
use crate::bat::figures::WeighedBat;
use crate::calibration::limit::{FIGURES, LnSwing, swing_at};
use crate::calibration::points::even_point;
use crate::calibration::response::{Response, ResponseFault, Triangle, times, triangle};
use crate::calibration::tiredness::Tiredness;
use crate::innings::played::{InningsFault, ball_loads, schedule};
use crate::measurement::nets::{Lasting, PART_COUNT};
use crate::measurement::plan::InningsPlan;
use crate::normal;
use crate::swing::activation::FROM_REST_S;
use crate::swing::assumed::Assumed;
use crate::swing::batter::{Batter, TakenUp};
use crate::swing::player_stroke::{Held, SwingFault};
use core::ops::ControlFlow;
use rayon::prelude::*;

/// Why the bats could not be swung.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SwingsFault {
    /// No bat of all can be controlled by players like this one.
    #[error(
        "no bat of these can be brought to the ball under control by a player of this strength"
    )]
    BeyondControl,
    /// The caller asked to stop.
    #[error("cancelled")]
    Cancelled,
    /// An innings failed.
    #[error(transparent)]
    Innings(#[from] InningsFault),
}

impl From<SwingFault> for SwingsFault {
    fn from(fault: SwingFault) -> Self {
        Self::Innings(fault.into())
    }
}

/// The player's batter, the same on the other joint paths, and with torque that rises slowly.
#[derive(Clone, Debug)]
pub struct Ways {
    /// As stored.
    pub batter: Batter,
    /// On the other joint paths, those strokes that have one.
    pub other_path: Batter,
    /// With torque that rises as from rest.
    pub slow_rise: Batter,
}

impl Ways {
    /// From the batter and the other strokes.
    pub fn new(
        batter: &Batter,
        otherwise: &[crate::stroke::Stroke],
        any_bat: &Bat,
    ) -> Result<Self, SwingFault> {
        let (player, handle_m) = (&batter.player, batter.handle_diameter_m);
        let assumed = Assumed { activation_time_s: FROM_REST_S, ..batter.assumed };
        Ok(Self {
            batter: batter.clone(),
            other_path: Batter::new(player, otherwise, any_bat, handle_m)?,
            slow_rise: batter.in_place(player, handle_m, assumed),
        })
    }
}

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
    response: Response,
    /// Added on the second path.
    pub path: [f64; FIGURES],
    /// Added with a slow rise of torque.
    pub rise: [f64; FIGURES],
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
        let mut out = swung.response.at(&strength).figures();
        for (f, out) in out.iter_mut().enumerate() {
            *out += it.path * swung.path[f] + it.rise * swung.rise[f];
            if let Some(errors) = bench {
                *out += errors.iter().zip(&swung.bench).map(|(z, by)| z * by[f]).sum::<f64>();
            }
        }
        out
    }
}

/// All bats of one player.
#[derive(Clone, Debug)]
pub struct Swings {
    /// Lower triangle of a covariance that the strengths fill, the tired ones too.
    pub region: Triangle,
    /// Strengths at which the bat now used was swung.
    pub strengths: Vec<[f64; PART_COUNT]>,
    /// Scores.
    pub scores: Scores,
    /// The bat that all others are held against: the one now used, or the first that can be controlled.
    pub base: SwungBat,
    /// The same as a bat.
    pub base_made: Bat,
    /// Its index among the bats; none where it is the standard bat of the size.
    pub base_bat: Option<usize>,
    /// The weighed bats; none where the player cannot control it.
    pub bats: Vec<Option<SwungBat>>,
}

/// What the bats are swung in.
#[derive(Clone, Copy, Debug)]
pub struct Innings<'a> {
    /// The plan.
    pub plan: &'a InningsPlan,
    /// Stroke time at which loads are taken, by stroke, s.
    pub asked_time_s: &'a [f64],
}

/// The bats of one player.
#[derive(Clone, Copy, Debug)]
pub struct Bats<'a> {
    /// Those weighed at the bench.
    pub weighed: &'a [WeighedBat],
    /// Index of the one now used.
    pub first: usize,
    /// The standard bat of the player's size: it stands in where none of them can be controlled.
    pub standard: &'a Bat,
}

/// Strengths at which the bat now used is swung.
const STRENGTHS: usize = 20;
/// Spread of these strengths over that of the players.
const REACH: f64 = 1.5;
/// Steps of weight (kg), balance point (m) and swing moment (kg m²) at which the bench's errors are looked at.
const BENCH_STEPS: [f64; 3] = [0.03, 0.01, 0.008];

/// Told of each swing searched.
pub type Step<'a> = &'a (dyn Fn() -> ControlFlow<()> + Sync);

impl Swings {
    /// Swings them all.
    pub fn new(
        ways: &Ways,
        innings: Innings<'_>,
        prior: &Prior,
        bats: Bats<'_>,
        scores: Scores,
        step: Step<'_>,
    ) -> Result<Self, SwingsFault> {
        let Bats { weighed, first, standard } = bats;
        let order = core::iter::once(first).chain((0..weighed.len()).filter(|it| *it != first));
        let candidates = order.filter_map(|i| Some((Some(i), &weighed.get(i)?.bat)));
        let mut based = Err(SwingsFault::BeyondControl);
        for (base_bat, bat) in candidates.chain([(None, standard)]) {
            based = base(ways, innings, prior, bat, &scores, step).map(|it| (base_bat, bat, it));
            if !matches!(based, Err(SwingsFault::BeyondControl)) {
                break;
            }
        }
        let (base_bat, bat, (region, strengths, base)) = based?;
        let base_made = bat.clone();
        let slopes = bench_slopes(ways, &base, &base_made, weighed.first())?;
        let mut it =
            Self { region, strengths, scores, base, base_made, base_bat, bats: Vec::new() };
        let bats: Vec<Option<SwungBat>> = weighed
            .par_iter()
            .enumerate()
            .map(|(i, weighed)| {
                let swung = match base_bat == Some(i) {
                    true => Ok(it.base.clone()),
                    false => it.with_bat(ways, innings, &weighed.bat, step),
                };
                match swung {
                    Ok(swung) => Ok(Some(swung.read_at_bench(&slopes, weighed))),
                    Err(SwingsFault::BeyondControl) => Ok(None),
                    Err(fault) => Err(fault),
                }
            })
            .collect::<Result<_, SwingsFault>>()?;
        if let Some(Some(own)) = base_bat.map(|i| bats[i].clone()) {
            it.base = own;
        }
        it.bats = bats;
        Ok(it)
    }

    /// Another bat: its difference from the base over the strengths, and its own fatigue.
    pub fn with_bat(
        &self,
        ways: &Ways,
        innings: Innings<'_>,
        bat: &Bat,
        step: Step<'_>,
    ) -> Result<SwungBat, SwingsFault> {
        let taken_up = ways.batter.take_up(bat)?;
        let strokes = self
            .base
            .strokes
            .iter()
            .enumerate()
            .map(|(k, base)| {
                go_on(step)?;
                let held = &taken_up.held[k];
                base.response.with_bat(held, &self.region).map_err(beyond)
            })
            .collect::<Result<Vec<Response>, SwingsFault>>()?;
        swung(ways, innings, bat, &taken_up, strokes, &self.scores)
    }

    /// Figures of the base bat at a strength, no score played.
    pub fn base_at(&self, stroke: usize, ln_strength: &[f64; PART_COUNT]) -> LnSwing {
        self.base.strokes[stroke].response.at(ln_strength)
    }
}

fn go_on(step: Step<'_>) -> Result<(), SwingsFault> {
    match step() {
        ControlFlow::Continue(()) => Ok(()),
        ControlFlow::Break(()) => Err(SwingsFault::Cancelled),
    }
}

fn beyond(fault: ResponseFault) -> SwingsFault {
    match fault {
        ResponseFault::BeyondControl => SwingsFault::BeyondControl,
        ResponseFault::Cancelled => SwingsFault::Cancelled,
    }
}

type Based = (Triangle, Vec<[f64; PART_COUNT]>, SwungBat);

/// The base bat over strengths that reach from strong to weak and tired.
fn base(
    ways: &Ways,
    innings: Innings<'_>,
    prior: &Prior,
    bat: &Bat,
    scores: &Scores,
    step: Step<'_>,
) -> Result<Based, SwingsFault> {
    let taken_up = ways.batter.take_up(bat)?;
    let tired = tiredness(ways, innings, &taken_up, scores)?;
    let most = tired[Scores::END].tired(&[0.0; PART_COUNT], Lasting::UNKNOWN.high);
    let node = |i: usize| -> [f64; PART_COUNT] {
        let [a, b, c, tired] = even_point(i);
        let z = [a, b, c].map(|p| REACH * normal::quantile(p));
        let own = times(&prior.spread, z);
        core::array::from_fn(|j| own[j] + tired * most[j])
    };
    let strengths: Vec<_> =
        core::iter::once([0.0; PART_COUNT]).chain((1..STRENGTHS).map(node)).collect();
    let region = filled(&prior.spread, &most);
    let strokes = taken_up
        .held
        .par_iter()
        .map(|held| Response::over(held, &region, &strengths, step).map_err(beyond))
        .collect::<Result<Vec<_>, _>>()?;
    let swung = swung(ways, innings, bat, &taken_up, strokes, scores)?;
    Ok((region, strengths, swung))
}

/// The covariance of the strengths with the tired ones' added, as a lower triangle.
fn filled(spread: &Triangle, most_tired: &[f64; PART_COUNT]) -> Triangle {
    let covariance = core::array::from_fn(|i| {
        core::array::from_fn(|j| {
            let own: f64 = (0..PART_COUNT).map(|k| spread[i][k] * spread[j][k]).sum();
            let floor = if i == j { LEAST_SPREAD * LEAST_SPREAD } else { 0.0 };
            own + most_tired[i] * most_tired[j] + floor
        })
    });
    triangle(&covariance)
}

/// Keeps a part that is known exactly from having no width at all.
const LEAST_SPREAD: f64 = 0.02;

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

/// One bat of which the responses are known: its fatigue, and what path and rise do.
fn swung(
    ways: &Ways,
    innings: Innings<'_>,
    bat: &Bat,
    taken_up: &TakenUp,
    responses: Vec<Response>,
    scores: &Scores,
) -> Result<SwungBat, SwingsFault> {
    let tired = tiredness(ways, innings, taken_up, scores)?;
    let slow = ways.slow_rise.take_up(bat)?;
    let strokes = responses
        .into_iter()
        .enumerate()
        .map(|(k, response)| {
            let here = response.at(&[0.0; PART_COUNT]);
            let name = &ways.batter.strokes[k].stroke.name;
            let other = ways.other_path.stroke_index(name);
            let other = other.filter(|i| differs(ways, &ways.other_path, k, *i));
            let path = other.map(|i| ways.other_path.strokes[i].hold(bat)).transpose()?;
            Ok(SwungStroke {
                path: path.map_or([0.0; FIGURES], |held| moved(&held, &here)),
                rise: moved(&slow.held[k], &here),
                bench: [[0.0; FIGURES]; 3],
                response,
            })
        })
        .collect::<Result<Vec<_>, SwingsFault>>()?;
    Ok(SwungBat { strokes, tired })
}

/// Whether a stroke is swung another way at all: not on the same path with the same rise of torque.
pub fn differs(ways: &Ways, other: &Batter, stroke: usize, of_other: usize) -> bool {
    other.assumed != ways.batter.assumed
        || other.strokes[of_other].stroke != ways.batter.strokes[stroke].stroke
}

/// Figures of a stroke at the likeliest strength less those given; nothing where it cannot be controlled.
pub fn moved(held: &Held, here: &LnSwing) -> [f64; FIGURES] {
    let there = swing_at(held, &[0.0; PART_COUNT], Some(here.ln_time));
    there.map_or([0.0; FIGURES], |it| it.less(here))
}

/// By axis and stroke: change of the figures for a kilogram, a metre and a kg m².
type Slopes = [Vec<[f64; FIGURES]>; 3];

/// What weight, balance point and swing moment do to each stroke, by the base bat: in logarithms nearly the same for
/// any bat. `family` is that of any weighed bat; without one nothing was weighed.
fn bench_slopes(
    ways: &Ways,
    base: &SwungBat,
    bat: &Bat,
    family: Option<&WeighedBat>,
) -> Result<Slopes, SwingsFault> {
    let none = vec![[0.0; FIGURES]; base.strokes.len()];
    let Some(family) = family else { return Ok([none.clone(), none.clone(), none]) };
    let middle = [bat.mass_kg(), bat.balance_m(), bat.swing_moment_kg_m2()];
    let slopes: Vec<Vec<[f64; FIGURES]>> = (0..3)
        .into_par_iter()
        .map(|axis| {
            let mut figures = middle;
            figures[axis] += BENCH_STEPS[axis];
            let [mass_kg, balance_m, swing] = figures;
            let moved_bat = bat_with_swing_moment(family.family(), "", mass_kg, balance_m, swing)
                .and_then(|it| {
                    Bat::new("", bat.length_m(), it.mass_kg(), it.com_B(), it.I_Com_B())
                });
            let Ok(moved_bat) = moved_bat else { return Ok(none.clone()) };
            let taken_up = ways.batter.take_up(&moved_bat)?;
            let by = |(swung, held): (&SwungStroke, _)| {
                let here = swung.response.at(&[0.0; PART_COUNT]);
                moved(held, &here).map(|it| it / BENCH_STEPS[axis])
            };
            Ok(base.strokes.iter().zip(&taken_up.held).map(by).collect())
        })
        .collect::<Result<_, SwingsFault>>()?;
    let mut slopes = slopes.into_iter();
    Ok(core::array::from_fn(|_| slopes.next().unwrap_or_else(|| none.clone())))
}

impl SwungBat {
    /// With what the errors of the bench do to each stroke.
    fn read_at_bench(mut self, slopes: &Slopes, weighed: &WeighedBat) -> Self {
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

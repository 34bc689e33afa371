//! Every bat as every possible player swings it, fresh and through the innings.
//!
//! Full simulations of the bat now used over all strengths ([`Response`]), and for every other bat the difference
//! at four of them; what the second path, a slow rise of torque and the bench's errors do to each bat is simulated
//! at the likeliest strength. Figures are logarithms: of stroke time, bat speed, its part along the normal, toe speed.

use super::constants::BALL_AT_BAT;
use super::possible::{Possible, Prior};
use super::scores::Scores;
use super::steadiness::Steadiness;
use crate::bat::Bat;
use crate::bat::expected::bat_with_swing_moment;
use crate::bat::figures::WeighedBat;
use crate::calibration::limit::{FIGURES, LnSwing, Near, swing_at};
use crate::calibration::points::even_point;
use crate::calibration::response::{Response, ResponseFault, Triangle, times, triangle};
use crate::calibration::tiredness::Tiredness;
use crate::innings::played::{InningsFault, ball_loads, schedule};
use crate::measurement::nets::{Lasting, PART_COUNT};
use crate::measurement::plan::{Bowling, InningsPlan};
use crate::normal;
use crate::swing::activation::FROM_REST_S;
use crate::swing::assumed::Assumed;
use crate::swing::batter::{Batter, TakenUp};
use crate::swing::law::Control;
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
#[derive(Clone, Debug, PartialEq)]
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
        let control = Control { activation_time_s: FROM_REST_S, ..batter.assumed.control };
        let assumed = Assumed { control, ..batter.assumed };
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
    /// How steadily it is brought to the ball.
    pub steadiness: Steadiness,
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
    /// For whom and what it holds: what is asked again for the same is not swung again.
    holds_for: HoldsFor,
    /// The bats as they were weighed, and each before the bench's errors are read into it.
    weighed: Vec<(Bat, Option<SwungBat>)>,
    slopes: Slopes,
}

/// Everything that the swings of a bat hang on, besides the bat.
#[derive(Clone, Debug, PartialEq)]
struct HoldsFor {
    ways: Ways,
    plan: InningsPlan,
    asked_time_s: Vec<f64>,
    ball_m_s: f64,
    spread: Triangle,
    scores: Scores,
}

/// What the bats are swung in.
#[derive(Clone, Copy, Debug)]
pub struct Innings<'a> {
    /// The plan.
    pub plan: &'a InningsPlan,
    /// Stroke time at which loads are taken, by stroke, s.
    pub asked_time_s: &'a [f64],
    /// Speed of the ball at the bat, m/s.
    pub ball_m_s: f64,
}

/// Speed at the bat of a ball of this bowling, m/s.
pub fn ball_at_bat_m_s(bowling: &Bowling) -> f64 {
    BALL_AT_BAT.value * bowling.speed_m_s
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
    /// Swings of an earlier question: what they hold of the same player and the same bats serves again.
    pub before: Option<&'a Swings>,
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
    /// Swings them all, but for what was swung before.
    pub fn new(
        ways: &Ways,
        innings: Innings<'_>,
        prior: &Prior,
        bats: Bats<'_>,
        scores: Scores,
        step: Step<'_>,
    ) -> Result<Self, SwingsFault> {
        let Bats { weighed, first, before, .. } = bats;
        let holds_for = HoldsFor {
            ways: ways.clone(),
            plan: innings.plan.clone(),
            asked_time_s: innings.asked_time_s.to_vec(),
            ball_m_s: innings.ball_m_s,
            spread: prior.spread,
            scores: scores.clone(),
        };
        let before = before.filter(|it| {
            it.holds_for == holds_for
                && it.base_bat == Some(first)
                && weighed.get(first).is_some_and(|own| own.bat == it.base_made)
        });
        let mut it = match before {
            Some(it) => it.clone(),
            None => Self::based(ways, innings, prior, bats, holds_for, step)?,
        };
        it.weighed = weighed
            .par_iter()
            .enumerate()
            .map(|(i, weighed)| {
                let bat = weighed.bat.clone();
                if it.base_bat == Some(i) {
                    return Ok((bat, Some(it.base.clone())));
                }
                let known =
                    before.and_then(|it| it.weighed.iter().find(|(known, _)| *known == bat));
                if let Some((_, swung)) = known {
                    return Ok((bat, swung.clone()));
                }
                match it.with_bat(ways, innings, &bat, step) {
                    Ok(swung) => Ok((bat, Some(swung))),
                    Err(SwingsFault::BeyondControl) => Ok((bat, None)),
                    Err(fault) => Err(fault),
                }
            })
            .collect::<Result<_, SwingsFault>>()?;
        let read = |((_, swung), weighed): (&(Bat, Option<SwungBat>), &WeighedBat)| {
            Some(swung.clone()?.read_at_bench(&it.slopes, weighed))
        };
        it.bats = it.weighed.iter().zip(weighed).map(read).collect();
        Ok(it)
    }

    /// The bat that all others are held against, swung, and none of the others yet.
    fn based(
        ways: &Ways,
        innings: Innings<'_>,
        prior: &Prior,
        bats: Bats<'_>,
        holds_for: HoldsFor,
        step: Step<'_>,
    ) -> Result<Self, SwingsFault> {
        let Bats { weighed, first, standard, .. } = bats;
        let scores = &holds_for.scores;
        let order = core::iter::once(first).chain((0..weighed.len()).filter(|it| *it != first));
        let candidates = order.filter_map(|i| Some((Some(i), &weighed.get(i)?.bat)));
        let mut based = Err(SwingsFault::BeyondControl);
        for (base_bat, bat) in candidates.chain([(None, standard)]) {
            based = base(ways, innings, prior, bat, scores, step).map(|it| (base_bat, bat, it));
            if !matches!(based, Err(SwingsFault::BeyondControl)) {
                break;
            }
        }
        let (base_bat, bat, (region, strengths, base)) = based?;
        let base_made = bat.clone();
        let slopes = bench_slopes(ways, &base, &base_made, weighed.first())?;
        let scores = scores.clone();
        Ok(Self {
            region,
            strengths,
            scores,
            base,
            base_made,
            base_bat,
            bats: Vec::new(),
            holds_for,
            weighed: Vec::new(),
            slopes,
        })
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
                let longer = self.expected_shift(k, bat);
                base.response.with_bat(held, &self.region, longer).map_err(beyond)
            })
            .collect::<Result<Vec<Response>, SwingsFault>>()?;
        swung(ways, innings, bat, &taken_up, strokes, (&self.scores, Some(&self.base)))
    }

    /// How much longer a stroke takes with another bat than with the base bat, on the logarithm, by what weight, balance
    /// point and swing moment do to the base bat: where to look, no result.
    pub fn expected_shift(&self, stroke: usize, bat: &Bat) -> f64 {
        let figures = |it: &Bat| [it.mass_kg(), it.balance_m(), it.swing_moment_kg_m2()];
        let (here, there) = (figures(&self.base_made), figures(bat));
        (0..3).map(|axis| self.slopes[axis][stroke][0] * (there[axis] - here[axis])).sum()
    }

    /// Where a search of a stroke near a time starts, by the base bat's own searches.
    pub fn near(&self, stroke: usize, ln_time: f64) -> Near {
        self.base.strokes[stroke].response.near(ln_time)
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
        .zip(innings.asked_time_s)
        .map(|(held, asked_s)| {
            // The asked times lie above the fastest ones by some such share.
            let near = libm::log(*asked_s) - USUAL_MARGIN;
            Response::over(held, &region, &strengths, Some(near), step).map_err(beyond)
        })
        .collect::<Result<Vec<_>, _>>()?;
    let swung = swung(ways, innings, bat, &taken_up, strokes, (scores, None))?;
    Ok((region, strengths, swung))
}

/// Logarithm of the asked time over the fastest, about.
const USUAL_MARGIN: f64 = 0.14;
/// How much longer a stroke takes on another path or with a slow rise of torque, on the logarithm, about.
const USUAL_WAY: f64 = 0.2;

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
    (scores, like): (&Scores, Option<&SwungBat>),
) -> Result<SwungBat, SwingsFault> {
    let tired = tiredness(ways, innings, taken_up, scores)?;
    let slow = ways.slow_rise.take_up(bat)?;
    let strokes = responses
        .into_par_iter()
        .enumerate()
        .map(|(k, response)| {
            let here = response.at(&[0.0; PART_COUNT]);
            // Another way takes about as much longer as it does with a bat like this one.
            let [path_ln, rise_ln] = like.map_or([USUAL_WAY; 2], |it| {
                let it = &it.strokes[k];
                [it.path[0], it.rise[0]]
            });
            let near = |longer: f64| response.near(here.ln_time + longer);
            let name = &ways.batter.strokes[k].stroke.name;
            let other = ways.other_path.stroke_index(name);
            let other = other.filter(|i| differs(ways, &ways.other_path, k, *i));
            let path = other.map(|i| ways.other_path.strokes[i].hold(bat)).transpose()?;
            let time_s = libm::exp(here.ln_time);
            let steadiness = Steadiness::of(&taken_up.held[k], time_s, innings.ball_m_s);
            Ok(SwungStroke {
                steadiness: steadiness.ok_or(SwingsFault::BeyondControl)?,
                path: path.map_or([0.0; FIGURES], |held| moved(&held, &here, near(path_ln))),
                rise: moved(&slow.held[k], &here, near(rise_ln)),
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
pub fn moved(held: &Held, here: &LnSwing, near: Near) -> [f64; FIGURES] {
    let there = swing_at(held, &[0.0; PART_COUNT], Some(near));
    there.map_or([0.0; FIGURES], |it| it.swing.less(here))
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
                let near = swung.response.near(here.ln_time);
                moved(held, &here, near).map(|it| it / BENCH_STEPS[axis])
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

//! Every bat as every possible player swings it, fresh and through the innings.
//!
//! Full simulations of the bat now used over all strengths ([`Response`]), and for every other bat the difference
//! at four of them; what other paths, a slow rise of torque and the bench's errors do to each bat is simulated
//! at the likeliest strength. Figures are logarithms: of stroke time, bat speed, its part along the normal, toe speed.

use super::order::{Asked, Order};
use super::possible::Prior;
use super::scores::Scores;
use super::steadiness::Steadiness;
use super::swung_bat::{Slopes, SwungBat, bench_slopes, swung};
use super::ways::{SwingsFault, Ways};
use crate::bat::Bat;
use crate::bat::figures::WeighedBat;
use crate::calibration::limit::{LN_TIME, LnSwing, Near};
use crate::calibration::points::even_point;
use crate::calibration::response::{Response, ResponseFault, Triangle, times, triangle};
use crate::measurement::nets::{Lasting, PART_COUNT};
use crate::normal;
use core::ops::ControlFlow;
use rayon::prelude::*;

/// All bats of one player.
#[derive(Clone, Debug)]
pub struct Swings {
    /// The player in every way.
    pub ways: Ways,
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
    /// By stroke, how steadily the likeliest player brings the base bat to the ball.
    pub steadiness: Vec<Steadiness>,
    /// The weighed bats; none where the player cannot control it.
    pub bats: Vec<Option<SwungBat>>,
    /// The bats as they were weighed, and each before the bench's errors are read into it.
    weighed: Vec<(Bat, Option<SwungBat>)>,
    slopes: Slopes,
    /// Lower triangle of the covariance of the players' strengths.
    spread: Triangle,
    /// Size of the bat now used.
    size: Option<String>,
}

/// Strengths at which the bat now used is swung.
const STRENGTHS: usize = 20;
/// Spread of these strengths over that of the players.
const REACH: f64 = 1.5;

/// Told of each swing searched.
pub type Step<'a> = &'a (dyn Fn() -> ControlFlow<()> + Sync);

impl Swings {
    /// Swings them all, but for what was swung `before` of the same player and the same bats.
    pub fn new(
        asked: &Asked<'_>,
        prior: &Prior,
        scores: &Scores,
        before: Option<&Self>,
        step: Step<'_>,
    ) -> Result<Self, SwingsFault> {
        let Order { bats: weighed, uses: first, .. } = *asked.order;
        let ways = Ways::new(asked)?;
        let size = weighed.get(first).map(|it| &it.size);
        let before = before.filter(|it| {
            it.ways == ways
                && it.spread == prior.spread
                && it.size.as_ref() == size
                && it.scores == *scores
                && it.base_bat == Some(first)
                && weighed.get(first).is_some_and(|own| own.bat == it.base_made)
        });
        let mut it = match before {
            Some(it) => it.clone(),
            None => Self::with_base(asked, &ways, prior, scores, step)?,
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
                match it.with_bat(&bat, step) {
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

    /// The bat that all others are held against, swung, and none of the others yet: the one now used, or the first that
    /// can be controlled; the standard bat of the size stands in where none can.
    fn with_base(
        asked: &Asked<'_>,
        ways: &Ways,
        prior: &Prior,
        scores: &Scores,
        step: Step<'_>,
    ) -> Result<Self, SwingsFault> {
        let Order { bats: weighed, uses: first, .. } = *asked.order;
        let order = core::iter::once(first).chain((0..weighed.len()).filter(|it| *it != first));
        let candidates = order.filter_map(|i| Some((Some(i), &weighed.get(i)?.bat)));
        for (base_bat, bat) in candidates.chain([(None, asked.standard)]) {
            match Self::on_base(asked, ways, prior, bat, scores, step) {
                Err(SwingsFault::BeyondControl) => {}
                found => return Ok(Self { base_bat, ..found? }),
            }
        }
        Err(SwingsFault::BeyondControl)
    }

    /// With this bat as the base, over strengths that reach from strong to weak and tired.
    fn on_base(
        asked: &Asked<'_>,
        ways: &Ways,
        prior: &Prior,
        bat: &Bat,
        scores: &Scores,
        step: Step<'_>,
    ) -> Result<Self, SwingsFault> {
        let taken_up = ways.batter.take_up(bat)?;
        let tired = ways.tiredness(&taken_up, scores)?;
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
            .par_iter()
            .zip(&ways.asked_time_s)
            .map(|(held, asked_s)| {
                // The asked times lie above the fastest ones by some such share.
                let near = libm::log(*asked_s) - USUAL_MARGIN;
                Response::over(held, &region, &strengths, Some(near), step).map_err(beyond)
            })
            .collect::<Result<Vec<_>, _>>()?;
        let steadiness = taken_up
            .par_iter()
            .zip(&strokes)
            .map(|(held, response)| {
                let time_s = libm::exp(response.at(&[0.0; PART_COUNT])[LN_TIME]);
                Steadiness::of(held, time_s, ways.ball_m_s).ok_or(SwingsFault::BeyondControl)
            })
            .collect::<Result<Vec<_>, _>>()?;
        let base = swung(ways, bat, &taken_up, strokes, scores, None)?;
        let weighed = asked.order.bats;
        let now_used = weighed.get(asked.order.uses);
        Ok(Self {
            slopes: bench_slopes(ways, &base, bat, now_used.or(weighed.first()))?,
            ways: ways.clone(),
            region,
            strengths,
            scores: scores.clone(),
            base,
            base_made: bat.clone(),
            base_bat: None,
            steadiness,
            bats: Vec::new(),
            weighed: Vec::new(),
            spread: prior.spread,
            size: now_used.map(|it| it.size.clone()),
        })
    }

    /// Another bat: its difference from the base over the strengths, and its own fatigue.
    fn with_bat(&self, bat: &Bat, step: Step<'_>) -> Result<SwungBat, SwingsFault> {
        let taken_up = self.ways.batter.take_up(bat)?;
        let strokes = self
            .base
            .strokes
            .par_iter()
            .enumerate()
            .map(|(k, base)| {
                if step().is_break() {
                    return Err(SwingsFault::Cancelled);
                }
                let held = &taken_up[k];
                let longer = self.expected_shift(k, bat);
                base.response.with_bat(held, longer).map_err(beyond)
            })
            .collect::<Result<Vec<Response>, SwingsFault>>()?;
        swung(&self.ways, bat, &taken_up, strokes, &self.scores, Some(&self.base))
    }

    /// How much longer a stroke takes with another bat than with the base bat, on the logarithm, by what weight,
    /// balance point and swing moment do to the base bat: where to look, no result.
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

fn beyond(fault: ResponseFault) -> SwingsFault {
    match fault {
        ResponseFault::BeyondControl => SwingsFault::BeyondControl,
        ResponseFault::Cancelled => SwingsFault::Cancelled,
    }
}

/// Logarithm of the asked time over the fastest, about.
const USUAL_MARGIN: f64 = 0.14;
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

//! What the readings leave of the strengths and the lasting fatigue that the tables allow.
//!
//! Bayes' rule on points spread evenly over the tables' distribution: each point is weighed by how
//! likely the readings are from a player of that strength. The shared errors are normal and enter
//! linearly, so they are integrated out in closed form. Scatter is Student's with [`TAIL`] degrees of
//! freedom, as a normal one whose precision differs by reading: a reading far off counts for little. The
//! precisions and the scatter are found by expectation and maximisation.

use super::errors::{SCATTER, SCATTER_COUNTS, Shared, enters, instrument_sd, ln_read, shared};
use super::points::{even_point, normal_below, normal_quantile};
use super::response::{LnSwing, Response, Triangle, times, triangle, whitened};
use super::tiredness::Tiredness;
use crate::measurement::nets::{NetReading, PART_COUNT, Read};
use nalgebra::{DMatrix, DVector, Matrix4, Vector4};
use rayon::prelude::*;

/// Degrees of freedom of the scatter: few, so that outliers are let go (assumption).
const TAIL: f64 = 5.0;
/// Points over the tables' distribution.
pub const POINTS: usize = 4096;
/// Most rounds of expectation and maximisation.
const ROUNDS: usize = 20;
/// Change of the scatter, as a share, at which the rounds end.
const SETTLED: f64 = 0.01;
/// Lasting fatigue before any reading, a share of the knee's loss: a third, as one standard deviation a
/// third, and never below nought. Two standard deviations reach all of it.
pub const LASTING: Shared = Shared { mean: 1.0 / 3.0, sd: 1.0 / 3.0 };
/// Standardised residual beyond which a reading is doubted: one in 400 is, by chance.
pub const DOUBTED_BEYOND: f64 = 3.0;

/// One player who may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Possible {
    /// Logarithm of strength over the tables', by part.
    pub ln_strength: [f64; PART_COUNT],
    /// Lasting fatigue, share of the knee's loss.
    pub lasting: f64,
}

/// The players the tables allow, each as likely: `spread` is the lower triangle of the covariance of
/// their strengths.
pub fn possible(spread: &Triangle) -> Vec<Possible> {
    let below_nought = normal_below(-LASTING.mean / LASTING.sd);
    (0..POINTS)
        .map(|i| {
            let [a, b, c, d] = even_point(i);
            let z = [a, b, c].map(normal_quantile);
            let above = below_nought + (1.0 - below_nought) * d;
            Possible {
                ln_strength: times(spread, z),
                lasting: (LASTING.mean + LASTING.sd * normal_quantile(above)).max(0.0),
            }
        })
        .collect()
}

/// One reading with what it is held against.
#[derive(Clone, Copy, Debug)]
pub struct Held<'a> {
    /// The reading.
    pub reading: &'a NetReading,
    /// Index of its stroke.
    pub stroke: usize,
    /// The stroke with its bat.
    pub response: &'a Response,
    /// The innings before it.
    pub tiredness: Tiredness,
}

impl Held<'_> {
    /// Logarithm of the figure at the limit of control.
    pub fn ln_expected(&self, it: &Possible) -> f64 {
        self.ln_of(&self.swing(it))
    }

    fn swing(&self, it: &Possible) -> LnSwing {
        self.response.at(&self.tiredness.tired(&it.ln_strength, it.lasting))
    }

    fn ln_of(&self, swing: &LnSwing) -> f64 {
        match self.reading.read {
            Read::Time { .. } => swing.ln_time,
            Read::Speed { .. } => swing.ln_speed,
        }
    }
}

/// For each reading the first of the same bat, stroke and score: one swing serves them all.
fn alike(readings: &[Held<'_>]) -> Vec<usize> {
    let key = |it: &Held<'_>| (it.reading.bat, it.stroke, it.reading.runs);
    let first = |it: &Held<'_>| readings.iter().position(|other| key(other) == key(it));
    readings.iter().enumerate().map(|(i, it)| first(it).unwrap_or(i)).collect()
}

/// What the fit made of one reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Judged {
    /// Read over expected, as a share, the shared errors taken off: 0.1 is 10 % more.
    pub off_share: f64,
    /// The same in standard deviations of scatter and instrument.
    pub off_sd: f64,
    /// How much of a reading it counted for, about 1 unless it is far off.
    pub counted: f64,
}

impl Judged {
    /// Too far off to be this player's ordinary swing.
    pub fn is_doubted(&self) -> bool {
        self.off_sd.abs() > DOUBTED_BEYOND
    }
}

/// Weighed players.
#[derive(Clone, Debug)]
pub struct Posterior {
    /// The players.
    pub points: Vec<Possible>,
    /// Their weights; they sum to 1.
    pub weights: Vec<f64>,
    /// One a reading.
    pub judged: Vec<Judged>,
    /// Scatter from swing to swing, corrected.
    pub scatter: f64,
}

impl Posterior {
    /// Before any reading.
    pub fn before(points: Vec<Possible>) -> Self {
        let weights = vec![1.0 / points.len() as f64; points.len()];
        Self { points, weights, judged: Vec::new(), scatter: SCATTER }
    }

    /// After the readings; `spread` is the lower triangle of the covariance of the strengths the tables
    /// allow, `strokes` how many strokes there are.
    ///
    /// The tables' points find roughly where the players are who fit; more points are then put there, and
    /// again, each weighed by how much likelier the tables make it than where it was put.
    pub fn after(spread: &Triangle, readings: &[Held<'_>], strokes: usize) -> Self {
        let mut fit = Fit::new(readings, strokes);
        let points = possible(spread);
        let even = vec![0.0; points.len()];
        let mut it = fit.weigh(points, &even);
        for wider in WIDER {
            let Some((points, ln_weights)) = near(&it, spread, wider) else { break };
            it = fit.weigh(points, &ln_weights);
        }
        it
    }

    /// Weighed mean of a figure.
    pub fn mean(&self, of: impl Fn(&Possible) -> f64) -> f64 {
        self.points.iter().zip(&self.weights).map(|(it, w)| w * of(it)).sum()
    }

    /// Means and lower triangle of the covariance of the logarithms of strength.
    pub fn strength(&self) -> ([f64; PART_COUNT], [[f64; PART_COUNT]; PART_COUNT]) {
        let mean = core::array::from_fn(|i| self.mean(|it| it.ln_strength[i]));
        let covariance = core::array::from_fn(|i| {
            core::array::from_fn(|j| {
                self.mean(|it| (it.ln_strength[i] - mean[i]) * (it.ln_strength[j] - mean[j]))
            })
        });
        (mean, triangle(&covariance))
    }

    /// A figure of all players: its mean, spread and the band of nine in ten.
    pub fn figure(&self, of: impl Fn(&Possible) -> f64 + Sync) -> Spread {
        let values: Vec<f64> = self.points.par_iter().map(&of).collect();
        let mean = values.iter().zip(&self.weights).map(|(it, w)| w * it).sum::<f64>();
        let variance = values
            .iter()
            .zip(&self.weights)
            .map(|(it, w)| w * (it - mean) * (it - mean))
            .sum::<f64>();
        let mut order: Vec<usize> = (0..values.len()).collect();
        order.sort_by(|&a, &b| values[a].total_cmp(&values[b]));
        let quantile = |share: f64| {
            let mut sum = 0.0;
            for &i in &order {
                sum += self.weights[i];
                if sum >= share {
                    return values[i];
                }
            }
            mean
        };
        Spread { mean, sd: libm::sqrt(variance), low: quantile(0.05), high: quantile(0.95) }
    }

    /// How many equally weighted points the weights are worth.
    pub fn worth_points(&self) -> f64 {
        1.0 / self.weights.iter().map(|it| it * it).sum::<f64>()
    }
}

/// Readings made ready, with what rounds of expectation and maximisation learnt so far.
struct Fit<'a> {
    readings: &'a [Held<'a>],
    errors: Vec<Shared>,
    entering: Vec<Vec<f64>>,
    /// First reading of the same bat, stroke and score.
    alike: Vec<usize>,
    /// Logarithm of each figure, what the shared errors do on average taken off.
    read: Vec<f64>,
    instrument: Vec<f64>,
    scatter: f64,
    counted: Vec<f64>,
}

impl<'a> Fit<'a> {
    fn new(readings: &'a [Held<'a>], strokes: usize) -> Self {
        let errors = shared(strokes);
        let entering: Vec<Vec<f64>> =
            readings.iter().map(|it| enters(it.reading, it.stroke, strokes)).collect();
        let mean =
            |enters: &[f64]| enters.iter().zip(&errors).map(|(h, e)| h * e.mean).sum::<f64>();
        let read =
            readings.iter().zip(&entering).map(|(it, h)| ln_read(it.reading) - mean(h)).collect();
        Self {
            alike: alike(readings),
            instrument: readings.iter().map(|it| instrument_sd(it.reading)).collect(),
            scatter: SCATTER,
            counted: vec![1.0; readings.len()],
            readings,
            errors,
            entering,
            read,
        }
    }

    /// What is left of each reading if the player is this one.
    fn left(&self, point: &Possible) -> Vec<f64> {
        let mut swings: Vec<LnSwing> = Vec::with_capacity(self.readings.len());
        for (it, first) in self.readings.iter().zip(&self.alike) {
            let known = swings.get(*first).copied();
            swings.push(known.unwrap_or_else(|| it.swing(point)));
        }
        let off = |((it, swing), read): ((&Held<'_>, &LnSwing), &f64)| read - it.ln_of(swing);
        self.readings.iter().zip(&swings).zip(&self.read).map(off).collect()
    }

    /// Weighs players, each of a weight already.
    fn weigh(&mut self, points: Vec<Possible>, ln_weights: &[f64]) -> Posterior {
        let left: Vec<Vec<f64>> = points.par_iter().map(|it| self.left(it)).collect();
        let mut round = Round::default();
        for _ in 0..ROUNDS {
            let scatter2 = self.scatter * self.scatter;
            let variance: Vec<f64> = self.instrument.iter().map(|it| it * it + scatter2).collect();
            round = Round::of(
                &left,
                ln_weights,
                &self.entering,
                &self.errors,
                &variance,
                &self.counted,
            );
            let mut swings = SCATTER_COUNTS * SCATTER * SCATTER;
            for (i, counts) in self.counted.iter_mut().enumerate() {
                let share = scatter2 / variance[i];
                swings += share * share * *counts * round.square[i] + scatter2 * (1.0 - share);
                *counts = (TAIL + 1.0) / (TAIL + round.square[i] / variance[i]);
            }
            let before = self.scatter;
            self.scatter = libm::sqrt(swings / (SCATTER_COUNTS + self.readings.len() as f64));
            if (self.scatter / before - 1.0).abs() < SETTLED {
                break;
            }
        }
        let judged = (0..self.readings.len())
            .map(|i| Judged {
                off_share: libm::expm1(round.mean[i]),
                off_sd: round.mean[i] / libm::hypot(self.instrument[i], self.scatter),
                counted: self.counted[i].min(1.0),
            })
            .collect();
        Posterior { points, weights: round.weights, judged, scatter: self.scatter }
    }
}

/// How much wider than what was found the next points are put: the first find may be narrow by chance.
const WIDER: [f64; 2] = [2.0, 1.4];

/// New points about those found, and the logarithm of how much likelier the tables make each than where
/// it was put. None if what was found has no width.
fn near(found: &Posterior, spread: &Triangle, wider: f64) -> Option<(Vec<Possible>, Vec<f64>)> {
    let vector = |it: &Possible| {
        let [a, b, c] = it.ln_strength;
        Vector4::new(a, b, c, it.lasting)
    };
    let mut mean = Vector4::zeros();
    for (it, weight) in found.points.iter().zip(&found.weights) {
        mean += *weight * vector(it);
    }
    let mut covariance = Matrix4::zeros();
    for (it, weight) in found.points.iter().zip(&found.weights) {
        let off = vector(it) - mean;
        covariance += *weight * off * off.transpose();
    }
    let triangle = wider * covariance.cholesky()?.l();
    let each = |i: usize| {
        let z = Vector4::from(even_point(i).map(normal_quantile));
        let it = mean + triangle * z;
        let point = Possible { ln_strength: [it[0], it[1], it[2]], lasting: it[3] };
        let by_tables: f64 = whitened(spread, &point.ln_strength).iter().map(|it| it * it).sum();
        let by_band = (point.lasting - LASTING.mean) / LASTING.sd;
        let ln_weight = match point.lasting >= 0.0 {
            true => 0.5 * (z.norm_squared() - by_tables - by_band * by_band),
            false => f64::NEG_INFINITY,
        };
        (point, ln_weight)
    };
    Some((0..POINTS).map(each).unzip())
}

/// A figure over all players who may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// Mean.
    pub mean: f64,
    /// One standard deviation.
    pub sd: f64,
    /// 5 % lie below.
    pub low: f64,
    /// 5 % lie above.
    pub high: f64,
}

/// Weight of a point that is not worth looking at.
const NEGLIGIBLE: f64 = 1e-9;

/// The quadratic form xᵀ A x.
fn form(a: &DMatrix<f64>, x: &[f64]) -> f64 {
    let row = |(column, x_j): (nalgebra::DVectorView<'_, f64>, &f64)| {
        x_j * column.iter().zip(x).map(|(a, x_i)| a * x_i).sum::<f64>()
    };
    a.column_iter().zip(x).map(row).sum()
}

/// One round: weights of the points, and what is left of each reading.
#[derive(Clone, Debug, Default)]
struct Round {
    weights: Vec<f64>,
    /// Mean residual of each reading, shared errors taken off.
    mean: Vec<f64>,
    /// Mean square of it.
    square: Vec<f64>,
}

impl Round {
    fn of(
        left: &[Vec<f64>],
        ln_weights: &[f64],
        entering: &[Vec<f64>],
        errors: &[Shared],
        variance: &[f64],
        counted: &[f64],
    ) -> Self {
        let (n, q) = (entering.len(), errors.len());
        // What each reading counts for is itself found from the readings: as if it were known, the fit
        // would be surer than Student's distribution allows, by this factor of its information.
        let known = (TAIL + 1.0) / (TAIL + 3.0);
        let precision: Vec<f64> =
            variance.iter().zip(counted).map(|(v, c)| known * c / v).collect();
        // Normal equations of the shared errors: the same for every point.
        let normal = DMatrix::from_fn(q, q, |a, b| {
            let own = if a == b { 1.0 / (errors[a].sd * errors[a].sd) } else { 0.0 };
            own + (0..n).map(|i| precision[i] * entering[i][a] * entering[i][b]).sum::<f64>()
        });
        let Some(inverse) = normal.cholesky().map(|it| it.inverse()) else {
            return Self::default();
        };
        // From what is left of the readings to the shared errors, and to what of them stays: linear, so
        // that one matrix a round serves all points.
        let h = DMatrix::from_fn(n, q, |i, a| entering[i][a]);
        let weighed = DMatrix::from_fn(q, n, |a, i| precision[i] * entering[i][a]);
        let own = DMatrix::identity(n, n) - &h * &inverse * &weighed;
        let likely = DMatrix::from_fn(n, n, |i, j| precision[i] * own[(i, j)]);
        let log_weights: Vec<f64> = left
            .par_iter()
            .zip(ln_weights)
            .map(|(left, w)| w - 0.5 * form(&likely, left))
            .collect();
        let top = log_weights.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let raw: Vec<f64> = log_weights.iter().map(|it| libm::exp(it - top)).collect();
        let sum: f64 = raw.iter().sum();
        let weights: Vec<f64> = raw.into_iter().map(|it| it / sum).collect();
        let (mut mean, mut square) = (vec![0.0; n], vec![0.0; n]);
        for (left, weight) in left.iter().zip(&weights).filter(|(_, it)| **it > NEGLIGIBLE) {
            let residuals = &own * DVector::from_column_slice(left);
            for (i, r) in residuals.iter().enumerate() {
                mean[i] += weight * r;
                square[i] += weight * r * r;
            }
        }
        for (i, h) in entering.iter().enumerate() {
            let h = DVector::from_column_slice(h);
            square[i] += h.dot(&(&inverse * &h));
        }
        Self { weights, mean, square }
    }
}

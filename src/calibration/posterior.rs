//! What the readings leave of the strengths and the lasting fatigue that the tables allow.
//!
//! Bayes' rule on points spread evenly over the tables' distribution: each point is weighed by how
//! likely the readings are from a player of that strength. The shared errors are normal and enter
//! linearly, so they are integrated out in closed form. Scatter is Student's with 5 degrees of
//! freedom, as a normal one whose precision differs by reading: a reading far off counts for little. The
//! precisions and the scatter are found by expectation and maximisation.

mod fit;
mod round;

use super::errors::{SCATTER, Shared};
use super::limit::{LN_SPEED, LN_TIME};
use super::points::even_point;
use super::response::{Response, Triangle, times, triangle, whitened};
use super::tiredness::Tiredness;
use crate::measurement::nets::{NetReading, PART_COUNT, Read};
use crate::normal;
use fit::Fit;
use nalgebra::{Matrix4, Vector4};
use rayon::prelude::*;

/// Points over the tables' distribution.
pub const POINTS: usize = 4096;
/// Lasting fatigue before any reading, a share of the knee's loss: a third, as one standard deviation a
/// third, and never below nought. Two standard deviations reach all of it.
pub const LASTING: Shared = Shared { mean: 1.0 / 3.0, sd: 1.0 / 3.0 };
/// Standardised residual beyond which a reading is doubted: one in 400 is, by chance.
pub const DOUBTED_BEYOND: f64 = 3.0;

/// How much wider than what was found the next points are put: the first find may be narrow by chance.
const WIDER: [f64; 2] = [2.0, 1.4];

/// One player who may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Possible {
    /// Logarithm of strength over the tables', by part.
    pub ln_strength: [f64; PART_COUNT],
    /// Lasting fatigue, share of the knee's loss.
    pub lasting: f64,
}

/// The players the tables allow, each as likely: `spread` is the lower triangle L of the covariance
/// L Lᵀ of their strengths.
pub fn possible(spread: &Triangle) -> Vec<Possible> {
    (0..POINTS)
        .map(|i| {
            let [a, b, c, d] = even_point(i);
            let z = [a, b, c].map(normal::quantile);
            Possible { ln_strength: times(spread, z), lasting: LASTING.above_nought(d) }
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
        let swing = self.response.at(&self.tiredness.tired(&it.ln_strength, it.lasting));
        match self.reading.read {
            Read::Time { .. } => swing[LN_TIME],
            Read::Speed { .. } => swing[LN_SPEED],
        }
    }
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

    /// After the readings; `spread` is the lower triangle L of the covariance L Lᵀ of the strengths the
    /// tables allow, `strokes` how many strokes there are.
    ///
    /// The tables' points find roughly where the players are who fit; more points are then put there, and
    /// again, each weighed by how much likelier the tables make it than where it was put.
    pub fn after(spread: &Triangle, readings: &[Held<'_>], strokes: usize) -> Self {
        let mut fit = Fit::new(readings, strokes);
        let points = possible(spread);
        let even = vec![0.0; points.len()];
        let mut it = fit.weigh(points, &even);
        for wider in WIDER {
            let Some((points, ln_weights)) = it.near(spread, wider) else { break };
            it = fit.weigh(points, &ln_weights);
        }
        it
    }

    /// New points about those found, and the logarithm of how much likelier the tables make each than where
    /// it was put. None if what was found has no width.
    fn near(&self, spread: &Triangle, wider: f64) -> Option<(Vec<Possible>, Vec<f64>)> {
        let vector = |it: &Possible| {
            let [a, b, c] = it.ln_strength;
            Vector4::new(a, b, c, it.lasting)
        };
        let mut mean = Vector4::zeros();
        for (it, weight) in self.points.iter().zip(&self.weights) {
            mean += *weight * vector(it);
        }
        let mut covariance = Matrix4::zeros();
        for (it, weight) in self.points.iter().zip(&self.weights) {
            let off = vector(it) - mean;
            covariance += *weight * off * off.transpose();
        }
        let triangle = wider * covariance.cholesky()?.l();
        let each = |i: usize| {
            let z = Vector4::from(even_point(i).map(normal::quantile));
            let it = mean + triangle * z;
            let point = Possible { ln_strength: [it[0], it[1], it[2]], lasting: it[3] };
            let by_tables: f64 =
                whitened(spread, &point.ln_strength).iter().map(|it| it * it).sum();
            let by_band = (point.lasting - LASTING.mean) / LASTING.sd;
            let ln_weight = match point.lasting >= 0.0 {
                true => 0.5 * (z.norm_squared() - by_tables - by_band * by_band),
                false => f64::NEG_INFINITY,
            };
            (point, ln_weight)
        };
        Some((0..POINTS).map(each).unzip())
    }

    /// Weighed mean of a figure.
    pub fn mean(&self, of: impl Fn(&Possible) -> f64) -> f64 {
        self.points.iter().zip(&self.weights).map(|(it, w)| w * of(it)).sum()
    }

    /// Means, and lower triangle L of the covariance L Lᵀ, of the logarithms of strength.
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

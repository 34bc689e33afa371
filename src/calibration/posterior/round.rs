//! One round: how likely the readings are from each player, and what is left of each reading.
//!
//! What is left of the readings is `r − C μ`: r as read, μ what a player's swings of each kind should
//! be, C which reading is of which kind. The shared errors take their part of it, linearly and alike for
//! all players, so that a player costs a form in μ only, as small as there are kinds.

use super::super::errors::Shared;
use nalgebra::{DMatrix, DVector};
use rayon::prelude::*;

/// Degrees of freedom of the scatter: few, so that outliers are let go (assumption).
pub(super) const TAIL: f64 = 5.0;

/// What is known of the readings, whoever the player is.
pub(super) struct Known {
    /// Logarithm of each figure, what the shared errors do on average taken off.
    pub(super) read: Vec<f64>,
    /// Of which kind each reading is.
    pub(super) kind: Vec<usize>,
    /// How each shared error enters each reading.
    pub(super) entering: Vec<Vec<f64>>,
    /// The shared errors.
    pub(super) errors: Vec<Shared>,
}

/// One round.
#[derive(Clone, Debug, Default)]
pub(super) struct Round {
    /// Weights of the players; they sum to 1.
    pub(super) weights: Vec<f64>,
    /// Mean of what is left of each reading, shared errors taken off.
    pub(super) mean: Vec<f64>,
    /// Mean square of it.
    pub(super) square: Vec<f64>,
}

impl Round {
    pub(super) fn of(
        known: &Known,
        expected: &[Vec<f64>],
        ln_weights: &[f64],
        variance: &[f64],
        counted: &[f64],
    ) -> Self {
        let Known { read, kind, entering, errors } = known;
        let (n, q) = (entering.len(), errors.len());
        let kinds = kind.iter().max().map_or(0, |it| it + 1);
        // What each reading counts for is itself found from the readings: as if it were known, the fit
        // would be surer than Student's distribution allows, by this factor of its information.
        let surer = (TAIL + 1.0) / (TAIL + 3.0);
        let precision: Vec<f64> =
            variance.iter().zip(counted).map(|(v, c)| surer * c / v).collect();
        let normal = DMatrix::from_fn(q, q, |a, b| {
            let own = if a == b { 1.0 / (errors[a].sd * errors[a].sd) } else { 0.0 };
            own + (0..n).map(|i| precision[i] * entering[i][a] * entering[i][b]).sum::<f64>()
        });
        let Some(inverse) = normal.cholesky().map(|it| it.inverse()) else {
            return Self::default();
        };
        let h = DMatrix::from_fn(n, q, |i, a| entering[i][a]);
        let weighed = DMatrix::from_fn(q, n, |a, i| precision[i] * entering[i][a]);
        // From what is left of the readings to what the shared errors do not take of it.
        let own = DMatrix::identity(n, n) - &h * &inverse * &weighed;
        let likely = DMatrix::from_fn(n, n, |i, j| precision[i] * own[(i, j)]);

        let read = DVector::from_column_slice(read);
        let c = DMatrix::from_fn(n, kinds, |i, k| if kind[i] == k { 1.0 } else { 0.0 });
        let form = c.transpose() * &likely * &c;
        let slope = c.transpose() * &likely * &read;
        let ln_likely = |mu: &[f64]| {
            let mut sum = 0.0;
            for (k, mu_k) in mu.iter().enumerate() {
                let row: f64 = mu.iter().enumerate().map(|(l, mu_l)| form[(k, l)] * mu_l).sum();
                sum += mu_k * (slope[k] - 0.5 * row);
            }
            sum
        };
        let ln: Vec<f64> =
            expected.par_iter().zip(ln_weights).map(|(mu, w)| w + ln_likely(mu)).collect();
        let top = ln.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let raw: Vec<f64> = ln.iter().map(|it| libm::exp(it - top)).collect();
        let sum: f64 = raw.iter().sum();
        let weights: Vec<f64> = raw.into_iter().map(|it| it / sum).collect();

        let mut mean_mu = DVector::zeros(kinds);
        for (mu, weight) in expected.iter().zip(&weights) {
            for (sum, it) in mean_mu.iter_mut().zip(mu) {
                *sum += weight * it;
            }
        }
        let mut covariance = DMatrix::zeros(kinds, kinds);
        for (mu, weight) in expected.iter().zip(&weights) {
            for k in 0..kinds {
                for l in 0..kinds {
                    covariance[(k, l)] += weight * (mu[k] - mean_mu[k]) * (mu[l] - mean_mu[l]);
                }
            }
        }
        let by_mu = &own * &c;
        let mean = &own * (&read - &c * &mean_mu);
        let by_players = &by_mu * &covariance * by_mu.transpose();
        let by_errors = &h * &inverse * h.transpose();
        let square =
            (0..n).map(|i| mean[i] * mean[i] + by_players[(i, i)] + by_errors[(i, i)]).collect();
        Self { weights, mean: mean.as_slice().to_vec(), square }
    }
}

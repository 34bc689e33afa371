//! Readings made ready, and the rounds of expectation and maximisation.

use super::super::errors::{
    SCATTER, SCATTER_COUNTS, Shared, enters, instrument_sd, ln_read, shared,
};
use super::round::{Known, Round, TAIL};
use super::{Held, Judged, Possible, Posterior};
use crate::measurement::nets::Read;
use rayon::prelude::*;

/// Most rounds of expectation and maximisation.
const ROUNDS: usize = 20;
/// Change of the scatter, as a share, at which the rounds end.
const SETTLED: f64 = 0.003;

/// Readings made ready, with what the rounds learnt so far.
pub(super) struct Fit<'a> {
    /// One reading of each kind: the same bat, stroke, score and instrument.
    kinds: Vec<Held<'a>>,
    /// What is known of the readings, whoever the player is.
    known: Known,
    instrument: Vec<f64>,
    scatter: f64,
    counted: Vec<f64>,
}

impl<'a> Fit<'a> {
    pub(super) fn new(readings: &[Held<'a>], strokes: usize) -> Self {
        let errors: Vec<Shared> = shared(strokes);
        let entering: Vec<Vec<f64>> =
            readings.iter().map(|it| enters(it.reading, it.stroke, strokes)).collect();
        let mean =
            |enters: &[f64]| enters.iter().zip(&errors).map(|(h, e)| h * e.mean).sum::<f64>();
        let read =
            readings.iter().zip(&entering).map(|(it, h)| ln_read(it.reading) - mean(h)).collect();
        let key = |it: &Held<'_>| {
            let timed = matches!(it.reading.read, Read::Time { .. });
            (it.reading.bat, it.stroke, it.reading.runs.to_bits(), timed)
        };
        let mut kinds: Vec<Held<'a>> = Vec::new();
        let mut kind = Vec::with_capacity(readings.len());
        for it in readings {
            let known = kinds.iter().position(|other| key(other) == key(it));
            kind.push(known.unwrap_or(kinds.len()));
            if known.is_none() {
                kinds.push(*it);
            }
        }
        Self {
            kinds,
            known: Known { read, kind, entering, errors },
            instrument: readings.iter().map(|it| instrument_sd(it.reading)).collect(),
            scatter: SCATTER,
            counted: vec![1.0; readings.len()],
        }
    }

    /// Weighs players, each of a weight already.
    pub(super) fn weigh(&mut self, points: Vec<Possible>, ln_weights: &[f64]) -> Posterior {
        let expected: Vec<Vec<f64>> = points
            .par_iter()
            .map(|point| self.kinds.iter().map(|it| it.ln_expected(point)).collect())
            .collect();
        let mut round = Round::default();
        for _ in 0..ROUNDS {
            let scatter2 = self.scatter * self.scatter;
            let variance: Vec<f64> = self.instrument.iter().map(|it| it * it + scatter2).collect();
            round = Round::of(&self.known, &expected, ln_weights, &variance, &self.counted);
            let mut swings = SCATTER_COUNTS * SCATTER * SCATTER;
            for (i, counts) in self.counted.iter_mut().enumerate() {
                let share = scatter2 / variance[i];
                swings += share * share * *counts * round.square[i] + scatter2 * (1.0 - share);
                *counts = (TAIL + 1.0) / (TAIL + round.square[i] / variance[i]);
            }
            let before = self.scatter;
            let count = SCATTER_COUNTS + self.instrument.len() as f64;
            self.scatter = libm::sqrt(swings / count);
            if (self.scatter / before - 1.0).abs() < SETTLED {
                break;
            }
        }
        let judged = (0..self.instrument.len())
            .map(|i| Judged {
                off_share: libm::expm1(round.mean[i]),
                off_sd: round.mean[i] / libm::hypot(self.instrument[i], self.scatter),
                counted: self.counted[i].min(1.0),
            })
            .collect();
        Posterior { points, weights: round.weights, judged, scatter: self.scatter }
    }
}

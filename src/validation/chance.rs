//! Seeded chance for drawn trials: the same draws on every machine and on any number of threads.

use rand::rngs::Xoshiro256PlusPlus;
use rand::{RngExt, SeedableRng};

/// A stream of draws of its own.
pub struct Chance(Xoshiro256PlusPlus);

impl Chance {
    /// The stream of one trial of a study.
    pub fn of(study_seed: u64, trial: u64) -> Self {
        Self(Xoshiro256PlusPlus::seed_from_u64(study_seed.wrapping_mul(1_000_003) ^ trial))
    }

    /// Anywhere between two values, each as likely.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.0.random::<f64>()
    }

    /// The same on the logarithm: a half is as likely as a double.
    pub fn log_between(&mut self, low: f64, high: f64) -> f64 {
        libm::exp(self.between(libm::log(low), libm::log(high)))
    }

    /// Normal about nought (Box–Muller).
    pub fn normal(&mut self, sd: f64) -> f64 {
        let radius = libm::sqrt(-2.0 * libm::log(1.0 - self.0.random::<f64>()));
        sd * radius * libm::cos(self.between(0.0, std::f64::consts::TAU))
    }

    /// Index below `count`.
    pub fn index(&mut self, count: usize) -> usize {
        self.0.random_range(0..count.max(1))
    }
}

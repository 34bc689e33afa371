//! What was seen of the player, and how likely each possible player makes it.
//!
//! A stroke was seen in time nearly always, mostly, half the time or seldom, out of about so many short balls. Each
//! possible player is weighed by the chance of just that (binomial). One answer fixes only the slack over its own
//! spread; the spread keeps what was believed of it.

use super::possible::{DRAWS, Possible, Prior, WEIGHED};
use crate::measurement::plan::HowOften;

/// The possible players that are left, each as likely, and how well what was seen goes together.
#[derive(Clone, Debug)]
pub struct Weighed {
    /// [`DRAWS`] of them; the likelier ones more than once.
    pub draws: Vec<Possible>,
    /// Chance of all that was seen together over what it would be if one had nothing to do with another: small
    /// where two answers contradict each other. 1 with fewer than two.
    pub together: f64,
}

impl Weighed {
    /// Below this what was seen does not go together.
    pub const CONTRADICTS_BELOW: f64 = 0.05;

    /// Whether two answers cannot both be true of one player.
    pub fn contradicts(&self) -> bool {
        self.together < Self::CONTRADICTS_BELOW
    }
}

/// Possible players with nothing seen.
pub fn unseen(prior: &Prior) -> Vec<Possible> {
    (0..DRAWS).map(|i| prior.draw(i)).collect()
}

/// Possible players weighed by what was seen: `likely` gives the chance of each answer for one of them.
pub fn seen(prior: &Prior, likely: impl Fn(&Possible) -> Vec<f64> + Sync) -> Weighed {
    use rayon::prelude::*;
    let all: Vec<(Possible, Vec<f64>)> = (0..WEIGHED)
        .into_par_iter()
        .map(|i| {
            let it = prior.draw(i);
            let chances = likely(&it);
            (it, chances)
        })
        .collect();
    let answers = all.first().map_or(0, |(_, it)| it.len());
    let weights: Vec<f64> =
        all.iter().map(|(_, it)| it.iter().product::<f64>().max(f64::MIN_POSITIVE)).collect();
    let mean = |of: &dyn Fn(usize) -> f64| (0..all.len()).map(of).sum::<f64>() / all.len() as f64;
    let joint = mean(&|i| weights[i]);
    let apart: f64 = (0..answers).map(|a| mean(&|i| all[i].1[a])).product();
    let together = if answers < 2 { 1.0 } else { joint / apart.max(f64::MIN_POSITIVE) };
    Weighed { draws: kept(&all, &weights), together }
}

/// Takes players evenly along their weights: systematic resampling, without chance.
fn kept(all: &[(Possible, Vec<f64>)], weights: &[f64]) -> Vec<Possible> {
    let sum: f64 = weights.iter().sum();
    let mut out = Vec::with_capacity(DRAWS);
    let (mut so_far, mut i) = (0.0, 0);
    for n in 0..DRAWS {
        let target = sum * (n as f64 + 0.5) / DRAWS as f64;
        while i + 1 < weights.len() && so_far + weights[i] < target {
            so_far += weights[i];
            i += 1;
        }
        out.push(all[i].0.clone());
    }
    out
}

/// Chance that of `balls` each in time with chance `in_time` the share in time is called so.
pub fn chance_of(how_often: HowOften, balls: u32, in_time: f64) -> f64 {
    let [low, high] = how_often.shares();
    let (n, p) = (f64::from(balls), in_time.clamp(1e-9, 1.0 - 1e-9));
    let called = |k: u32| {
        let share = f64::from(k) / n;
        share >= low && (share < high || high >= 1.0)
    };
    let ln_chance = |k: u32| {
        let k = f64::from(k);
        libm::lgamma(n + 1.0) - libm::lgamma(k + 1.0) - libm::lgamma(n - k + 1.0)
            + k * libm::log(p)
            + (n - k) * libm::log1p(-p)
    };
    (0..=balls).filter(|k| called(*k)).map(|k| libm::exp(ln_chance(k))).sum::<f64>().min(1.0)
}

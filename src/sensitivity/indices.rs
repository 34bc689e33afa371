//! Sobol shares, variance-based sensitivity: which share of a figure's variance each input carries.

use super::design::{Design, Row};
use super::stand_in::StandIn;

/// A share of the variance with its 95 % interval.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Share {
    /// Best estimate; a little below nought or above one where the truth is near it.
    pub value: f64,
    /// Percentiles 2.5 and 97.5 of the bootstrap.
    pub interval: [f64; 2],
}

/// What one input carries.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Index {
    /// By itself: what would go of the variance, on average, if only this input were known.
    pub first: Share,
    /// With all it does together with others: what would stay if only this input were not known.
    pub total: Share,
}

/// A figure's mean, spread and what each input carries of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Divided {
    /// Mean over the draws.
    pub mean: f64,
    /// One standard deviation over the draws.
    pub sd: f64,
    /// Share of the variance that the smooth stand-in explains of draws it was not fitted to.
    pub explained: f64,
    /// One per input.
    pub indices: Vec<Index>,
}

/// Resamples of the bootstrap.
const RESAMPLES: usize = 1000;
/// Start of the resampling's numbers; any will do.
const SEED: u64 = 1;

/// Share of the variance from which a stand-in helps.
const LEAST_EXPLAINED: f64 = 0.5;

/// Divides a figure's variance among its inputs.
///
/// First order: `mean of f(B)·(f(A with i of B) − f(A))` over the variance, f taken from its mean.
/// Total: `½ mean of (f(A) − f(A with i of B))²` over the variance (Jansen). The variance is that of
/// both sets together. Intervals: bootstrap over the rows; for evenly spread points they are wide
/// rather than narrow. Nothing for fewer than two rows; shares are nought where nothing varies.
///
/// Each mean is that of a stand-in, known exactly, and of what the draws say beyond it (a control
/// variate), unless the draws by themselves spread much less. The stand-in of each half of the rows is fitted to the
/// other half, so that a poor one costs sureness and never truth; one that explains less than half there is not used.
///
/// Source: Saltelli et al. 2010, Comput Phys Commun 181:259, Table 2, rows (b) and (f); Jansen 1999,
/// Comput Phys Commun 117:35 (both from memory, high; tests hold them against closed forms).
pub fn divide(design: &Design, rows: &[Row]) -> Option<Divided> {
    if rows.len() < 2 {
        return None;
    }
    let half = |odd: usize| -> Vec<&Row> { rows.iter().skip(odd).step_by(2).collect() };
    let (even, odd) = (half(0), half(1));
    let mut stand_ins = [StandIn::fit(design, &odd), StandIn::fit(design, &even)];
    let explained =
        stand_ins[0].explains(design, &even).min(stand_ins[1].explains(design, &odd)).max(0.0);
    if explained < LEAST_EXPLAINED {
        stand_ins = [StandIn::nothing(design), StandIn::nothing(design)];
    }
    let seen: Vec<Seen<'_>> = rows
        .iter()
        .zip(stand_ins.iter().cycle())
        .map(|(row, it)| Seen::of(design, row, it))
        .collect();
    let n = seen.len() as f64;
    let mean = seen
        .iter()
        .map(|it| 0.5 * (it.row.a + it.row.b - it.stand_in_a - it.stand_in_b))
        .sum::<f64>()
        / n;
    let said = surer(
        seen.iter().map(|it| it.said(mean, 1.0)).collect(),
        seen.iter().map(|it| it.said(mean, 0.0)).collect(),
        design.inputs(),
    );

    let all: Vec<usize> = (0..said.len()).collect();
    let best = shares(&said, &all);
    let mut numbers = oorandom::Rand32::new(SEED);
    let again: Vec<Said> = (0..RESAMPLES)
        .map(|_| {
            let drawn: Vec<usize> =
                all.iter().map(|_| numbers.rand_range(0..all.len() as u32) as usize).collect();
            shares(&said, &drawn)
        })
        .collect();
    let share = |of: &dyn Fn(&Said) -> f64| {
        let mut sorted: Vec<f64> = again.iter().map(of).collect();
        sorted.sort_by(f64::total_cmp);
        let at = |part: f64| {
            let place = libm::round(part * (sorted.len() - 1) as f64) as usize;
            sorted.get(place).copied().unwrap_or(f64::NAN)
        };
        Share { value: of(&best), interval: [at(0.025), at(0.975)] }
    };
    let indices = (0..design.inputs())
        .map(|i| Index { first: share(&|it| it.first[i]), total: share(&|it| it.total[i]) })
        .collect();
    Some(Divided { mean, sd: libm::sqrt(best.variance.max(0.0)), explained, indices })
}

/// A row beside its stand-in.
struct Seen<'a> {
    row: &'a Row,
    stand_in_a: f64,
    stand_in_b: f64,
    /// What the stand-in gains when each input is taken from the second set.
    stand_in_gain: Vec<f64>,
    /// Variance that each input carries of the stand-in.
    stand_in_variance: Vec<f64>,
}

/// What one row, or several, say of the variance, and of each input's part in it.
struct Said {
    variance: f64,
    first: Vec<f64>,
    total: Vec<f64>,
}

impl<'a> Seen<'a> {
    fn of(design: &Design, row: &'a Row, stand_in: &StandIn) -> Self {
        let a = stand_in.parts(design, &design.a(row.number));
        let b = stand_in.parts(design, &design.b(row.number));
        Self {
            row,
            stand_in_a: a.iter().sum(),
            stand_in_b: b.iter().sum(),
            stand_in_gain: a.iter().zip(&b).map(|(a, b)| b - a).collect(),
            stand_in_variance: stand_in.variances(design),
        }
    }

    /// What the row says, with the stand-in (`by` 1) or without it (`by` 0).
    fn said(&self, mean: f64, by: f64) -> Said {
        let beyond = |value: f64, stand_in: f64| {
            let off = value - mean;
            off * off - by * stand_in * stand_in
        };
        let known: f64 = self.stand_in_variance.iter().sum();
        let Row { a, b, mixed, .. } = self.row;
        let each = || mixed.iter().zip(&self.stand_in_gain).zip(&self.stand_in_variance);
        Said {
            variance: by * known
                + 0.5 * (beyond(*a, self.stand_in_a) + beyond(*b, self.stand_in_b)),
            first: each()
                .map(|((mixed, gain), known)| {
                    (b - mean) * (mixed - a) + by * (known - self.stand_in_b * gain)
                })
                .collect(),
            total: each()
                .map(|((mixed, gain), known)| {
                    let change = mixed - a;
                    0.5 * change * change + by * (known - 0.5 * gain * gain)
                })
                .collect(),
        }
    }
}

/// Variance over the rows of a plain mean against that with the stand-in from which the plain one is
/// taken. Well below one: to choose the smaller of two like ones would favour rows that say too little.
const MUCH_LESS: f64 = 0.25;

/// Of two ways to say the same the first, but the second where it spreads much less over the rows.
fn surer(mut rows: Vec<Said>, others: Vec<Said>, inputs: usize) -> Vec<Said> {
    let spread = |said: &[Said], of: &dyn Fn(&Said) -> f64| {
        let mean = said.iter().map(of).sum::<f64>() / said.len() as f64;
        said.iter().map(|it| (of(it) - mean) * (of(it) - mean)).sum::<f64>()
    };
    let better = |of: &dyn Fn(&Said) -> f64| spread(&others, of) < MUCH_LESS * spread(&rows, of);
    let variance = better(&|it| it.variance);
    let first: Vec<bool> = (0..inputs).map(|i| better(&|it| it.first[i])).collect();
    let total: Vec<bool> = (0..inputs).map(|i| better(&|it| it.total[i])).collect();
    for (row, other) in rows.iter_mut().zip(others) {
        if variance {
            row.variance = other.variance;
        }
        for i in 0..inputs {
            if first[i] {
                row.first[i] = other.first[i];
            }
            if total[i] {
                row.total[i] = other.total[i];
            }
        }
    }
    rows
}

/// The means over these rows, the inputs' parts as shares of the variance.
fn shares(said: &[Said], rows: &[usize]) -> Said {
    let inputs = said.first().map_or(0, |it| it.first.len());
    let (mut variance, mut first, mut total) = (0.0, vec![0.0; inputs], vec![0.0; inputs]);
    for row in rows.iter().filter_map(|n| said.get(*n)) {
        variance += row.variance;
        for (sum, it) in first.iter_mut().zip(&row.first) {
            *sum += it;
        }
        for (sum, it) in total.iter_mut().zip(&row.total) {
            *sum += it;
        }
    }
    let share = |sum: f64| if variance > 0.0 { sum / variance } else { 0.0 };
    Said {
        variance: variance / rows.len() as f64,
        first: first.into_iter().map(share).collect(),
        total: total.into_iter().map(share).collect(),
    }
}

//! Variance-based sensitivity: which share of a figure's variance each input carries.

/// A figure at one row of a [`super::design::Design`].
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// At the row of the first set.
    pub a: f64,
    /// At the row of the second set.
    pub b: f64,
    /// At the row of the first set with each input in turn taken from the second.
    pub mixed: Vec<f64>,
}

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
    /// One per input.
    pub indices: Vec<Index>,
}

/// Resamples of the bootstrap.
const RESAMPLES: usize = 1000;
/// Start of the resampling's numbers; any will do.
const SEED: u64 = 1;

/// Divides a figure's variance among its inputs.
///
/// First order: `mean of f(B)·(f(A with i of B) − f(A))` over the variance, f taken from its mean.
/// Total: `½ mean of (f(A) − f(A with i of B))²` over the variance (Jansen). The variance is that of
/// both sets together. Intervals: bootstrap over the rows; for evenly spread points they are wide
/// rather than narrow. Nothing for fewer than two rows; shares are nought where nothing varies.
///
/// Source: Saltelli et al. 2010, Comput Phys Commun 181:259, Table 2, rows (b) and (f); Jansen 1999,
/// Comput Phys Commun 117:35 (both from memory, high; tests hold them against closed forms).
pub fn divide(rows: &[Row]) -> Option<Divided> {
    let inputs = rows.first()?.mixed.len();
    if rows.len() < 2 {
        return None;
    }
    let all: Vec<&Row> = rows.iter().collect();
    let best = shares(&all, inputs);
    let mut numbers = oorandom::Rand32::new(SEED);
    let again: Vec<Estimate> = (0..RESAMPLES)
        .map(|_| {
            let drawn: Vec<&Row> = rows
                .iter()
                .filter_map(|_| rows.get(numbers.rand_range(0..rows.len() as u32) as usize))
                .collect();
            shares(&drawn, inputs)
        })
        .collect();
    let share = |of: &dyn Fn(&Estimate) -> f64| {
        let mut sorted: Vec<f64> = again.iter().map(of).collect();
        sorted.sort_by(f64::total_cmp);
        let at = |part: f64| {
            let place = libm::round(part * (sorted.len() - 1) as f64) as usize;
            sorted.get(place).copied().unwrap_or(f64::NAN)
        };
        Share { value: of(&best), interval: [at(0.025), at(0.975)] }
    };
    let indices = (0..inputs)
        .map(|i| Index { first: share(&|it| it.first[i]), total: share(&|it| it.total[i]) })
        .collect();
    Some(Divided { mean: best.mean, sd: libm::sqrt(best.variance), indices })
}

struct Estimate {
    mean: f64,
    variance: f64,
    first: Vec<f64>,
    total: Vec<f64>,
}

fn shares(rows: &[&Row], inputs: usize) -> Estimate {
    let n = rows.len() as f64;
    let mean = rows.iter().map(|it| it.a + it.b).sum::<f64>() / (2.0 * n);
    let squared = |x: f64| (x - mean) * (x - mean);
    let variance =
        rows.iter().map(|it| squared(it.a) + squared(it.b)).sum::<f64>() / (2.0 * n - 1.0);
    let (mut first, mut total) = (vec![0.0; inputs], vec![0.0; inputs]);
    for row in rows {
        for (i, mixed) in row.mixed.iter().enumerate().take(inputs) {
            first[i] += (row.b - mean) * (mixed - row.a);
            total[i] += 0.5 * (row.a - mixed) * (row.a - mixed);
        }
    }
    let share = |sum: &f64| if variance > 0.0 { sum / n / variance } else { 0.0 };
    Estimate {
        mean,
        variance,
        first: first.iter().map(share).collect(),
        total: total.iter().map(share).collect(),
    }
}

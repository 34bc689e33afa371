//! Where in an innings a bat is looked at.

/// Scores at which an innings is looked at: first fresh, then points and weights of its mean, then the end, then any
/// that was asked.
#[derive(Clone, Debug, PartialEq)]
pub struct Scores {
    /// Runs.
    pub runs: Vec<f64>,
}

/// Gauss and Legendre on 0 to 1 with three points: place, weight. Source: Abramowitz & Stegun, table 25.4.
const MEAN: [[f64; 2]; 3] = [
    [0.112_701_665_379_258, 0.277_777_777_777_778],
    [0.5, 0.444_444_444_444_444],
    [0.887_298_334_620_742, 0.277_777_777_777_778],
];

impl Scores {
    /// Place of the fresh player.
    pub const FRESH: usize = 0;
    /// Place of the end of the innings.
    pub const END: usize = 1 + MEAN.len();

    /// Of an innings of so many runs.
    pub fn new(runs: f64, asked: impl IntoIterator<Item = f64>) -> Self {
        let own = core::iter::once(0.0).chain(MEAN.map(|[at, _]| at * runs)).chain([runs]);
        Self { runs: own.chain(asked).collect() }
    }

    /// Places and weights whose sum is the mean over the innings.
    pub fn mean() -> impl Iterator<Item = (usize, f64)> {
        MEAN.into_iter().enumerate().map(|(i, [_, weight])| (1 + i, weight))
    }

    /// Place of a score that was asked for; the end if it was not.
    pub fn place(&self, runs: f64) -> usize {
        self.runs.iter().position(|it| *it == runs).unwrap_or(Self::END)
    }
}

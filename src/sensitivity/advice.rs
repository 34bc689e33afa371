//! What the study says to whoever holds the tape: what to measure carefully, what needs no more care.

use super::figure::Figure;
use super::study::Study;

/// How much an input matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    /// It hardly moves any figure.
    Little,
    /// In between, or the draws are too few to tell.
    Some,
    /// It carries a large part of some figure's doubt.
    Much,
}

/// Total share of a figure's variance from which an input matters: known exactly, it would narrow the
/// figure's doubt by a twentieth or more.
pub const MUCH: f64 = 0.10;
/// Total share below which, interval and all, an input is not worth a thought: a fiftieth of the doubt.
pub const LITTLE: f64 = 0.04;

impl Study {
    /// Largest total share of an input over the figures, and whose it is.
    pub fn most(&self, input: usize) -> Option<(Figure, f64)> {
        let shares = self
            .figures
            .iter()
            .filter_map(|it| Some((it.figure, it.divided.indices.get(input)?.total.value)));
        shares.max_by(|a, b| a.1.total_cmp(&b.1))
    }

    /// How much an input matters over all figures.
    pub fn weight(&self, input: usize) -> Weight {
        let totals =
            || self.figures.iter().filter_map(|it| Some(it.divided.indices.get(input)?.total));
        if totals().any(|it| it.value >= MUCH) {
            Weight::Much
        } else if totals().all(|it| it.interval[1] < LITTLE) {
            Weight::Little
        } else {
            Weight::Some
        }
    }

    /// Places of the inputs, the most telling first.
    pub fn by_weight(&self) -> Vec<usize> {
        let mut places: Vec<usize> = (0..self.inputs.len()).collect();
        let most = |it: usize| self.most(it).map_or(0.0, |it| it.1);
        places.sort_by(|a, b| most(*b).total_cmp(&most(*a)));
        places
    }
}

//! What the study says to whoever holds the tape: what to measure carefully, what needs no more care.

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

    /// Places of the inputs, the one with the largest shares over all figures first.
    pub fn by_weight(&self) -> Vec<usize> {
        let sum = |input: usize| {
            let totals = self.figures.iter().filter_map(|it| it.divided.indices.get(input));
            totals.map(|it| it.total.value.clamp(0.0, 1.0)).sum::<f64>()
        };
        let mut places: Vec<usize> = (0..self.inputs.len()).collect();
        places.sort_by(|a, b| sum(*b).total_cmp(&sum(*a)));
        places
    }
}

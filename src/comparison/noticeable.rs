//! Can a hand feel the difference? The published thresholds disagree, and the answer says so.

use crate::source::{Source, Status};

/// Whether a difference can be felt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Felt {
    /// Beyond every published threshold.
    Yes,
    /// Between the published thresholds.
    Unsure,
    /// Below every published threshold.
    No,
}

/// Smallest share of a quantity that people notice, by one source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Threshold {
    /// Weber fraction.
    pub share: f64,
    /// Where it comes from.
    pub source: Source,
}

const fn threshold(share: f64, work: &'static str, status: Status) -> Threshold {
    Threshold { share, source: Source { work, status } }
}

/// Lifted weight.
pub const WEIGHT: [Threshold; 4] = [
    threshold(
        0.025,
        "Weber, weights lifted in turn by one hand, in an encyclopedia article",
        Status::ReadSecondHand,
    ),
    threshold(
        0.043,
        "Oberlin 1936, 50–550 g, quoted in a paper on steering wheels",
        Status::ReadSecondHand,
    ),
    threshold(
        0.059,
        "Fechner's data, 300–3000 g, quoted in the same paper",
        Status::ReadSecondHand,
    ),
    threshold(0.067, "Weber, weights lifted together, least favourable", Status::ReadSecondHand),
];

/// Moment of inertia of a thing swung. The two are tenfold apart and neither was read: for words only,
/// never for a choice.
pub const MOMENT_OF_INERTIA: [Threshold; 2] = [
    threshold(0.025, "Brody 2000, Sports Eng 3:145, tennis rackets", Status::FromMemory),
    threshold(0.28, "Kreifeldt & Chuang 1979, Science 206:588", Status::FromMemory),
];

/// Whether a difference can be felt, as a share of the quantity, against thresholds that may disagree.
pub fn felt(difference: f64, of: f64, thresholds: &[Threshold]) -> Felt {
    let share = (difference / of).abs();
    if thresholds.iter().all(|it| share >= it.share) {
        Felt::Yes
    } else if thresholds.iter().all(|it| share < it.share) {
        Felt::No
    } else {
        Felt::Unsure
    }
}

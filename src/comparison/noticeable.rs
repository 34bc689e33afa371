//! Can a hand feel the difference? The published thresholds disagree, and the answer says so.

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

/// Smallest shares of a lifted weight that people notice (Weber fractions), by source; all read second-hand.
pub const WEIGHT: [f64; 4] = [
    // Weber, weights lifted in turn by one hand, in an encyclopedia article.
    0.025, // Oberlin 1936, 50–550 g, quoted in a paper on steering wheels.
    0.043, // Fechner's data, 300–3000 g, quoted in the same paper.
    0.059, // Weber, weights lifted together, least favourable.
    0.067,
];

/// The same of the moment of inertia of a thing swung. The two are tenfold apart and neither was read: for words only,
/// never for a choice.
pub const MOMENT_OF_INERTIA: [f64; 2] = [
    // Brody 2000, Sports Eng 3:145, tennis rackets, from memory.
    0.025, // Kreifeldt & Chuang 1979, Science 206:588, from memory.
    0.28,
];

/// Whether a difference can be felt, as a share of the quantity, against thresholds that may disagree.
pub fn felt(difference: f64, of: f64, thresholds: &[f64]) -> Felt {
    let share = (difference / of).abs();
    if thresholds.iter().all(|it| share >= *it) {
        Felt::Yes
    } else if thresholds.iter().all(|it| share < *it) {
        Felt::No
    } else {
        Felt::Unsure
    }
}

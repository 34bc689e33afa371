//! The maker's demonstration: which two bats show it best.

use backlift::bat::figures::WeighedBat;

use super::action::Pair;
use super::state::Studio;

/// How much more a likeness counts than an unlikeness.
const LIKENESS: f64 = 4.0;

/// The two bats that are most alike in the one and most unlike in the other.
pub fn best_pair(bats: &[WeighedBat], pair: Pair) -> Option<[usize; 2]> {
    let apart = |a: f64, b: f64| (a / b).ln().abs();
    let score = |[a, b]: [usize; 2]| {
        let (a, b) = (bats.get(a)?, bats.get(b)?);
        let scale = apart(a.mass_kg.value, b.mass_kg.value);
        let hand = apart(a.swing_moment_kg_m2.value, b.swing_moment_kg_m2.value);
        Some(match pair {
            Pair::SameScale => hand - LIKENESS * scale,
            Pair::SameHand => scale - LIKENESS * hand,
        })
    };
    let pairs = (0..bats.len()).flat_map(|a| (a + 1..bats.len()).map(move |b| [a, b]));
    pairs
        .filter_map(|it| Some((score(it)?, it)))
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, it)| it)
}

impl Studio {
    /// Puts the two bats that show it best on the screen.
    pub(super) fn show_pair(&mut self, pair: Pair) {
        self.pair = pair;
        let bats = self.derived.loaded.as_ref().and_then(|it| best_pair(&it.bats, pair));
        if let Some(bats) = bats {
            (self.playback.bats, self.playback.second) = (bats, true);
        }
    }
}

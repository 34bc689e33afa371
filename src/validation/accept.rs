//! When ours counts as agreeing with an outside figure.

/// The acceptance of one check, stated before the figure is seen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Accept {
    /// Within this share of the expected value.
    Share(f64),
    /// Within this much, in the row's unit.
    Within(f64),
    /// Within this many of the published standard deviations.
    Deviations(f64),
    /// Anywhere between these, in the row's unit.
    Between(f64, f64),
    /// Not above the expected value.
    AtMost,
    /// Not below the expected value.
    AtLeast,
}

impl Accept {
    /// Whether `ours` agrees with `expected`, whose published spread is `sd` (if any).
    pub fn agrees(self, expected: f64, sd: Option<f64>, ours: f64) -> bool {
        let off = (ours - expected).abs();
        match self {
            Self::Share(share) => off <= share * expected.abs(),
            Self::Within(most) => off <= most,
            Self::Deviations(count) => sd.is_some_and(|sd| off <= count * sd),
            Self::Between(low, high) => (low..=high).contains(&ours),
            Self::AtMost => ours <= expected,
            Self::AtLeast => ours >= expected,
        }
    }

    /// How much of what is accepted was used: 0 in the middle of it, 1 at its limit. None where there is
    /// only one limit, or no spread to count in.
    pub fn used(self, expected: f64, sd: Option<f64>, ours: f64) -> Option<f64> {
        let off = (ours - expected).abs();
        let most = match self {
            Self::Share(share) => share * expected.abs(),
            Self::Within(most) => most,
            Self::Deviations(count) => count * sd?,
            Self::Between(low, high) => {
                return Some((2.0 * ours - low - high).abs() / (high - low));
            }
            Self::AtMost | Self::AtLeast => return None,
        };
        Some(off / most)
    }
}

//! A value, its standard deviation, and where it came from.

/// How a value was come by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Origin {
    /// Read off an instrument for this bat or this player.
    Measured,
    /// Taken from published tables or a size, because it was not measured.
    Estimated,
    /// Follows by computation from values that carry their own doubt.
    Computed,
    /// An assumption of this project, with no source.
    Assumed,
}

/// A value with its doubt: one standard deviation, in the value's own unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Uncertain {
    /// Best value.
    pub value: f64,
    /// One standard deviation, never negative.
    pub sd: f64,
    /// Where it came from.
    pub origin: Origin,
}

impl Uncertain {
    /// Read off an instrument.
    pub const fn measured(value: f64, sd: f64) -> Self {
        Self { value, sd, origin: Origin::Measured }
    }
    /// From tables, because it was not measured.
    pub const fn estimated(value: f64, sd: f64) -> Self {
        Self { value, sd, origin: Origin::Estimated }
    }
    /// Computed from other values.
    pub const fn computed(value: f64, sd: f64) -> Self {
        Self { value, sd, origin: Origin::Computed }
    }
    /// Standard deviation as a share of the value.
    pub fn relative_sd(self) -> f64 {
        self.sd / self.value.abs()
    }
    /// The same quantity times a constant.
    pub fn times(self, factor: f64) -> Self {
        Self { value: self.value * factor, sd: self.sd * factor.abs(), origin: self.origin }
    }
    /// True when the value was not measured.
    pub fn is_estimated(self) -> bool {
        self.origin == Origin::Estimated
    }
}

/// Standard deviation of a sum of independent contributions (root of the sum of squares).
pub fn independent_sd(contributions: &[f64]) -> f64 {
    libm::sqrt(contributions.iter().map(|c| c * c).sum())
}

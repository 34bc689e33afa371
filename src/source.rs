//! Where a published figure comes from, printed beside it.

/// How far a figure may be relied on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// Seen in the named work itself.
    Read,
    /// Seen in a copy that names the work.
    ReadSecondHand,
    /// Follows from a formula and inputs given beside it.
    Computed,
    /// Recalled, not seen.
    FromMemory,
    /// A habit of the trade.
    CommonPractice,
    /// An assumption of this project.
    Assumption,
}

impl Status {
    /// In words, as printed.
    pub fn words(self) -> &'static str {
        match self {
            Self::Read => "read",
            Self::ReadSecondHand => "read, second-hand",
            Self::Computed => "computed",
            Self::FromMemory => "from memory",
            Self::CommonPractice => "common practice, no source",
            Self::Assumption => "assumption, no source",
        }
    }
}

/// A work and what was taken from it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    /// Author, year, journal or publisher, table or page.
    pub work: &'static str,
    /// How far the figure may be relied on.
    pub status: Status,
}

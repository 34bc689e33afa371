//! A place along a bat as people write it: a length, and from which end.

use super::read::{UnitFault, parse};
use super::spellings::Quantity;

/// A place along a bat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FromEnd {
    /// From the top of the handle, m; so is what names no end.
    Top(f64),
    /// From the toe, m.
    Toe(f64),
}

/// How an end is written behind a length, and what it makes of that.
type End = (&'static str, fn(f64) -> FromEnd);
const ENDS: [End; 4] = [
    ("from the toe", FromEnd::Toe),
    ("from toe", FromEnd::Toe),
    ("from the top", FromEnd::Top),
    ("from top", FromEnd::Top),
];

impl FromEnd {
    /// Reads "502 mm", "502 mm from top" or "328 mm from toe".
    ///
    /// # Errors
    /// If there is no length.
    pub fn read(text: &str) -> Result<Self, UnitFault> {
        let lower = text.trim().to_lowercase();
        for (words, end) in ENDS {
            if let Some(length) = lower.strip_suffix(words) {
                return parse(Quantity::Length, length).map(end);
            }
        }
        parse(Quantity::Length, text).map(Self::Top)
    }

    /// The length as it was written, m.
    pub fn written_m(self) -> f64 {
        match self {
            Self::Top(it) | Self::Toe(it) => it,
        }
    }

    /// From the top of a bat so long, m.
    pub fn from_top_m(self, length_m: f64) -> f64 {
        match self {
            Self::Top(it) => it,
            Self::Toe(it) => length_m - it,
        }
    }
}

//! Whether a bat's size suits a player's stature.

use super::constants::SUITS_WITHIN;
use crate::bat::sizes::Size;

/// Whether a size suits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Suits {
    /// Sold for this stature, or for one within 3 cm of it.
    Yes,
    /// Sold for taller players.
    TooLong,
    /// Sold for shorter players.
    TooShort,
}

/// Whether a size suits, in a table.
pub fn suits_words(it: Suits) -> &'static str {
    match it {
        Suits::Yes => "yes",
        Suits::TooLong => "too long",
        Suits::TooShort => "too short",
    }
}

/// Whether a size suits a stature.
pub fn suits(size: &Size, stature_m: f64) -> Suits {
    let within = SUITS_WITHIN.value;
    if size.stature_from_m.is_some_and(|from| stature_m < from - within) {
        Suits::TooLong
    } else if size.stature_to_m.is_some_and(|to| stature_m > to + within) {
        Suits::TooShort
    } else {
        Suits::Yes
    }
}

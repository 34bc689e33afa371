//! What an order is called, and what the customer wishes besides. No figure of the card follows from it; a wished middle
//! chooses among the shapes that meet the card.

use super::{Card, CardFault, HandleShape};
use crate::measurement::plan::Middle;

/// Letters of an order's number at most.
pub const LONGEST_NUMBER: usize = 24;
/// Letters of a wish's note at most.
pub const LONGEST_NOTE: usize = 200;
/// Grips at most.
pub const MOST_GRIPS: u32 = 4;

/// An order as the maker's book has it. A number, so that no name travels with the card.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Order {
    /// Number in the maker's book: "17", "2026-113"; no more than [`LONGEST_NUMBER`] letters.
    pub number: Option<String>,
    /// What the customer wishes besides the figures.
    pub wish: Wish,
}

/// What a customer wishes.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Wish {
    /// Where the middle of the blade shall be.
    pub middle: Option<Middle>,
    /// Shape of the handle.
    pub handle_shape: Option<HandleShape>,
    /// Rubber grips on the handle, 0 to [`MOST_GRIPS`].
    pub grips: Option<u32>,
    /// Whatever else, in the customer's words: one line of no more than [`LONGEST_NOTE`] letters.
    pub note: Option<String>,
}

impl Order {
    /// The order, unless nothing is said in it.
    pub fn said(self) -> Option<Self> {
        (self != Self::default()).then_some(self)
    }
}

impl Card {
    /// The card under an order. What is wished of grips and handle stands on it as the state in which its figures
    /// hold; the figures stay: they are of the whole bat, whatever is on its handle.
    #[must_use]
    pub fn ordered(mut self, order: Option<Order>) -> Self {
        if let Some(wish) = order.as_ref().map(|it| &it.wish) {
            self.condition.grips = wish.grips.unwrap_or(self.condition.grips);
            self.handle_shape = wish.handle_shape.unwrap_or(self.handle_shape);
        }
        self.order = order;
        self
    }
}

/// A text in one line of no more than `most` letters; none where nothing is written.
fn one_line(what: &'static str, text: &str, most: usize) -> Result<Option<String>, CardFault> {
    let line = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let letters = line.chars().count();
    match letters {
        0 => Ok(None),
        _ if letters <= most => Ok(Some(line)),
        _ => Err(CardFault::TooLong { what, letters, most }),
    }
}

/// The order's number in one line; none where nothing is written.
///
/// # Errors
/// If it is too long.
pub fn number(text: &str) -> Result<Option<String>, CardFault> {
    one_line("order number", text, LONGEST_NUMBER)
}

/// The wish's note in one line; none where nothing is written.
///
/// # Errors
/// If it is too long.
pub fn note(text: &str) -> Result<Option<String>, CardFault> {
    one_line("wish", text, LONGEST_NOTE)
}

//! A figure outside its limits, for every fault that says so.

use core::fmt::Display;

/// A figure outside what can be, or not a finite number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfRange {
    /// Field as its file spells it.
    pub field: &'static str,
    /// The offending value.
    pub value: f64,
    /// Unit of the value and the limits.
    pub unit: &'static str,
    /// Least value accepted.
    pub low: f64,
    /// Greatest value accepted.
    pub high: f64,
}

impl OutOfRange {
    /// The fault of this figure, if it is one.
    pub fn check(
        field: &'static str,
        value: f64,
        unit: &'static str,
        [low, high]: [f64; 2],
    ) -> Option<Self> {
        (!(low..=high).contains(&value)).then_some(Self { field, value, unit, low, high })
    }

    /// In words, with the value as it is to be written.
    pub fn words(&self, value: impl Display) -> String {
        let Self { unit, low, high, .. } = self;
        format!("{value} {unit} is outside {low} to {high} {unit}")
    }
}

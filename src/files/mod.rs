//! Scenarios, assets, cards and saves: text to values and back.

pub mod card;
mod card_short;

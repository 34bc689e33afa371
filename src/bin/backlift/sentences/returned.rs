//! A delivered bat against its card, a figure at a time.

use backlift::card::returned_bat::{Item, Within};
use backlift::normal;
use backlift::units::Units;

use crate::figure::{bare, figure_words, measured};

/// One line of a check in words.
pub struct Told {
    /// What the bench says, with its doubt.
    pub measured: String,
    /// What was asked.
    pub asked: String,
    /// How far it may be off.
    pub limits: String,
    /// Whether it is within.
    pub within: String,
}

pub fn in_words(item: &Item, units: Units) -> Told {
    let sd = item.measured.map_or(0.0, |it| it.sd);
    let quantity = item.figure.about().quantity;
    // A swing moment's limits lie closer together than its reading is sure.
    let digit = if quantity.is_none() { 0.1 * sd } else { sd };
    let figure = |value: f64| figure_words(item.figure, value, digit, units);
    let bench = item.measured.map(|it| match quantity {
        Some(quantity) => measured(quantity, it, units),
        None => bare(it, item.figure.about().decimals),
    });
    let [low, high] = item.asked.tolerance;
    Told {
        measured: bench.unwrap_or_else(|| "not measured".to_owned()),
        asked: figure(item.asked.target),
        limits: format!("{} to {}", figure(low), figure(high)),
        within: match item.within {
            Within::Yes => "yes".to_owned(),
            Within::No => "no".to_owned(),
            Within::Unsure => best_guess(item),
            Within::NotMeasured => String::new(),
        },
    }
}

/// "best guess: yes, 73 in 100", in two lines: the chance that the figure itself is within, its reading's error normal.
fn best_guess(item: &Item) -> String {
    let Some(it) = item.measured else { return String::new() };
    let below = |limit: f64| normal::below((limit - it.value) / it.sd);
    let [low, high] = item.asked.tolerance;
    let within = below(high) - below(low);
    let (guess, chance) = if within >= 0.5 { ("yes", within) } else { ("no", 1.0 - within) };
    format!("best guess:\n{guess}, {:.0} in 100", 100.0 * chance)
}

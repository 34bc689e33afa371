//! Single values: text in, figure out, every fault kept with its place.

use super::super::fault::{Fault, MOST_FAULTS, nearest};
use super::Text;
use super::places::Places;
use crate::units::{Quantity, parse, share};

/// What is said of a field that is needed and was not written.
pub const MISSING: &str = "it is missing";
/// A longer text is no value.
const LONGEST_BYTES: usize = 200;

/// Reads values one by one and keeps the faults.
pub struct Values<'p> {
    places: &'p Places,
    /// Everything wrong so far.
    pub faults: Vec<Fault>,
}

impl<'p> Values<'p> {
    /// A reader that finds its places there.
    pub fn new(places: &'p Places) -> Self {
        Self { places, faults: Vec::new() }
    }

    /// Keeps a fault about the field at `path`.
    pub fn fault(&mut self, path: &str, message: &str, help: &str) {
        if self.faults.len() < MOST_FAULTS {
            self.faults.push(self.places.fault(path, message, help));
        }
    }

    /// A field that may not be left out: its value, or a fault if nothing was written at all.
    pub fn needed<T>(
        &mut self,
        path: &str,
        text: &Option<Text>,
        value: Option<T>,
        example: &str,
    ) -> Option<T> {
        if text.is_none() {
            let name = path.rsplit('.').next().unwrap_or(path);
            self.fault(path, MISSING, &format!("add {name}: {example}"));
        }
        value
    }

    /// The text of one value, unless it is too long for any.
    pub fn short<'t>(&mut self, path: &str, text: &'t Option<Text>) -> Option<&'t str> {
        let written = &text.as_ref()?.0;
        if written.len() > LONGEST_BYTES {
            let message = format!("it is {} characters long", written.chars().count());
            self.fault(path, &message, "write one value");
            return None;
        }
        Some(written)
    }

    /// A quantity above zero, in SI.
    pub fn quantity(&mut self, path: &str, text: &Option<Text>, quantity: Quantity) -> Option<f64> {
        self.quantity_like(path, text, quantity, quantity.accepted())
    }

    /// The same with examples of its own.
    pub fn quantity_like(
        &mut self,
        path: &str,
        text: &Option<Text>,
        quantity: Quantity,
        like: &str,
    ) -> Option<f64> {
        let written = self.short(path, text)?;
        match parse(quantity, written) {
            Ok(value) if value > 0.0 => Some(value),
            Ok(_) => {
                let message = format!("{written:?} is not above zero");
                let help = format!("write {} above zero, like {like}", quantity.words());
                self.fault(path, &message, &help);
                None
            }
            Err(fault) => {
                self.fault(path, &fault.to_string(), &fault.mend_like(like));
                None
            }
        }
    }

    /// A quantity of which nothing lies outside these limits, SI; `unit` is that of both.
    pub fn within(
        &mut self,
        path: &str,
        text: &Option<Text>,
        quantity: Quantity,
        limits: [f64; 2],
        unit: &str,
    ) -> Option<f64> {
        let value = self.quantity(path, text, quantity)?;
        let outside = outside(value, limits, unit);
        if let Some(message) = &outside {
            self.fault(path, message, "check the number and its unit");
        }
        Some(value).filter(|_| outside.is_none())
    }

    /// A bare number that `accepts`, described by `like`.
    pub fn number(
        &mut self,
        path: &str,
        text: &Option<Text>,
        accepts: impl Fn(f64) -> bool,
        like: &str,
    ) -> Option<f64> {
        let written = self.short(path, text)?;
        let value = written.trim().parse::<f64>().ok().filter(|it| it.is_finite() && accepts(*it));
        if value.is_none() {
            self.fault(
                path,
                &format!("{written:?} is not {like}"),
                &format!("write {like}, without a unit"),
            );
        }
        value
    }

    /// A share above zero and at most one: "0.9" or "90 %".
    pub fn share(&mut self, path: &str, text: &Option<Text>) -> Option<f64> {
        let written = self.short(path, text)?;
        let value = share(written).filter(|it| *it > 0.0 && *it <= 1.0);
        if value.is_none() {
            self.fault(
                path,
                &format!("{written:?} is not a share between 0 and 1"),
                "write it like \"0.9\" or \"90 %\"",
            );
        }
        value
    }

    /// An age in years: "13", "13.5 years", "13 years 4 months".
    pub fn age(&mut self, path: &str, text: &Option<Text>) -> Option<f64> {
        let written = self.short(path, text)?;
        let value = age(written).filter(|it| it.is_finite() && *it > 0.0);
        if value.is_none() {
            self.fault(
                path,
                &format!("{written:?} is not an age"),
                "write it in years, like \"13\", \"13.5 years\" or \"13 years 4 months\"",
            );
        }
        value
    }

    /// One of some words, the first of each row being the one to offer.
    pub fn choice<T: Copy>(
        &mut self,
        path: &str,
        text: &Option<Text>,
        choices: &[(&[&str], T)],
    ) -> Option<T> {
        let written = self.short(path, text)?;
        let lower = written.trim().to_lowercase();
        if let Some((_, value)) = choices.iter().find(|(words, _)| words.contains(&lower.as_str()))
        {
            return Some(*value);
        }
        let all = choices.iter().flat_map(|(words, _)| *words).copied();
        let offered: Vec<String> = choices
            .iter()
            .filter_map(|(words, _)| words.first())
            .map(|it| format!("{it:?}"))
            .collect();
        let help = match nearest(&lower, all) {
            Some(near) => format!("did you mean {near:?}?"),
            None => format!("write {}", offered.join(" or ")),
        };
        self.fault(path, &format!("{written:?} is not known here"), &help);
        None
    }

    /// A name that is not empty.
    pub fn name(&mut self, path: &str, text: &Option<Text>) -> Option<String> {
        let written = self.short(path, text)?.trim();
        if written.is_empty() {
            self.fault(path, "nothing is written here", "write a name, or leave the field out");
            return None;
        }
        Some(written.to_owned())
    }

    /// Names parted by commas.
    pub fn names(&mut self, path: &str, text: &Option<Text>) -> Option<Vec<String>> {
        let written = self.short(path, text)?;
        let names: Vec<String> =
            written.split(',').map(|it| it.trim().to_owned()).filter(|it| !it.is_empty()).collect();
        if names.is_empty() {
            self.fault(path, "nothing is written here", "write names parted by commas");
            return None;
        }
        Some(names)
    }
}

/// What is said of a value outside its limits, SI.
pub fn outside(value: f64, [low, high]: [f64; 2], unit: &str) -> Option<String> {
    let value_told = libm::round(value * 1e3) / 1e3;
    let is_within = (low..=high).contains(&value);
    (!is_within).then(|| format!("{value_told} {unit} is outside {low} to {high} {unit}"))
}

fn age(written: &str) -> Option<f64> {
    let lower = written.trim().to_lowercase();
    let letters = |c: char| c.is_alphabetic();
    let split = lower.find(letters).unwrap_or(lower.len());
    let (years, rest) = lower.split_at(split);
    let years: f64 = years.trim().parse().ok()?;
    let unit_end = rest.find(|c| !letters(c)).unwrap_or(rest.len());
    let (unit, months) = rest.split_at(unit_end);
    if !["", "y", "yr", "yrs", "year", "years"].contains(&unit) {
        return None;
    }
    let months = months.trim();
    if months.is_empty() {
        return Some(years);
    }
    let split = months.find(letters)?;
    let (count, unit) = months.split_at(split);
    let count: u32 = count.trim().parse().ok()?;
    (["m", "mo", "month", "months"].contains(&unit) && count < 12)
        .then(|| years + f64::from(count) / 12.0)
}

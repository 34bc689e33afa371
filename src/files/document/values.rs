//! Single values: text in, figure out, every fault kept with its place.

use super::super::fault::{Fault, MOST_FAULTS, nearest_or};
use super::Text;
use super::places::Places;
use crate::units::{self, Quantity, parse};

/// What is said of a field that is needed and was not written.
pub const MISSING: &str = "it is missing";
/// A longer text is no value.
pub(in crate::files) const LONGEST_BYTES: usize = 200;

/// A value, or why not and the mend.
pub type ReadText<T> = Result<T, (String, String)>;

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

    /// A field that may not be left out: a fault if nothing was written at all.
    pub fn needed<T>(
        &mut self,
        path: &str,
        text: &Option<Text>,
        of: impl Fn(&str) -> ReadText<T>,
        example: &str,
    ) -> Option<T> {
        if text.is_none() {
            let name = path.rsplit('.').next().unwrap_or(path);
            self.fault(path, MISSING, &format!("add {name}: {example}"));
        }
        self.read(path, text, of)
    }

    /// The text of one value, unless it is too long for any.
    pub fn short<'t>(&mut self, path: &str, text: &'t Option<Text>) -> Option<&'t str> {
        let read = one_value(&text.as_ref()?.0);
        self.kept(path, read)
    }

    /// What is read of a text, by one of the readers of this file or another.
    pub fn read<T>(
        &mut self,
        path: &str,
        text: &Option<Text>,
        of: impl Fn(&str) -> ReadText<T>,
    ) -> Option<T> {
        let read = one_value(&text.as_ref()?.0).and_then(of);
        self.kept(path, read)
    }

    fn kept<T>(&mut self, path: &str, read: ReadText<T>) -> Option<T> {
        read.map_err(|(message, help)| self.fault(path, &message, &help)).ok()
    }

    /// A quantity above zero, in SI.
    pub fn quantity(&mut self, path: &str, text: &Option<Text>, quantity: Quantity) -> Option<f64> {
        self.read(path, text, above_zero(quantity))
    }
}

/// The text of one value, unless it is too long for any.
pub(in crate::files) fn one_value(text: &str) -> ReadText<&str> {
    if text.len() > LONGEST_BYTES {
        let message = format!("it is {} characters long", text.chars().count());
        return Err((message, "write one value".to_owned()));
    }
    Ok(text)
}

/// Reads a quantity above zero, in SI.
pub fn above_zero(quantity: Quantity) -> impl Fn(&str) -> ReadText<f64> {
    above_zero_like(quantity, quantity.accepted())
}

/// The same with examples of its own.
pub fn above_zero_like(quantity: Quantity, like: &str) -> impl Fn(&str) -> ReadText<f64> {
    move |text| match parse(quantity, text) {
        Ok(value) if value > 0.0 => Ok(value),
        Ok(_) => {
            let help = format!("write {} above zero, like {like}", quantity.words());
            Err((format!("{text:?} is not above zero"), help))
        }
        Err(fault) => Err((fault.to_string(), fault.mend_like(like))),
    }
}

/// Reads a quantity of which nothing lies outside these limits, SI; `unit` is that of both.
pub fn within(
    quantity: Quantity,
    [low, high]: [f64; 2],
    unit: &str,
) -> impl Fn(&str) -> ReadText<f64> {
    move |text| {
        let value = above_zero(quantity)(text)?;
        if (low..=high).contains(&value) {
            return Ok(value);
        }
        let value_told = libm::round(value * 1e3) / 1e3;
        let message = format!("{value_told} {unit} is outside {low} to {high} {unit}");
        Err((message, "check the number and its unit".to_owned()))
    }
}

/// Reads a bare number that `accepts`, described by `like`.
pub fn number(accepts: impl Fn(f64) -> bool, like: &str) -> impl Fn(&str) -> ReadText<f64> {
    move |text| {
        let value = text.trim().parse::<f64>().ok().filter(|it| it.is_finite());
        value.filter(|it| accepts(*it)).ok_or_else(|| {
            (format!("{text:?} is not {like}"), format!("write {like}, without a unit"))
        })
    }
}

/// Reads a bare whole number within these limits, described by `like`.
pub fn whole_number([low, high]: [u32; 2], like: &str) -> impl Fn(&str) -> ReadText<u32> {
    let accepts =
        move |it: f64| (f64::from(low)..=f64::from(high)).contains(&it) && it.fract() == 0.0;
    let read = number(accepts, like);
    move |text| read(text).map(|it| it as u32)
}

/// Reads a share above zero and at most one: "0.9" or "90 %".
pub fn share(text: &str) -> ReadText<f64> {
    units::share(text).filter(|it| *it > 0.0 && *it <= 1.0).ok_or_else(|| {
        let message = format!("{text:?} is not a share between 0 and 1");
        (message, "write it like \"0.9\" or \"90 %\"".to_owned())
    })
}

/// Reads one of some words, the first of each row being the one to offer.
pub fn choice<T: Copy>(choices: &[(&[&str], T)]) -> impl Fn(&str) -> ReadText<T> {
    move |text| {
        let lower = text.trim().to_lowercase();
        let chosen = choices.iter().find(|(words, _)| words.contains(&lower.as_str()));
        chosen.map(|(_, value)| *value).ok_or_else(|| {
            let all = choices.iter().flat_map(|(words, _)| *words).copied();
            let firsts = choices.iter().filter_map(|(words, _)| words.first());
            let offered: Vec<String> = firsts.map(|it| format!("{it:?}")).collect();
            let help = nearest_or(&lower, all, format!("write {}", offered.join(" or ")));
            (format!("{text:?} is not known here"), help)
        })
    }
}

/// Reads yes or no.
pub fn yes_or_no(text: &str) -> ReadText<bool> {
    choice(&[(&["yes", "true"], true), (&["no", "false"], false)])(text)
}

/// Reads a name that is not empty.
pub fn name(text: &str) -> ReadText<String> {
    match text.trim() {
        "" => Err(nothing("write a name, or leave the field out")),
        name => Ok(name.to_owned()),
    }
}

/// Reads names parted by commas.
pub fn names(text: &str) -> ReadText<Vec<String>> {
    let names = text.split(',').map(str::trim).filter(|it| !it.is_empty());
    let names: Vec<String> = names.map(str::to_owned).collect();
    if names.is_empty() { Err(nothing("write names parted by commas")) } else { Ok(names) }
}

fn nothing(help: &str) -> (String, String) {
    ("nothing is written here".to_owned(), help.to_owned())
}

/// Reads an age in years: "13", "13.5 years", "13 years 4 months".
pub fn age(text: &str) -> ReadText<f64> {
    let years = years(text).filter(|it| it.is_finite() && *it > 0.0);
    years.ok_or_else(|| {
        let help = "write it in years, like \"13\", \"13.5 years\" or \"13 years 4 months\"";
        (format!("{text:?} is not an age"), help.to_owned())
    })
}

fn years(written: &str) -> Option<f64> {
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

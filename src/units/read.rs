//! Quantities as people write them, into SI.

use super::spellings::{Quantity, Unit};

/// Why a text is not a quantity, and what is accepted instead.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{message}")]
pub struct UnitFault {
    message: String,
    mend: Mend,
}

/// What to write instead.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Mend {
    WithUnit,
    DecimalPoint,
    /// The accepted unit nearest in spelling.
    Unit(&'static str),
}

impl UnitFault {
    fn new(message: String, mend: Mend) -> Self {
        Self { message, mend }
    }

    /// What to write instead, as a sentence without its full stop.
    pub fn mend(&self, quantity: Quantity) -> String {
        self.mend_like(quantity.accepted())
    }

    /// The same with these examples.
    pub fn mend_like(&self, accepted: &str) -> String {
        match self.mend {
            Mend::DecimalPoint => format!("write decimals with a point, like {accepted}"),
            Mend::Unit(near) => format!("did you mean {near:?}? Accepted: {accepted}"),
            Mend::WithUnit => format!("write it with its unit, like {accepted}"),
        }
    }
}

fn not_a_number(found: &str) -> UnitFault {
    UnitFault::new(format!("{found:?} is not a number"), Mend::WithUnit)
}

/// Reads a quantity as people write it, into SI: `"2 lb 9.5 oz"` → 1.1765 (kg).
///
/// Parts run from the larger unit to the smaller; a number may be whole, decimal or with a vulgar
/// fraction ("33 1/2 in", "33½ in"). The sign is kept; whether it makes sense is for the caller.
pub fn parse(quantity: Quantity, text: &str) -> Result<f64, UnitFault> {
    let mut rest = text.trim();
    if rest.is_empty() {
        return Err(UnitFault::new("nothing is written here".to_owned(), Mend::WithUnit));
    }
    let negative = rest.starts_with(['-', '−']);
    rest = rest.trim_start_matches(['-', '−', '+']).trim_start();
    let mut sum = 0.0;
    let mut before: Option<(&str, f64)> = None;
    while !rest.is_empty() {
        let (number, after_number) = take_number(rest)?;
        let (spelling, after_unit) = take_unit(after_number);
        if spelling.is_empty() {
            return Err(UnitFault::new(format!("{} has no unit", text.trim()), Mend::WithUnit));
        }
        let unit = known_unit(quantity, spelling)?;
        if let Some((first, size)) = before
            && size <= unit.in_si
        {
            let message = format!(
                "{spelling:?} after {first:?}: parts run from the larger unit to the smaller"
            );
            return Err(UnitFault::new(message, Mend::WithUnit));
        }
        sum += number * unit.in_si;
        before = Some((spelling, unit.in_si));
        rest = after_unit.trim_start();
    }
    if !sum.is_finite() {
        return Err(not_a_number(text.trim()));
    }
    Ok(if negative { -sum } else { sum })
}

fn known_unit(quantity: Quantity, spelling: &str) -> Result<&'static Unit, UnitFault> {
    let lower = spelling.to_lowercase();
    let spelt = lower.trim_end_matches('.');
    if let Some(unit) = quantity.unit(spelt) {
        return Ok(unit);
    }
    if let Some(other) = Quantity::ALL.into_iter().find(|it| it.unit(spelt).is_some()) {
        let (measures, wanted) = (other.words(), quantity.words());
        let message = format!("{spelling:?} measures {measures}, not {wanted}");
        return Err(UnitFault::new(message, Mend::WithUnit));
    }
    let nearest = quantity
        .units()
        .iter()
        .flat_map(|it| it.spellings)
        .map(|it| (strsim::damerau_levenshtein(spelt, it), *it))
        .filter(|(distance, it)| *distance <= 2 && *distance < it.chars().count())
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, it)| it);
    let wanted = quantity.words().trim_start_matches("an ").trim_start_matches("a ");
    let message = format!("{spelling:?} is not a unit of {wanted}");
    Err(UnitFault::new(message, nearest.map_or(Mend::WithUnit, Mend::Unit)))
}

/// A number at the start: digits with at most one point, and perhaps a vulgar fraction after it.
fn take_number(text: &str) -> Result<(f64, &str), UnitFault> {
    let (whole, mut rest) = split_while(text, |c| c.is_ascii_digit() || c == '.');
    let not_a_number = || not_a_number(split_while(text, |c| !c.is_whitespace()).0);
    if rest.starts_with(',') {
        let found = split_while(text, |c| c.is_ascii_digit() || ".,".contains(c)).0;
        return Err(UnitFault::new(format!("{found:?} has a comma"), Mend::DecimalPoint));
    }
    let mut value = match whole.parse::<f64>() {
        Ok(value) => value,
        Err(_) if whole.is_empty() => 0.0,
        Err(_) => return Err(not_a_number()),
    };
    if let Some(over) = rest.strip_prefix('/') {
        let (denominator, after) = split_while(over, |c| c.is_ascii_digit());
        value /= denominator.parse::<f64>().map_err(|_| not_a_number())?;
        rest = after;
    } else if let (Some(fraction), after) = take_fraction(rest.trim_start()) {
        value += fraction;
        rest = after;
    } else if whole.is_empty() {
        return Err(not_a_number());
    }
    if value.is_finite() { Ok((value, rest)) } else { Err(not_a_number()) }
}

/// `1/2` or `½` at the start, below one.
fn take_fraction(text: &str) -> (Option<f64>, &str) {
    const SIGNS: &[(char, f64)] = &[('½', 0.5), ('¼', 0.25), ('¾', 0.75), ('⅛', 0.125)];
    if let Some((sign, value)) = SIGNS.iter().find(|(sign, _)| text.starts_with(*sign)) {
        return (Some(*value), &text[sign.len_utf8()..]);
    }
    let (numerator, rest) = split_while(text, |c| c.is_ascii_digit());
    let Some(over) = rest.strip_prefix('/') else { return (None, text) };
    let (denominator, after) = split_while(over, |c| c.is_ascii_digit());
    match (numerator.parse::<f64>(), denominator.parse::<f64>()) {
        (Ok(n), Ok(d)) if n < d => (Some(n / d), after),
        _ => (None, text),
    }
}

/// A unit at the start: everything up to the next number, without the space around it.
fn take_unit(text: &str) -> (&str, &str) {
    let (unit, rest) = split_while(text.trim_start(), |c| {
        !(c.is_ascii_digit() || matches!(c, '½' | '¼' | '¾' | '⅛' | '.' | ','))
    });
    // "2 lbs. 9 oz": the point after an abbreviation belongs to it; so does a comma between parts.
    let rest = match rest.strip_prefix(['.', ',']) {
        Some(after) if !unit.is_empty() && !after.starts_with(|c: char| c.is_ascii_digit()) => {
            after
        }
        _ => rest,
    };
    (unit.trim_end(), rest)
}

fn split_while(text: &str, belongs: impl Fn(char) -> bool) -> (&str, &str) {
    text.split_at(text.find(|c| !belongs(c)).unwrap_or(text.len()))
}

/// Reads "0.9" or "90 %"; what a share may be is for the caller.
pub fn share(written: &str) -> Option<f64> {
    let written = written.trim();
    let (number, whole) = match written.strip_suffix('%') {
        Some(percent) => (percent.trim(), 100.0),
        None => (written, 1.0),
    };
    // Divided, not multiplied by 0.01: 95 % is then the same number as 0.95, and no bound is missed by a hair.
    number.parse::<f64>().ok().filter(|it| it.is_finite()).map(|it| it / whole)
}

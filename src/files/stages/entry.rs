//! The texts of a log into figures, and back; the same for RON and for a table.

use super::super::document::values::outside;
use super::super::fault::nearest_or_all;
use crate::files::air::air;
use crate::units::{Quantity, parse, share};
use crate::workshop::season::Air;
use crate::workshop::stages::{Entry, Moment, Stage, Target};

/// Texts of one entry, by field.
#[derive(Clone, Copy, Debug, Default)]
pub struct Texts<'t> {
    pub stage: Option<&'t str>,
    pub at: Option<&'t str>,
    pub mass: Option<&'t str>,
    pub balance: Option<&'t str>,
    pub ten_swings: Option<&'t str>,
    pub meter: Option<&'t str>,
    pub air: Option<&'t str>,
}

/// A field that could not be read: which, why, and the mend.
pub type Unread = (&'static str, String, String);

/// Reads an entry; all that is wrong with it.
pub fn entry(texts: &Texts<'_>) -> Result<Entry, Vec<Unread>> {
    let mut unread = Vec::new();
    let mut keep = |it: Unread| unread.push(it);
    let stage = needed("stage", texts.stage, "\"cleft\"", stage, &mut keep);
    let at = needed("at", texts.at, "\"2026-11-26 14:00\"", moment, &mut keep);
    let mass_kg = needed("mass", texts.mass, "\"1160 g\"", above_zero(Quantity::Mass), &mut keep);
    let balance_m = read("balance", texts.balance, above_zero(Quantity::Length), &mut keep);
    let ten_swings_s = read("ten_swings", texts.ten_swings, above_zero(Quantity::Time), &mut keep);
    let meter = read("meter", texts.meter, percent, &mut keep);
    let air = read("air", texts.air, air_of, &mut keep);
    match (stage, at, mass_kg) {
        (Some(stage), Some(at), Some(mass_kg)) if unread.is_empty() => {
            Ok(Entry { stage, at, mass_kg, balance_m, ten_swings_s, meter, air })
        }
        _ => Err(unread),
    }
}

/// What no bat shall come to outside: weight, kg, balance point, m, ten swings, s. Assumptions, wide on purpose.
const MASS_KG: [f64; 2] = [0.2, 3.0];
/// See [`MASS_KG`].
const BALANCE_M: [f64; 2] = [0.05, 1.2];
/// See [`MASS_KG`].
const SWINGS_S: [f64; 2] = [5.0, 40.0];

/// Reads what a bat shall come to: mass, balance, ten swings.
pub fn target(
    [mass, balance, ten_swings]: [Option<&str>; 3],
    names: [&'static str; 3],
) -> Result<Target, Vec<Unread>> {
    let mut unread = Vec::new();
    let mut keep = |it: Unread| unread.push(it);
    let target = Target {
        mass_kg: read(names[0], mass, within(Quantity::Mass, MASS_KG, "kg"), &mut keep),
        balance_m: read(names[1], balance, within(Quantity::Length, BALANCE_M, "m"), &mut keep),
        ten_swings_s: read(names[2], ten_swings, within(Quantity::Time, SWINGS_S, "s"), &mut keep),
    };
    if unread.is_empty() { Ok(target) } else { Err(unread) }
}

/// A value, or why not and the mend.
pub type ReadText<T> = Result<T, (String, String)>;

/// A longer text is no value.
const LONGEST_BYTES: usize = 200;

fn read<T>(
    field: &'static str,
    text: Option<&str>,
    of: impl Fn(&str) -> ReadText<T>,
    keep: &mut impl FnMut(Unread),
) -> Option<T> {
    let text = text?;
    if text.len() > LONGEST_BYTES {
        let message = format!("it is {} characters long", text.chars().count());
        keep((field, message, "write one value".to_owned()));
        return None;
    }
    match of(text) {
        Ok(value) => Some(value),
        Err((message, help)) => {
            keep((field, message, help));
            None
        }
    }
}

fn needed<T>(
    field: &'static str,
    text: Option<&str>,
    example: &str,
    of: impl Fn(&str) -> ReadText<T>,
    keep: &mut impl FnMut(Unread),
) -> Option<T> {
    if text.is_none() {
        keep((field, "it is missing".to_owned(), format!("add {field}, like {example}")));
    }
    read(field, text, of, keep)
}

fn stage(text: &str) -> ReadText<Stage> {
    let lower = text.trim().to_lowercase();
    let known = Stage::ALL.into_iter().find(|it| it.name() == lower);
    known.ok_or_else(|| {
        let names = Stage::ALL.map(Stage::name);
        (format!("there is no stage {text:?}"), nearest_or_all(&lower, &names))
    })
}

/// Reads "2026-11-26 14:00".
pub fn moment(text: &str) -> ReadText<Moment> {
    let unread = || {
        let help = "write it as year-month-day hour:minute, like \"2026-11-26 14:00\"";
        (format!("{text:?} is not a day and a time there are"), help.to_owned())
    };
    let (day, time) = text.trim().split_once([' ', 'T']).ok_or_else(unread)?;
    let whole = |it: &str| -> Option<i64> {
        (!it.is_empty() && it.len() <= 4 && it.bytes().all(|b| b.is_ascii_digit()))
            .then(|| it.parse().ok())?
    };
    let days: Vec<i64> = day.split('-').filter_map(whole).collect();
    let times: Vec<i64> = time.trim().split(':').filter_map(whole).collect();
    let counts = (day.split('-').count(), time.trim().split(':').count());
    match (days.as_slice(), times.as_slice(), counts) {
        (&[year, month, date], &[hour, minute], (3, 2)) => {
            Moment::new(year, month, date, hour, minute).ok_or_else(unread)
        }
        _ => Err(unread()),
    }
}

fn above_zero(quantity: Quantity) -> impl Fn(&str) -> ReadText<f64> {
    move |text| match parse(quantity, text) {
        Ok(value) if value > 0.0 => Ok(value),
        Ok(_) => {
            let help =
                format!("write {} above zero, like {}", quantity.words(), quantity.accepted());
            Err((format!("{text:?} is not above zero"), help))
        }
        Err(fault) => Err((fault.to_string(), fault.mend(quantity))),
    }
}

fn within(quantity: Quantity, limits: [f64; 2], unit: &str) -> impl Fn(&str) -> ReadText<f64> {
    move |text| {
        let value = above_zero(quantity)(text)?;
        match outside(value, limits, unit) {
            None => Ok(value),
            Some(message) => Err((message, "check the number and its unit".to_owned())),
        }
    }
}

fn percent(text: &str) -> ReadText<f64> {
    share(text).ok_or_else(|| {
        (format!("{text:?} is not a share of water"), "write it like \"11 %\"".to_owned())
    })
}

fn air_of(text: &str) -> ReadText<Air> {
    air(text).map_err(|it| (it.to_string(), it.mend().to_owned()))
}

/// In the small unit where that reads back to the same figure, else in the SI unit, which always does.
fn shortest(quantity: Quantity, si: f64, small: &str, unit: &str) -> String {
    let written = format!("{} {small}", (si * 1e9).round() / 1e6);
    if parse(quantity, &written) == Ok(si) { written } else { format!("{si} {unit}") }
}

/// A weight that reads back to the same figure.
pub fn mass_text(mass_kg: f64) -> String {
    shortest(Quantity::Mass, mass_kg, "g", "kg")
}

/// A length that reads back to the same figure.
pub fn length_text(length_m: f64) -> String {
    shortest(Quantity::Length, length_m, "mm", "m")
}

/// A time that reads back to the same figure.
pub fn time_text(time_s: f64) -> String {
    format!("{time_s} s")
}

/// A share in per cent, to the billionth: what was written reads back to the same figure.
pub fn percent_text(share: f64) -> String {
    format!("{} %", (share * 1e11).round() / 1e9)
}

/// An air that reads back to the same figures.
pub fn air_text(air: Air) -> String {
    format!("{} C, {}", air.celsius(), percent_text(air.relative_humidity()))
}

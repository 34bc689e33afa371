//! One value of a log: its text into a figure or the mend, and back to a text that reads to the same.

use super::super::document::values::{LONGEST_BYTES, ReadText};
use super::super::fault::nearest_name;
use crate::units::{FromEnd, Quantity, parse, share};
use crate::workshop::plane::{Finish, Place};
use crate::workshop::season::Air;
use crate::workshop::stages::{Moment, Stage};

/// Reads the name of a stage.
pub fn stage(text: &str) -> ReadText<Stage> {
    let lower = text.trim().to_lowercase();
    let known = Stage::ALL.into_iter().find(|it| it.name() == lower);
    known.ok_or_else(|| {
        let names = Stage::ALL.map(Stage::name);
        (format!("there is no stage {text:?}"), nearest_name(&lower, &names))
    })
}

/// Reads where a plane was at work.
pub fn planed(text: &str) -> ReadText<Place> {
    Place::named(text).ok_or_else(|| {
        let names = Place::ALL.map(Place::words);
        (format!("there is no place {text:?} to plane"), nearest_name(text, &names))
    })
}

/// Reads a balance point of a bat so long, m, from either end.
pub fn balance(length_m: Option<f64>) -> impl Fn(&str) -> ReadText<f64> {
    move |text| {
        let help = "write it like \"502 mm\" from the top, or \"328 mm from toe\"";
        let it = FromEnd::read(text).map_err(|it| (it.to_string(), help.to_owned()))?;
        let at_m = match (it, length_m) {
            (FromEnd::Top(at_m), _) => at_m,
            (toe, Some(length_m)) => toe.from_top_m(length_m),
            (FromEnd::Toe(_), None) => {
                let help = "measure from the top, or name the size first";
                let message = format!("{text:?}: how long the bat is, is not known");
                return Err((message, help.to_owned()));
            }
        };
        if it.written_m() > 0.0 && at_m > 0.0 {
            Ok(at_m)
        } else {
            Err((format!("{text:?} is no place on the bat"), help.to_owned()))
        }
    }
}

/// Reads "2 mm left" or "1 mm right": how far from its middle the blade balances, to the left above nought.
pub fn side(text: &str) -> ReadText<f64> {
    let help = "write it like \"2 mm left\", seen from the face with the toe down";
    let unread = || (format!("{text:?} is no side of the blade"), help.to_owned());
    let lower = text.trim().to_lowercase();
    let signs = [("to the left", 1.0), ("to the right", -1.0), ("left", 1.0), ("right", -1.0)];
    for (words, sign) in signs {
        if let Some(length) = lower.strip_suffix(words) {
            let at_m = parse(Quantity::Length, length).map_err(|_| unread())?;
            return Some(sign * at_m).filter(|_| (0.0..0.03).contains(&at_m)).ok_or_else(unread);
        }
    }
    Err(unread())
}

pub(super) fn side_text(left_m: f64) -> String {
    format!("{} {}", length_text(left_m.abs()), if left_m < 0.0 { "right" } else { "left" })
}

pub(super) fn whole([low, high]: [u32; 2]) -> impl Fn(&str) -> ReadText<u32> {
    move |text| {
        text.trim().parse().ok().filter(|it| (low..=high).contains(it)).ok_or_else(|| {
            let message = format!("{text:?} is not a whole number from {low} to {high}");
            (message, "count again".to_owned())
        })
    }
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
    let days: Option<Vec<i64>> = day.split('-').map(whole).collect();
    let times: Option<Vec<i64>> = time.trim().split(':').map(whole).collect();
    match (days.as_deref(), times.as_deref()) {
        (Some(&[year, month, date]), Some(&[hour, minute])) => {
            Moment::new(year, month, date, hour, minute).ok_or_else(unread)
        }
        _ => Err(unread()),
    }
}

/// Reads "grip, twine, toe guard, oil, labels", "all" or "nothing".
pub fn finish(text: &str) -> ReadText<Finish> {
    let mut out = Finish::BARE;
    for word in text.split(',').map(str::trim).filter(|it| !it.is_empty()) {
        match word.to_lowercase().as_str() {
            "grip" | "one grip" => (out.grips, out.bound) = (1, true),
            "two grips" | "2 grips" => (out.grips, out.bound) = (2, true),
            "three grips" | "3 grips" => (out.grips, out.bound) = (3, true),
            "twine" => out.bound = true,
            "toe guard" | "guard" => out.toe_guard = true,
            "oil" => out.oiled = true,
            "labels" | "face sheet" => out.labels = true,
            "all" => out = Finish::ALL,
            "nothing" | "bare" => out = Finish::BARE,
            _ => {
                let help =
                    "name some of: grip, two grips, twine, toe guard, oil, labels, all, nothing";
                return Err((format!("{word:?} is not known here"), help.to_owned()));
            }
        }
    }
    Ok(out)
}

/// The same in words that read back to the same.
pub fn on_text(it: &Finish) -> String {
    let grips = match it.grips {
        0 => None,
        1 => Some("grip"),
        2 => Some("two grips"),
        _ => Some("three grips"),
    };
    let parts = [
        grips,
        (it.bound && it.grips == 0).then_some("twine"),
        it.toe_guard.then_some("toe guard"),
        it.oiled.then_some("oil"),
        it.labels.then_some("labels"),
    ];
    let parts: Vec<&str> = parts.into_iter().flatten().collect();
    if parts.is_empty() { "nothing".to_owned() } else { parts.join(", ") }
}

/// Reads "11 %": the water that a meter shows, kg for each kg of dry wood.
pub fn meter(text: &str) -> ReadText<f64> {
    share(text).ok_or_else(|| {
        (format!("{text:?} is not a share of water"), "write it like \"11 %\"".to_owned())
    })
}

/// Reads a note: one line.
pub fn note(text: &str) -> ReadText<String> {
    if text.chars().any(char::is_control) {
        return Err(("it is more than one line".to_owned(), "write one line of words".to_owned()));
    }
    if text.len() > LONGEST_BYTES {
        let message = format!("it is {} characters long", text.chars().count());
        return Err((message, format!("leave at most {LONGEST_BYTES}")));
    }
    Ok(text.trim().to_owned())
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

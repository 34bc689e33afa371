//! The texts of a log into figures, and back; the same for RON, for a table and for a bat's own file.

use super::super::document::values::outside;
use super::super::document::{Text, part};
use super::super::fault::nearest_or_all;
use super::finish::{finish, on_text};
use crate::files::air::air;
use crate::measurement::bench::PendulumReading;
use crate::units::{FromEnd, Quantity, parse, share};
use crate::workshop::plane::Place;
use crate::workshop::season::Air;
use crate::workshop::stages::{Entry, Moment, Stage, Target};

part! {
    /// One reading, and what was done before it.
    EntryV1 = "Entry" {
        /// The stage it has come to; left out in a bat's own file where it is that of the reading before.
        stage,
        /// Where the plane took wood off since the reading before.
        planed,
        /// How much the plan asked to take off there.
        asked,
        /// What is on the bat, of grip, twine, toe guard, oil and labels; left out where its stages say so.
        on,
        /// Day and time.
        at,
        /// Scale weight.
        mass,
        /// Balance point, from the top unless it says "from toe".
        balance,
        /// Time of ten swings.
        ten_swings,
        /// Full swings that were timed, out and back.
        swings,
        /// Time of all of them.
        time,
        /// Diameter of the handle across at the bottom hand, over what is on it.
        handle,
        /// How far from its middle the blade balances along its length: "2 mm left", seen from the face, toe down.
        side,
        /// Water in the wood by a meter.
        meter,
        /// Grains across the face.
        grains,
        /// Air of the workshop.
        air,
        /// What else there is to say.
        note,
    }
}

/// A field that could not be read: which, why, and the mend.
pub type Unread = (&'static str, String, String);

/// Reads an entry of a bat so long, m; all that is wrong with it. A stage that is left out is that of the entry
/// before.
pub fn entry(
    texts: &EntryV1,
    length_m: Option<f64>,
    before: Option<Stage>,
) -> Result<Entry, Vec<Unread>> {
    fn of(it: &Option<Text>) -> Option<&str> {
        it.as_ref().map(|it| it.0.trim())
    }
    let mut unread = Vec::new();
    let mut keep = |it: Unread| unread.push(it);
    let written = match before {
        None => needed("stage", of(&texts.stage), "\"cleft\"", stage, &mut keep),
        Some(_) => read("stage", of(&texts.stage), stage, &mut keep),
    };
    let planed = read("planed", of(&texts.planed), planed, &mut keep);
    let at = needed("at", of(&texts.at), "\"2026-11-26 14:00\"", moment, &mut keep);
    let mass = above_zero(Quantity::Mass);
    let mass_kg = needed("mass", of(&texts.mass), "\"1160 g\"", mass, &mut keep);
    let balance_m = read("balance", of(&texts.balance), balance(length_m), &mut keep);
    let seconds = above_zero(Quantity::Time);
    let ten_swings_s = read("ten_swings", of(&texts.ten_swings), &seconds, &mut keep);
    let swings = read("swings", of(&texts.swings), whole([1, 1000]), &mut keep);
    let time_s = read("time", of(&texts.time), &seconds, &mut keep);
    let pendulum = match (ten_swings_s, swings, time_s) {
        (None, _, None) => None,
        (Some(time_s), None, None) => Some(PendulumReading::ten(time_s)),
        (None, Some(swings), Some(time_s)) => {
            Some(PendulumReading { swings, ..PendulumReading::ten(time_s) })
        }
        (Some(_), ..) => {
            let help = "leave out ten_swings, or swings and time";
            keep(("ten_swings", "the time of the swings stands twice".into(), help.into()));
            None
        }
        (None, None, Some(_)) => {
            let help = "add swings, like \"30\": how many were timed";
            keep(("time", "of how many swings?".into(), help.into()));
            None
        }
    };
    let entry = Entry {
        stage: written.or(before).unwrap_or(Stage::Cleft),
        again: written.is_none() || (planed.is_some() && written == before),
        planed,
        asked_kg: read("asked", of(&texts.asked), above_zero(Quantity::Mass), &mut keep),
        on: read("on", of(&texts.on), finish, &mut keep),
        at: at.unwrap_or(Moment::from_minutes(0)),
        mass_kg: mass_kg.unwrap_or_default(),
        balance_m,
        pendulum,
        handle_m: read("handle", of(&texts.handle), above_zero(Quantity::Length), &mut keep),
        left_m: read("side", of(&texts.side), side, &mut keep),
        meter: read("meter", of(&texts.meter), meter, &mut keep),
        grains: read("grains", of(&texts.grains), whole([1, 60]), &mut keep),
        air: read("air", of(&texts.air), air_of, &mut keep),
        note: read("note", of(&texts.note), note, &mut keep),
    };
    if unread.is_empty() { Ok(entry) } else { Err(unread) }
}

/// An entry as its texts, behind one of that stage.
pub fn texts(it: &Entry, before: Option<Stage>) -> EntryV1 {
    let some = |it: String| Some(Text(it));
    let ten = it.pendulum.filter(|it| it.swings == 10);
    let other = it.pendulum.filter(|it| it.swings != 10);
    let again = it.again && before == Some(it.stage);
    EntryV1 {
        stage: some(it.stage.name().to_owned()).filter(|_| !again),
        planed: it.planed.and_then(|it| some(it.words().to_owned())),
        asked: it.asked_kg.and_then(|it| some(mass_text(it))),
        on: it.on.and_then(|it| some(on_text(&it))),
        at: some(it.at.to_string()),
        mass: some(mass_text(it.mass_kg)),
        balance: it.balance_m.and_then(|it| some(length_text(it))),
        ten_swings: ten.and_then(|it| some(time_text(it.time_s))),
        swings: other.and_then(|it| some(it.swings.to_string())),
        time: other.and_then(|it| some(time_text(it.time_s))),
        handle: it.handle_m.and_then(|it| some(length_text(it))),
        side: it.left_m.and_then(|it| some(side_text(it))),
        meter: it.meter.and_then(|it| some(percent_text(it))),
        grains: it.grains.and_then(|it| some(it.to_string())),
        air: it.air.and_then(|it| some(air_text(it))),
        note: it.note.clone().and_then(some),
    }
}

/// All entries of a bat as their texts.
pub fn all_texts(entries: &[Entry]) -> impl Iterator<Item = EntryV1> + '_ {
    let stage = |n: usize| n.checked_sub(1).and_then(|n| entries.get(n)).map(|it| it.stage);
    entries.iter().enumerate().map(move |(n, it)| texts(it, stage(n)))
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

/// Reads the name of a stage.
pub fn stage(text: &str) -> ReadText<Stage> {
    let lower = text.trim().to_lowercase();
    let known = Stage::ALL.into_iter().find(|it| it.name() == lower);
    known.ok_or_else(|| {
        let names = Stage::ALL.map(Stage::name);
        (format!("there is no stage {text:?}"), nearest_or_all(&lower, &names))
    })
}

/// Reads where a plane was at work.
pub fn planed(text: &str) -> ReadText<Place> {
    Place::named(text).ok_or_else(|| {
        let names = Place::ALL.map(Place::words);
        (format!("there is no place {text:?} to plane"), nearest_or_all(text, &names))
    })
}

/// Reads a balance point of a bat so long, m, from either end.
pub fn balance(length_m: Option<f64>) -> impl Fn(&str) -> ReadText<f64> {
    move |text| {
        let help = "write it like \"502 mm\" from the top, or \"328 mm from toe\"";
        let it = FromEnd::read(text).map_err(|it| (it.to_string(), help.to_owned()))?;
        let unknown = || {
            let help = "measure from the top, or name the size first";
            (format!("{text:?}: how long the bat is, is not known"), help.to_owned())
        };
        let at_m = match (it, length_m) {
            (FromEnd::Top(at_m), _) => at_m,
            (toe, Some(length_m)) => toe.from_top_m(length_m),
            (FromEnd::Toe(_), None) => return Err(unknown()),
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

fn side_text(left_m: f64) -> String {
    format!("{} {}", length_text(left_m.abs()), if left_m < 0.0 { "right" } else { "left" })
}

fn whole([low, high]: [u32; 2]) -> impl Fn(&str) -> ReadText<u32> {
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

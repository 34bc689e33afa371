//! An entry of a log from its texts into figures, and back; the same for RON, for a table and for a bat's own file.

use super::super::air::air;
use super::super::document::values::{MISSING, ReadText, above_zero, one_value, within};
use super::super::document::{Text, part};
use super::value::{
    air_text, balance, finish, length_text, mass_text, meter, moment, note, on_text, percent_text,
    planed, side, side_text, stage, time_text, whole,
};
use crate::measurement::bench::PendulumReading;
use crate::units::Quantity;
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

/// Where a fault goes: its field, why, and the mend.
pub type Keep<'k> = dyn FnMut(&str, &str, &str) + 'k;

/// Reads an entry of a bat so long, m; none if anything is wrong with it. A stage that is left out is that of the entry
/// before.
pub fn entry(
    texts: &EntryV1,
    length_m: Option<f64>,
    before: Option<Stage>,
    keep: &mut Keep,
) -> Option<Entry> {
    fn of(it: &Option<Text>) -> Option<&str> {
        it.as_ref().map(|it| it.0.trim())
    }
    let mut is_sound = true;
    let mut keep = |field: &str, message: &str, help: &str| {
        is_sound = false;
        keep(field, message, help);
    };
    let written = match before {
        None => needed("stage", of(&texts.stage), stage, "\"cleft\"", &mut keep),
        Some(_) => read("stage", of(&texts.stage), stage, &mut keep),
    };
    let planed = read("planed", of(&texts.planed), planed, &mut keep);
    let at = needed("at", of(&texts.at), moment, "\"2026-11-26 14:00\"", &mut keep);
    let mass = above_zero(Quantity::Mass);
    let mass_kg = needed("mass", of(&texts.mass), mass, "\"1160 g\"", &mut keep);
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
            keep("ten_swings", "the time of the swings stands twice", help);
            None
        }
        (None, None, Some(_)) => {
            let help = "add swings, like \"30\": how many were timed";
            keep("time", "of how many swings?", help);
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
        air: read("air", of(&texts.air), air, &mut keep),
        note: read("note", of(&texts.note), note, &mut keep),
    };
    is_sound.then_some(entry)
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

/// Reads what a bat shall come to: mass, balance, ten swings; nothing of it if anything is wrong.
pub fn target(
    [mass, balance, ten_swings]: [Option<&str>; 3],
    names: [&str; 3],
    keep: &mut Keep,
) -> Target {
    let mut is_sound = true;
    let mut keep = |field: &str, message: &str, help: &str| {
        is_sound = false;
        keep(field, message, help);
    };
    let target = Target {
        mass_kg: read(names[0], mass, within(Quantity::Mass, MASS_KG, "kg"), &mut keep),
        balance_m: read(names[1], balance, within(Quantity::Length, BALANCE_M, "m"), &mut keep),
        ten_swings_s: read(names[2], ten_swings, within(Quantity::Time, SWINGS_S, "s"), &mut keep),
    };
    if is_sound { target } else { Target::default() }
}

fn read<T>(
    field: &str,
    text: Option<&str>,
    of: impl Fn(&str) -> ReadText<T>,
    keep: &mut Keep,
) -> Option<T> {
    let read = one_value(text?).and_then(of);
    read.map_err(|(message, help)| keep(field, &message, &help)).ok()
}

fn needed<T>(
    field: &str,
    text: Option<&str>,
    of: impl Fn(&str) -> ReadText<T>,
    example: &str,
    keep: &mut Keep,
) -> Option<T> {
    if text.is_none() {
        keep(field, MISSING, &format!("add {field}, like {example}"));
    }
    read(field, text, of, keep)
}

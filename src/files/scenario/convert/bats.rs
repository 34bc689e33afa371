//! The bats of a scenario.

use super::super::super::document::values::{Values, above_zero, name, whole_number};
use super::super::super::fault::nearest_or_all;
use super::super::{BatV1, PendulumV1, Text};
use super::written;
use crate::measurement::bench::{
    BatReading, PICKUP_AXIS_FROM_TOP_M, PendulumReading, USUAL_AMPLITUDE_RAD, bat_letter,
};
use crate::units::Quantity::{Angle, Length, Mass, Time};

/// Full swings of a pendulum test when none are stated: common practice, no source.
const USUAL_SWINGS: u32 = 10;

/// The bat's label, or its letter.
pub fn label(n: usize, bat: &BatV1) -> String {
    written(&bat.label).unwrap_or_else(|| format!("bat {}", bat_letter(n)))
}

/// The place of the bat of that label.
pub fn labelled(values: &mut Values, path: &str, label: &str, labels: &[String]) -> Option<usize> {
    let found = labels.iter().position(|it| it.to_lowercase() == label.to_lowercase());
    if found.is_none() {
        let help = nearest_or_all(label, "the bats", labels);
        values.fault(path, &format!("no bat is called {label:?}"), &help);
    }
    found
}

pub fn refuse_twins(values: &mut Values, labels: &[String]) {
    for (n, label) in labels.iter().enumerate() {
        let twin = |it: &&String| it.to_lowercase() == label.to_lowercase();
        if let Some(first) = labels.iter().take(n).position(|it| twin(&it)) {
            let message = format!("{label:?} is already the label of bats.{first}");
            values.fault(&format!("bats.{n}.label"), &message, "give each bat a label of its own");
        }
    }
}

pub fn bat(values: &mut Values, n: usize, v1: &BatV1) -> Option<BatReading> {
    let at = |field: &str| format!("bats.{n}.{field}");
    let mass_kg = values.needed(&at("mass"), &v1.mass, above_zero(Mass), "\"2 lb 9 oz\"");
    values.read(&at("label"), &v1.label, name);
    let mut length = |field: &str, text: &Option<Text>| values.quantity(&at(field), text, Length);
    Some(BatReading {
        label: label(n, v1),
        length_m: length("length", &v1.length),
        balance_m: length("balance", &v1.balance),
        width_m: length("width", &v1.width),
        edge_m: length("edge", &v1.edge),
        depth_m: length("depth", &v1.depth),
        handle_diameter_m: length("handle_diameter", &v1.handle_diameter),
        size: values.read(&at("size"), &v1.size, name),
        pendulum: pendulum(values, n, &v1.pendulum),
        mass_kg: mass_kg?,
    })
}

fn pendulum(values: &mut Values, n: usize, v1: &PendulumV1) -> Option<PendulumReading> {
    if *v1 == PendulumV1::default() {
        return None;
    }
    let at = |field: &str| format!("bats.{n}.pendulum.{field}");
    let swings = whole_number([1, 1000], "a whole number of swings");
    let swings = values.read(&at("swings"), &v1.swings, swings);
    let pivot = values.quantity(&at("pivot"), &v1.pivot, Length);
    let amplitude = values.quantity(&at("amplitude"), &v1.amplitude, Angle);
    let time_s = values.needed(&at("time"), &v1.time, above_zero(Time), "\"15.3 s\"")?;
    Some(PendulumReading {
        swings: swings.unwrap_or(USUAL_SWINGS),
        time_s,
        pivot_from_top_m: pivot.unwrap_or(PICKUP_AXIS_FROM_TOP_M),
        amplitude_rad: amplitude.unwrap_or(USUAL_AMPLITUDE_RAD),
    })
}

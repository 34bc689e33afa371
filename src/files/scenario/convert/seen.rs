//! The bat now used, and what a coach saw.

use super::super::super::document::values::{Values, choice, name, number, whole_number};
use super::super::{SeenV1, Text};
use super::bats::labelled;
use super::strokes::known_stroke;
use crate::measurement::plan::{HowOften, Seen};
use crate::units::Quantity::Speed;

/// Index of the bat now used; the first if none is named.
pub fn uses(values: &mut Values, text: &Option<Text>, labels: &[String]) -> usize {
    bat(values, "uses", text, labels).unwrap_or(0)
}

/// Short balls that are counted where no number is given.
const USUAL_BALLS: u32 = 20;
/// Most balls that are counted.
const MOST_BALLS: u32 = 500;

/// Everything seen.
pub fn seen(
    values: &mut Values,
    all: &[SeenV1],
    labels: &[String],
    strokes: &[&str],
    uses: usize,
) -> Vec<Seen> {
    all.iter().enumerate().filter_map(|(n, it)| one(values, n, it, labels, strokes, uses)).collect()
}

fn one(
    values: &mut Values,
    n: usize,
    v1: &SeenV1,
    labels: &[String],
    strokes: &[&str],
    uses: usize,
) -> Option<Seen> {
    let at = |field: &str| format!("seen.{n}.{field}");
    let runs = number(|it| (0.0..=500.0).contains(&it), "a number of runs from 0 to 500");
    let balls = whole_number([1, MOST_BALLS], "a whole number of balls up to 500");
    let bat = match &v1.bat {
        None => Some(uses),
        written => bat(values, &at("bat"), written, labels),
    };
    let name = values.needed(&at("stroke"), &v1.stroke, name, "\"pull\"");
    let stroke = name.and_then(|it| known_stroke(values, &at("stroke"), &it, strokes));
    let runs = match &v1.runs {
        None => Some(0.0),
        written => values.read(&at("runs"), written, runs),
    };
    let bowling_m_s = values.quantity(&at("bowling"), &v1.bowling, Speed);
    let balls = match &v1.balls {
        None => Some(USUAL_BALLS),
        written => values.read(&at("balls"), written, balls),
    };
    let choices: [(&[&str], HowOften); 4] = [
        (&["nearly all", "nearly_all"], HowOften::NearlyAll),
        (&["most"], HowOften::Most),
        (&["half", "about half"], HowOften::Half),
        (&["few"], HowOften::Few),
    ];
    let how_often = values.needed(&at("in_time"), &v1.in_time, choice(&choices), "\"most\"");
    Some(Seen {
        bat: bat?,
        stroke: stroke?,
        runs: runs?,
        bowling_m_s,
        balls: balls?,
        how_often: how_often?,
    })
}

fn bat(values: &mut Values, path: &str, text: &Option<Text>, labels: &[String]) -> Option<usize> {
    let label = values.short(path, text)?.trim().to_lowercase();
    labelled(values, path, &label, labels)
}

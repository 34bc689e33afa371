//! The innings of a scenario.

use super::super::super::document::values::{self, Values, number};
use super::super::{InningsV1, Text};
use super::strokes::known_stroke;
use crate::measurement::plan::InningsPlan;
use crate::units::Quantity::Time;
use crate::units::share;

/// The innings with strokes `chosen` of those that come with the program, `built_in`, and others.
pub fn innings(
    values: &mut Values,
    v1: &InningsV1,
    chosen: &[&str],
    built_in: &[&str],
) -> InningsPlan {
    let usual = InningsPlan::default();
    let runs = number(|it| (1.0..=1000.0).contains(&it), "a number of runs from 1 to 1000");
    let balls = number(|it| it > 0.0 && it <= 100.0, "a number of balls up to 100");
    InningsPlan {
        runs: values.read("innings.runs", &v1.runs, runs).unwrap_or(usual.runs),
        mix: match v1.mix {
            Some(_) => mix(values, &v1.mix, chosen, built_in).unwrap_or(usual.mix),
            None => usual_of(values, usual.mix, chosen),
        },
        balls_per_run: values
            .read("innings.balls_per_run", &v1.balls_per_run, balls)
            .unwrap_or(usual.balls_per_run),
        faced_share: values
            .read("innings.faced_share", &v1.faced_share, values::share)
            .unwrap_or(usual.faced_share),
        between_balls_s: values
            .quantity("innings.between_balls", &v1.between_balls, Time)
            .unwrap_or(usual.between_balls_s),
        between_overs_s: values
            .quantity("innings.between_overs", &v1.between_overs, Time)
            .unwrap_or(usual.between_overs_s),
        stance_s: values.quantity("innings.stance", &v1.stance, Time).unwrap_or(usual.stance_s),
    }
}

const PATH: &str = "innings.mix";

/// The usual mix, of the strokes that are chosen. A stroke of the user's own has no usual share.
fn usual_of(values: &mut Values, usual: Vec<(String, f64)>, chosen: &[&str]) -> Vec<(String, f64)> {
    let has = |name: &str| usual.iter().any(|(it, _)| it == name);
    if let Some(own) = chosen.iter().find(|it| !has(it)) {
        let message = format!("it is missing, and no usual mix has a share of {own:?}");
        values.fault(PATH, &message, &format!("add mix: \"drive 60 %, {own} 40 %\" to innings"));
        return usual;
    }
    if usual.iter().all(|(it, _)| chosen.contains(&it.as_str())) {
        return usual;
    }
    let kept: Vec<(String, f64)> =
        usual.into_iter().filter(|(it, _)| chosen.contains(&it.as_str())).collect();
    let sum: f64 = kept.iter().map(|(_, it)| it).sum();
    kept.into_iter().map(|(name, it)| (name, it / sum)).collect()
}

/// "drive 50 %, pull 35 %, hook 15 %": shares in any unit, brought to a sum of one.
fn mix(
    values: &mut Values,
    text: &Option<Text>,
    chosen: &[&str],
    built_in: &[&str],
) -> Option<Vec<(String, f64)>> {
    const LIKE: &str = "write it like \"drive 50 %, pull 35 %, hook 15 %\"";
    let written = values.short(PATH, text)?;
    let mut mix: Vec<(String, f64)> = Vec::new();
    for part in written.split(',').map(str::trim).filter(|it| !it.is_empty()) {
        let (name, number) = part.split_at(number_at(part));
        let name = name.trim().trim_end_matches([':', '=']).trim();
        let Some(it) = share(number).filter(|it| *it > 0.0) else {
            values.fault(PATH, &format!("{part:?} is not a stroke and its share"), LIKE);
            return None;
        };
        let lower = name.to_lowercase();
        let is = |it: &&str| it.to_lowercase() == lower;
        if !chosen.iter().any(is) && built_in.iter().any(is) {
            let message = format!("{name:?} is not among the strokes that are swung");
            values.fault(PATH, &message, "add it to strokes, or leave it out of the mix");
            return None;
        }
        let name = known_stroke(values, PATH, name, chosen)?;
        if mix.iter().any(|(before, _)| *before == name) {
            values.fault(PATH, &format!("{name:?} stands in it twice"), "name each stroke once");
            return None;
        }
        mix.push((name, it));
    }
    let sum: f64 = mix.iter().map(|(_, it)| it).sum();
    let percent = written.contains('%');
    if mix.is_empty() || (percent && (sum - 1.0).abs() > 0.005 + 1e-9) {
        let message = match mix.is_empty() {
            true => "no stroke stands in it".to_owned(),
            false => format!("the shares add up to {:.1} %, not 100 %", 100.0 * sum),
        };
        values.fault(PATH, &message, LIKE);
        return None;
    }
    Some(mix.into_iter().map(|(name, it)| (name, it / sum)).collect())
}

/// Where the share begins in "reverse-sweep 20 %": at a digit, or at a sign or point that follows no letter.
fn number_at(part: &str) -> usize {
    let mut before = ' ';
    for (at, c) in part.char_indices() {
        if c.is_ascii_digit() || ("-−.".contains(c) && !before.is_alphabetic()) {
            return at;
        }
        before = c;
    }
    part.len()
}

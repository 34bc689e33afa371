//! The innings of a scenario, and the strokes it asks for.

use super::super::super::document::values::Values;
use super::super::super::fault::nearest;
use super::super::{InningsV1, Text};
use crate::measurement::plan::InningsPlan;
use crate::units::Quantity::Time;
use crate::units::share;

pub fn innings(values: &mut Values, v1: &InningsV1, strokes: &[&str]) -> InningsPlan {
    let usual = InningsPlan::default();
    let runs = |it: f64| (1.0..=1000.0).contains(&it);
    let balls = |it: f64| it > 0.0 && it <= 100.0;
    InningsPlan {
        runs: values
            .number("innings.runs", &v1.runs, runs, "a number of runs from 1 to 1000")
            .unwrap_or(usual.runs),
        mix: mix(values, &v1.mix, strokes).unwrap_or(usual.mix),
        balls_per_run: values
            .number(
                "innings.balls_per_run",
                &v1.balls_per_run,
                balls,
                "a number of balls up to 100",
            )
            .unwrap_or(usual.balls_per_run),
        faced_share: values
            .share("innings.faced_share", &v1.faced_share)
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

/// "drive 50 %, pull 35 %, hook 15 %": shares in any unit, brought to a sum of one.
fn mix(values: &mut Values, text: &Option<Text>, strokes: &[&str]) -> Option<Vec<(String, f64)>> {
    const PATH: &str = "innings.mix";
    const LIKE: &str = "write it like \"drive 50 %, pull 35 %, hook 15 %\"";
    let written = values.short(PATH, text)?;
    let mut mix: Vec<(String, f64)> = Vec::new();
    for part in written.split(',').map(str::trim).filter(|it| !it.is_empty()) {
        let digits =
            part.find(|c: char| c.is_ascii_digit() || "-−.".contains(c)).unwrap_or(part.len());
        let (name, number) = part.split_at(digits);
        let name = name.trim().trim_end_matches([':', '=']).trim();
        let Some(it) = share(number).filter(|it| *it > 0.0) else {
            values.fault(PATH, &format!("{part:?} is not a stroke and its share"), LIKE);
            return None;
        };
        let name = known_stroke(values, PATH, name, strokes)?;
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

pub fn known_stroke(
    values: &mut Values,
    path: &str,
    name: &str,
    strokes: &[&str],
) -> Option<String> {
    let lower = name.to_lowercase();
    if strokes.contains(&lower.as_str()) {
        return Some(lower);
    }
    let help = match nearest(&lower, strokes.iter().copied()) {
        Some(near) => format!("did you mean {near:?}?"),
        None => format!("the strokes are {}", strokes.join(", ")),
    };
    values.fault(path, &format!("there is no stroke {name:?}"), &help);
    None
}

pub fn asked_strokes(
    values: &mut Values,
    text: &Option<Text>,
    strokes: &[&str],
) -> Option<Vec<String>> {
    let names = values.names("strokes", text)?;
    names.iter().map(|it| known_stroke(values, "strokes", it, strokes)).collect()
}

//! The compared bats by what `fit` says of them: the same possible players, the same figures.

use backlift::questions::compared::{Gain, Worths};
use backlift::units::Units;
use backlift::worth::expected::Worth;
use backlift::worth::suits::suits_words;
use backlift::worth::today::Given;
use serde_json::{Value, json};

use crate::figure::{number, percent, speed_unit};
use crate::table::table;

/// Two tables: every bat, every pair.
pub fn told(worths: &Worths, units: Units) -> String {
    let (unit, per_m_s) = speed_unit(units);
    let speed =
        |mean: f64, sd: f64| format!("{} ± {}", number(per_m_s * mean, 1), number(per_m_s * sd, 1));
    let rows: Vec<Vec<String>> = worths
        .given
        .iter()
        .map(|it| {
            let [ball, in_time] = it.worth.as_ref().map_or_else(
                || ["beyond control".to_owned(), "–".to_owned()],
                |it| [speed(it.mean_m_s(), it.sd_m_s()), percent(it.chance_in_time, 0)],
            );
            vec![it.label.clone(), suits_words(it.suits).to_owned(), ball, in_time]
        })
        .collect();
    let heads = [
        "what they are worth",
        "size suits",
        &format!("expected ball, {unit}"),
        &format!("in time at {:.0}", worths.runs),
    ];
    let bats = table(&heads, &rows);
    let rows: Vec<Vec<String>> = worths
        .gains()
        .iter()
        .map(|it| {
            let [a, b] = it.bats.map(|bat| worths.label(bat));
            let plus = if per_m_s * it.gain_m_s >= 0.05 { "+" } else { "" };
            let real = if it.is_real() { "yes" } else { "no" };
            vec![
                format!("{b} against {a}"),
                format!("{plus}{}", speed(it.gain_m_s, it.sd_m_s)),
                real.to_owned(),
            ]
        })
        .collect();
    let pairs = match rows.as_slice() {
        [] => String::new(),
        _ => table(&["", &format!("expected ball, {unit}"), "real?"], &rows),
    };
    format!("\n{bats}\n{pairs}")
}

/// By bat, as JSON has it.
pub fn bats_json(worths: &Worths) -> Vec<Value> {
    let row = |it: &Given| {
        let worth = it.worth.as_ref();
        json!({
            "label": it.label,
            "worth_m_s": worth.map(Worth::mean_m_s),
            "worth_sd_m_s": worth.map(Worth::sd_m_s),
            "chance_in_time": worth.map(|it| it.chance_in_time),
            "suits": suits_words(it.suits).replace(' ', "_"),
        })
    };
    worths.given.iter().map(row).collect()
}

/// By pair, as JSON has it.
pub fn pairs_json(worths: &Worths) -> Vec<Value> {
    let row = |it: &Gain| {
        json!({
            "first": worths.label(it.bats[0]),
            "second": worths.label(it.bats[1]),
            "gain_m_s": it.gain_m_s,
            "gain_sd_m_s": it.sd_m_s,
            "real": it.is_real(),
        })
    };
    worths.gains().iter().map(row).collect()
}

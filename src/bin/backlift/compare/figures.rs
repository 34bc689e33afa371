//! The comparison for other programs.

use backlift::comparison::bats::BatDifference;
use backlift::comparison::noticeable::Felt;
use backlift::innings::played::FIFTY;
use backlift::questions::compared::{Shown, Worths};
use serde_json::{Value, json};

/// As JSON has it.
pub fn of(shown: &Shown, worths: &Worths) -> Value {
    let keys: Vec<String> =
        shown.comparison.figures.iter().map(|it| it.key(&shown.strokes)).collect();
    let bats = shown.comparison.bats.iter().zip(&shown.bats).map(|(bat, weighed)| {
        let figures = keys.iter().enumerate().map(|(f, key)| {
            let (value, sd) = bat.value_sd(f);
            (key.clone(), json!({ "value": value, "sd": sd }))
        });
        json!({
            "label": bat.label,
            "size": weighed.size,
            "figures": figures.collect::<Value>(),
        })
    });
    let labels = |pair: [usize; 2]| pair.map(|bat| shown.label(bat).to_owned());
    let row = |it: &BatDifference| {
        json!({
            "figure": it.figure.key(&shown.strokes),
            "bats": labels(it.bats),
            "value": it.difference.value,
            "sd": it.difference.sd,
            "real": it.difference.real,
            "felt": felt(it),
            "felt_thresholds": thresholds(it),
        })
    };
    let pairs = shown
        .pairs()
        .into_iter()
        .map(|pair| json!({ "bats": labels(pair), "in_hand": shown.in_hand(pair) }));
    json!({
        "late_runs": FIFTY,
        "bats": bats.collect::<Value>(),
        "differences": shown.comparison.differences.iter().map(row).collect::<Value>(),
        "pairs": pairs.collect::<Value>(),
        "worth": super::worth::bats_json(worths),
        "worth_differences": super::worth::pairs_json(worths),
    })
}

/// Where nobody has published a threshold, nobody can be sure; but nought is not felt.
fn felt(it: &BatDifference) -> &'static str {
    match it.felt {
        Some(Felt::Yes) => "yes",
        Some(Felt::No) => "no",
        None if it.difference.value == 0.0 => "no",
        Some(Felt::Unsure) | None => "unsure",
    }
}

fn thresholds(it: &BatDifference) -> Option<[f64; 2]> {
    let shares = || it.figure.thresholds().iter().copied();
    let low = shares().reduce(f64::min)?;
    Some([low, shares().reduce(f64::max)?])
}

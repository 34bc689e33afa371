//! The comparison for other programs.

use backlift::comparison::bats::BatDifference;
use backlift::comparison::noticeable::Felt;
use backlift::innings::played::FIFTY;
use serde::Serialize;
use serde_json::{Map, Value, json};

use backlift::questions::compared::{Shown, Worths};

/// Everything, in SI units.
#[derive(Serialize)]
pub struct Compared {
    /// Score at which the `at_fifty` figures are taken.
    late_runs: f64,
    bats: Vec<BatRow>,
    differences: Vec<Row>,
    pairs: Vec<Pair>,
    /// By bat, what it is worth as `fit` has it.
    worth: Vec<Value>,
    /// By pair of controllable bats, second less first.
    worth_differences: Vec<Value>,
}

#[derive(Serialize)]
struct BatRow {
    label: String,
    size: String,
    /// By name: value and one standard deviation.
    figures: Map<String, Value>,
}

#[derive(Serialize)]
struct Row {
    figure: String,
    bats: [String; 2],
    /// Second bat less first.
    value: f64,
    sd: f64,
    real: bool,
    felt: &'static str,
    /// Least and greatest published threshold, as shares; null where nobody has published one.
    felt_thresholds: Option<[f64; 2]>,
}

#[derive(Serialize)]
struct Pair {
    bats: [String; 2],
    in_hand: String,
}

/// As JSON has it.
pub fn of(shown: &Shown, worths: &Worths) -> Compared {
    let keys: Vec<String> =
        shown.comparison.figures.iter().map(|it| it.key(&shown.strokes)).collect();
    let bats = shown.comparison.bats.iter().zip(&shown.bats).map(|(bat, weighed)| BatRow {
        label: bat.label.clone(),
        size: weighed.size.clone(),
        figures: keys
            .iter()
            .enumerate()
            .map(|(f, key)| {
                let (value, sd) = bat.value_sd(f);
                (key.clone(), json!({ "value": value, "sd": sd }))
            })
            .collect(),
    });
    let labels = |pair: [usize; 2]| pair.map(|bat| shown.label(bat).to_owned());
    let row = |it: &BatDifference| Row {
        figure: it.figure.key(&shown.strokes),
        bats: labels(it.bats),
        value: it.difference.value,
        sd: it.difference.sd,
        real: it.difference.real,
        felt: felt(it),
        felt_thresholds: thresholds(it),
    };
    Compared {
        late_runs: FIFTY,
        bats: bats.collect(),
        differences: shown.comparison.differences.iter().map(row).collect(),
        pairs: shown
            .pairs()
            .into_iter()
            .map(|pair| Pair { bats: labels(pair), in_hand: shown.in_hand(pair) })
            .collect(),
        worth: super::worth::bats_json(worths),
        worth_differences: super::worth::pairs_json(worths),
    }
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
    let shares = || it.figure.thresholds().iter().map(|it| it.share);
    let low = shares().reduce(f64::min)?;
    Some([low, shares().reduce(f64::max)?])
}

//! Grip by age, sex and stature.

use super::ages_y;
use crate::frames::STANDARD_GRAVITY_M_S2;
use crate::measurement::person::Sex;
use crate::player::grip_by_age::expected_grip_n;
use crate::player::growth::median_stature_m;
use crate::uncertain::Uncertain;
use crate::validation::{Accept, CheckFault, Checked, Curve, Reading, Row};

const DODDS: &str =
    "Dodds et al. 2014, PLoS ONE 9:e113637, Table 2 (read second-hand), 12 British studies";
const STEIBER: &str =
    "Steiber 2016, PLoS ONE 11:e0163917 (read second-hand), German adults; slope computed";
/// From the 10th to the 90th centile of a normal distribution, SD.
const P10_TO_P90_SD: f64 = 2.5631;

/// Age; 10th, 50th, 90th centile, kgf.
const MEN: [[f64; 4]; 6] = [
    [15.0, 21.0, 29.0, 38.0],
    [20.0, 30.0, 40.0, 52.0],
    [25.0, 36.0, 48.0, 61.0],
    [30.0, 38.0, 51.0, 64.0],
    [35.0, 39.0, 51.0, 64.0],
    [40.0, 38.0, 50.0, 63.0],
];
/// From 20: the row of girls of 15 is from memory.
const WOMEN: [[f64; 4]; 5] = [
    [20.0, 21.0, 28.0, 36.0],
    [25.0, 23.0, 30.0, 38.0],
    [30.0, 24.0, 31.0, 39.0],
    [35.0, 23.0, 31.0, 39.0],
    [40.0, 23.0, 31.0, 39.0],
];

/// Slope of ln grip on ln stature within an age band, from 17–19 to 40–44 years.
const SLOPES_MEN: [f64; 6] = [0.739, 0.716, 0.650, 0.616, 1.101, 1.059];
const SLOPES_WOMEN: [f64; 6] = [1.071, 1.051, 0.937, 0.920, 1.064, 1.046];

fn kgf(sex: Sex, age_y: f64, stature_m: f64) -> Uncertain {
    expected_grip_n(sex, age_y, stature_m).times(1.0 / STANDARD_GRAVITY_M_S2)
}

fn usual_kgf(sex: Sex, age_y: f64) -> Uncertain {
    kgf(sex, age_y, median_stature_m(sex, age_y))
}

pub(super) fn check() -> Result<Checked, CheckFault> {
    let mut out = Checked::default();
    for (sex, words, table, slopes) in [
        (Sex::Male, "men", &MEN[..], &SLOPES_MEN),
        (Sex::Female, "women", &WOMEN[..], &SLOPES_WOMEN),
    ] {
        out.rows.extend(by_age(sex, words, table));
        out.rows.push(by_stature(sex, words, slopes));
        out.curves.push(curve(sex, words, table));
    }
    for (what, sex, age_y, stature_m, mean, sd) in [
        ("men of 25–29, 1.75–1.79 m: grip", Sex::Male, 27.5, 1.775, 51.9, 8.3),
        ("women of 25–29, 1.60–1.64 m: grip", Sex::Female, 27.5, 1.625, 32.3, 5.6),
    ] {
        let ours = kgf(sex, age_y, stature_m).value;
        let row =
            Row::compared(what, STEIBER, "kgf", (mean, Some(sd)), ours, Accept::Deviations(1.0));
        out.rows
            .push(row.noted("another sample, device and protocol, 2 to 4 kgf higher throughout"));
    }
    for (words, sex, age_y) in [
        ("boys of 8", Sex::Male, 8.0),
        ("girls of 8", Sex::Female, 8.0),
        ("girls of 15", Sex::Female, 15.0),
    ] {
        out.rows.push(Row::no_data(
            format!("{words}: grip"),
            "kgf",
            Some(usual_kgf(sex, age_y).value),
            "the rows of 5 and 10 years and of girls of 15 are from memory and were not read; measure it",
        ));
    }
    Ok(out)
}

fn by_age(sex: Sex, words: &str, table: &[[f64; 4]]) -> [Row; 2] {
    let largest = |of: &dyn Fn(&[f64; 4]) -> f64| table.iter().map(of).fold(0.0, f64::max);
    let median = largest(&|r| (usual_kgf(sex, r[0]).value - r[2]).abs());
    let spread =
        largest(&|r| (usual_kgf(sex, r[0]).sd * P10_TO_P90_SD / (r[3] - r[1]) - 1.0).abs());
    let from = table.first().map_or(0.0, |r| r[0]);
    let row = |what: &str, unit, ours, accept| {
        let what = format!("{words} of {from} to 40: {what}, largest error");
        Row::compared(what, DODDS, unit, 0.0, ours, accept)
    };
    [
        row("median grip", "kgf", median, Accept::Within(0.1)),
        row("spread of grip", "share", spread, Accept::Within(0.01)),
    ]
}

fn by_stature(sex: Sex, words: &str, slopes: &[f64]) -> Row {
    let count = slopes.len() as f64;
    let mean = slopes.iter().sum::<f64>() / count;
    let sd =
        libm::sqrt(slopes.iter().map(|it| (it - mean) * (it - mean)).sum::<f64>() / (count - 1.0));
    let ours =
        libm::log(kgf(sex, 30.0, 1.85).value / kgf(sex, 30.0, 1.60).value) / libm::log(1.85 / 1.60);
    let what = format!("{words} of 17 to 44: exponent of grip on stature");
    Row::compared(what, STEIBER, "", (mean, Some(sd)), ours, Accept::Deviations(1.0))
        .by_construction("SD over six age bands; taken up from here")
}

fn curve(sex: Sex, words: &str, table: &[[f64; 4]]) -> Curve {
    Curve {
        title: format!("Grip by age, {words}"),
        x_label: "age (years)".into(),
        y_label: "grip of the median (kgf)".into(),
        ours: ages_y().map(|age_y| (age_y, usual_kgf(sex, age_y).value)).collect(),
        theirs: table
            .iter()
            .map(|r| Reading { x: r[0], y: r[2], sd: Some((r[3] - r[1]) / P10_TO_P90_SD) })
            .collect(),
        source: DODDS.into(),
    }
}

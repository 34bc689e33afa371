//! Water in wood by the air it lies in: the Wood Handbook's table.

use crate::bat::moisture::equilibrium_moisture;
use crate::validation::{Accept, CheckFault, Checked, Curve, Row, readings};

const TABLE_SOURCE: &str =
    "Wood Handbook, FPL-GTR-190 (2010), ch. 4, Table 4-2, printed to 0.1 (read)";

/// Air temperature, °F; moisture content at relative humidities from 5 %, 5 % apart, % of dry mass.
const TABLE: [[f64; 20]; 8] = [
    [
        30.0, 1.4, 2.6, 3.7, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.4, 11.3, 12.4, 13.5, 14.9, 16.5,
        18.5, 21.0, 24.3,
    ],
    [
        40.0, 1.4, 2.6, 3.7, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.4, 11.3, 12.3, 13.5, 14.9, 16.5,
        18.5, 21.0, 24.3,
    ],
    [
        50.0, 1.4, 2.6, 3.6, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.3, 11.2, 12.3, 13.4, 14.8, 16.4,
        18.4, 20.9, 24.3,
    ],
    [
        60.0, 1.3, 2.5, 3.6, 4.6, 5.4, 6.2, 7.0, 7.8, 8.6, 9.4, 10.2, 11.1, 12.1, 13.3, 14.6, 16.2,
        18.2, 20.7, 24.1,
    ],
    [
        70.0, 1.3, 2.5, 3.5, 4.5, 5.4, 6.2, 6.9, 7.7, 8.5, 9.2, 10.1, 11.0, 12.0, 13.1, 14.4, 16.0,
        17.9, 20.5, 23.9,
    ],
    [
        80.0, 1.3, 2.4, 3.5, 4.4, 5.3, 6.1, 6.8, 7.6, 8.3, 9.1, 9.9, 10.8, 11.7, 12.9, 14.2, 15.7,
        17.7, 20.2, 23.6,
    ],
    [
        90.0, 1.2, 2.3, 3.4, 4.3, 5.1, 5.9, 6.7, 7.4, 8.1, 8.9, 9.7, 10.5, 11.5, 12.6, 13.9, 15.4,
        17.3, 19.8, 23.3,
    ],
    [
        100.0, 1.2, 2.3, 3.3, 4.2, 5.0, 5.8, 6.5, 7.2, 7.9, 8.7, 9.5, 10.3, 11.2, 12.3, 13.6, 15.1,
        17.0, 19.5, 22.9,
    ],
];

/// What the equation leaves of the printed table, in points.
const ACCEPT: Accept = Accept::Within(0.06);
/// The row drawn, °F: 21 °C.
const DRAWN_F: f64 = 70.0;

fn humidity(column: usize) -> f64 {
    0.05 * (column + 1) as f64
}

fn ours_pct(fahrenheit: f64, humidity: f64) -> f64 {
    100.0 * equilibrium_moisture((fahrenheit - 32.0) / 1.8, humidity)
}

pub(super) fn check() -> Result<Checked, CheckFault> {
    let (mut largest, mut points) = (0.0_f64, 0);
    for [fahrenheit, row @ ..] in TABLE {
        for (column, pct) in row.into_iter().enumerate() {
            largest = largest.max((ours_pct(fahrenheit, humidity(column)) - pct).abs());
            points += 1;
        }
    }
    let what = format!("water in wood, % of dry mass: largest error at {points} points");
    let row = Row::compared(what, TABLE_SOURCE, "points", 0.0, largest, ACCEPT).noted(
        "−1 to 38 °C, 5 to 95 % relative humidity; wood in general: willow has no table of its own",
    );
    let drawn = TABLE.iter().filter(|row| row[0] == DRAWN_F);
    let theirs = drawn.flat_map(|row| row.iter().skip(1).enumerate());
    let curve = Curve {
        title: "Water in wood that has lain long in air of 21 °C".into(),
        x_label: "relative humidity (%)".into(),
        y_label: "water (% of dry mass)".into(),
        ours: (5..=95).map(|it| (f64::from(it), ours_pct(DRAWN_F, 0.01 * f64::from(it)))).collect(),
        theirs: readings(theirs.map(|(column, pct)| (100.0 * humidity(column), *pct))),
        source: TABLE_SOURCE.into(),
    };
    Ok(Checked { rows: vec![row], curves: vec![curve] })
}

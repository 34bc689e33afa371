//! The calibration kept in a scenario.

use super::super::super::document::values::{ReadText, Values, number};
use super::super::{CalibrationV1, Text};
use super::written;
use crate::measurement::nets::{Calibration, Kept, Lasting, PART_COUNT};

/// Least and greatest strength over the tables': assumption, wide on purpose.
const FACTOR: [f64; 2] = [0.2, 5.0];
/// Greatest share of the legs' loss.
const LASTING_MOST: f64 = 5.0;

/// The calibration, if one is kept.
pub fn calibration(values: &mut Values, v1: &CalibrationV1) -> Option<Kept> {
    if *v1 == CalibrationV1::default() {
        return None;
    }
    let mut needed = |name: &str, text: &Option<Text>, [low, high]: [f64; 2], example: &str| {
        let path = format!("calibration.{name}");
        let like = format!("a number from {low} to {high}");
        let within = number(|it| (low..=high).contains(&it), &like);
        values.needed(&path, text, within, example)
    };
    let factors = [
        needed("trunk", &v1.trunk, FACTOR, "\"1.0\""),
        needed("arms", &v1.arms, FACTOR, "\"1.0\""),
        needed("wrists", &v1.wrists, FACTOR, "\"1.0\""),
    ];
    let share = [0.0, LASTING_MOST];
    let lasting = needed("lasting", &v1.lasting, share, "\"0.33\"");
    let low = needed("lasting_low", &v1.lasting_low, share, "\"0\"");
    let high = needed("lasting_high", &v1.lasting_high, share, "\"1\"");
    let example = "\"0.3 / 0 0.2 / 0 0 0.15\"";
    let spread = values.needed("calibration.spread", &v1.spread, spread, example);
    let lasting = Lasting { low: low?, central: lasting?, high: high? };
    if !(lasting.low <= lasting.central && lasting.central <= lasting.high) {
        let message = "it does not lie between lasting_low and lasting_high";
        values.fault("calibration.lasting", message, "run `backlift calibrate` again");
        return None;
    }
    let [trunk, arms, wrists] = factors;
    Some(Kept {
        calibration: Calibration {
            ln_factor: [trunk?, arms?, wrists?].map(libm::log),
            ln_spread: spread?,
            lasting,
        },
        readings: written(&v1.readings).unwrap_or_default(),
        made_for: written(&v1.made_for).unwrap_or_default(),
    })
}

/// Six numbers: the first row has one, the second two, the third three.
fn spread(text: &str) -> ReadText<[[f64; PART_COUNT]; PART_COUNT]> {
    let numbers: Vec<f64> = text
        .split([' ', '/'])
        .filter(|it| !it.is_empty())
        .map_while(|it| it.parse().ok())
        .filter(|it: &f64| (-2.0..=2.0).contains(it))
        .collect();
    let [a, b, c, d, e, f] = *numbers.as_slice() else {
        let message = format!("{text:?} is not six numbers in three rows");
        return Err((message, "run `backlift calibrate` again".to_owned()));
    };
    Ok([[a, 0.0, 0.0], [b, c, 0.0], [d, e, f]])
}

//! Shares of resting, active and fatigued muscle under given loads.

use std::collections::BTreeMap;

use serde::Deserialize;

use super::read;

/// `three_compartment.json`.
#[derive(Deserialize)]
pub struct Fatigue {
    pub groups: BTreeMap<String, Rates>,
    pub runs: Vec<FatigueRun>,
}

#[derive(Deserialize)]
pub struct Rates {
    pub fatigue_per_s: f64,
    pub recovery_per_s: f64,
    pub rest_multiplier: f64,
}

/// Rows: time, load held until then, resting, active, fatigued (ideal), the same under the published controller.
#[derive(Deserialize)]
pub struct FatigueRun {
    pub group: String,
    pub history: String,
    pub rows: Vec<[f64; 8]>,
}

#[test]
fn shares_of_muscle_sum_to_one_in_the_reference() {
    for run in read::<Fatigue>("three_compartment.json").runs {
        for row in &run.rows {
            for shares in [&row[2..5], &row[5..8]] {
                let sum: f64 = shares.iter().sum();
                assert!((sum - 1.0).abs() < 1e-8, "{} {}: {sum}", run.group, run.history);
            }
        }
    }
}

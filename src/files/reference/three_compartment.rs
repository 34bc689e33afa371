//! Shares of resting, active and fatigued muscle under given loads, by an adaptive integrator.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::innings::compartments::Rates;

/// The whole file.
#[derive(Clone, Debug, Deserialize)]
pub struct Fatigue {
    /// Script that made it.
    pub made_by: String,
    /// Rates by joint group.
    pub groups: BTreeMap<String, GroupRates>,
    /// Histories.
    pub runs: Vec<Run>,
}

/// Rates of one group.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(transparent)]
pub struct GroupRates(#[serde(with = "RatesTable")] pub Rates);

#[derive(Deserialize)]
#[serde(remote = "Rates")]
struct RatesTable {
    fatigue_per_s: f64,
    recovery_per_s: f64,
    rest_multiplier: f64,
}

/// One group under one history of loads.
#[derive(Clone, Debug, Deserialize)]
pub struct Run {
    /// Group.
    pub group: String,
    /// What it bears, in words.
    pub history: String,
    /// Time, load held until then; resting, active, fatigued with a controller that follows at once, and
    /// the same with the published one, which follows within a tenth of a second.
    pub rows: Vec<[f64; 8]>,
}

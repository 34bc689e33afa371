//! The log for other programs, SI.

use backlift::uncertain::Uncertain;
use backlift::workshop::cautions::WORKSHOP;
use serde::Serialize;

use backlift::questions::bench_log::{Bench, Standing};

/// All figures of a log.
#[derive(Serialize)]
pub struct Figures {
    invented: bool,
    now: String,
    bats: Vec<BatRow>,
    cautions: [&'static str; 4],
}

#[derive(Serialize)]
struct BatRow {
    bat: String,
    size: String,
    stage: &'static str,
    at: String,
    mass_now_kg: f64,
    next: Option<&'static str>,
    /// Seconds from now until the next step may be taken; 0 if it may be.
    wait_s: i64,
    next_not_before: Option<String>,
    waits_for: Option<&'static str>,
    not_played_before: Option<String>,
    mass_kg: f64,
    mass_sd_kg: f64,
    balance_m: f64,
    balance_sd_m: f64,
    swing_moment_kg_m2: f64,
    swing_moment_sd_kg_m2: f64,
    pickup_weight_kg: f64,
    pickup_weight_sd_kg: f64,
    ten_swings_s: Option<f64>,
    to_take_off_kg: Option<f64>,
    to_take_off_sd_kg: Option<f64>,
    target_mass_kg: Option<f64>,
    target_balance_m: Option<f64>,
    target_ten_swings_s: Option<f64>,
    stages: Vec<StageRow>,
}

#[derive(Serialize)]
struct StageRow {
    stage: &'static str,
    at: String,
    mass_kg: f64,
    balance_m: Option<f64>,
    ten_swings_s: Option<f64>,
    meter: Option<f64>,
    air_celsius: Option<f64>,
    air_relative_humidity: Option<f64>,
}

/// The figures.
pub fn of(bench: &Bench<'_>) -> Figures {
    Figures {
        invented: bench.invented,
        now: bench.now.to_string(),
        bats: bench.bats.iter().map(|it| row(bench, it)).collect(),
        cautions: WORKSHOP,
    }
}

fn row(bench: &Bench<'_>, it: &Standing<'_>) -> BatRow {
    let Uncertain { value: mass_kg, sd: mass_sd_kg, .. } = it.forecast.mass_kg;
    let stages = it.log.entries.iter().map(|entry| StageRow {
        stage: entry.stage.name(),
        at: entry.at.to_string(),
        mass_kg: entry.mass_kg,
        balance_m: entry.balance_m,
        ten_swings_s: entry.ten_swings_s,
        meter: entry.meter,
        air_celsius: entry.air.map(|it| it.celsius()),
        air_relative_humidity: entry.air.map(|it| it.relative_humidity()),
    });
    BatRow {
        bat: it.log.label.clone(),
        size: it.log.size.clone(),
        stage: it.last.stage.name(),
        at: it.last.at.to_string(),
        mass_now_kg: it.last.mass_kg,
        next: it.next.map(|it| it.name()),
        wait_s: it.wait.map_or(0, |wait| 60 * wait.until.minutes_since(bench.now)),
        next_not_before: it.wait.map(|it| it.until.to_string()),
        waits_for: it.wait.map(|it| it.why),
        not_played_before: it.playable.map(|it| it.to_string()),
        mass_kg,
        mass_sd_kg,
        balance_m: it.forecast.balance_m.value,
        balance_sd_m: it.forecast.balance_m.sd,
        swing_moment_kg_m2: it.forecast.swing_moment_kg_m2.value,
        swing_moment_sd_kg_m2: it.forecast.swing_moment_kg_m2.sd,
        pickup_weight_kg: it.pickup_weight_kg.value,
        pickup_weight_sd_kg: it.pickup_weight_kg.sd,
        ten_swings_s: it.ten_swings_s,
        to_take_off_kg: it.forecast.to_take_off_kg.map(|it| it.value),
        to_take_off_sd_kg: it.forecast.to_take_off_kg.map(|it| it.sd),
        target_mass_kg: it.log.target.mass_kg,
        target_balance_m: it.log.target.balance_m,
        target_ten_swings_s: it.log.target.ten_swings_s,
        stages: stages.collect(),
    }
}

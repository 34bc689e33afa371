//! The log for other programs, SI.

use backlift::questions::bench_log::{Bench, Standing};
use backlift::workshop::cautions::WORKSHOP;
use backlift::workshop::plane::Place;
use serde_json::{Value, json};

use crate::bat_figure::{BALANCE, DEAD_WEIGHT, PICKUP_WEIGHT, SWING_MOMENT};
use crate::json::joined;

/// The figures.
pub fn of(bench: &Bench<'_>) -> Value {
    json!({
        "invented": bench.invented,
        "now": bench.now.to_string(),
        "bats": bench.bats.iter().map(|it| row(bench, it)).collect::<Value>(),
        "cautions": WORKSHOP,
    })
}

fn row(bench: &Bench<'_>, it: &Standing<'_>) -> Value {
    let stages = it.log.entries.iter().map(|entry| {
        json!({
            "stage": entry.stage.name(),
            "at": entry.at.to_string(),
            "mass_kg": entry.mass_kg,
            "balance_m": entry.balance_m,
            "ten_swings_s": entry.pendulum.filter(|it| it.swings == 10).map(|it| it.time_s),
            "swings": entry.pendulum.map(|it| it.swings),
            "swings_s": entry.pendulum.map(|it| it.time_s),
            "planed": entry.planed.map(Place::words),
            "handle_m": entry.handle_m,
            "left_m": entry.left_m,
            "grains": entry.grains,
            "note": entry.note,
            "meter": entry.meter,
            "air_celsius": entry.air.map(|it| it.celsius()),
            "air_relative_humidity": entry.air.map(|it| it.relative_humidity()),
        })
    });
    let now = json!({
        "bat": it.log.label,
        "size": it.log.size,
        "stage": it.last.stage.name(),
        "at": it.last.at.to_string(),
        "mass_now_kg": it.last.mass_kg,
        "next": it.next.map(|it| it.name()),
        // Seconds from now until the next step may be taken; 0 if it may be.
        "wait_s": it.wait.map_or(0, |wait| 60 * wait.until.minutes_since(bench.now)),
        "next_not_before": it.wait.map(|it| it.until.to_string()),
        "waits_for": it.wait.map(|it| it.why),
        "not_played_before": it.playable.map(|it| it.to_string()),
    });
    let still = json!({
        "ten_swings_s": it.ten_swings_s,
        "plane_first_kg": it.plane_first_kg.map(|it| it.value),
        "doubts": it.doubts,
        "to_take_off_kg": it.forecast.to_take_off_kg.map(|it| it.value),
        "to_take_off_sd_kg": it.forecast.to_take_off_kg.map(|it| it.sd),
        "target_mass_kg": it.log.target.mass_kg,
        "target_balance_m": it.log.target.balance_m,
        "target_ten_swings_s": it.log.target.ten_swings_s,
        "stages": stages.collect::<Value>(),
    });
    joined([
        now,
        DEAD_WEIGHT.json(it.forecast.mass_kg),
        BALANCE.json(it.forecast.balance_m),
        SWING_MOMENT.json(it.forecast.swing_moment_kg_m2),
        PICKUP_WEIGHT.json(it.pickup_weight_kg),
        still,
    ])
}

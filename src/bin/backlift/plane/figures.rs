//! The plan for other programs.

use backlift::questions::plane::Planned;
use backlift::workshop::plane::PickupMoments;
use serde_json::{Value, json};

/// Everything of it.
pub fn of(it: &Planned) -> Value {
    let plan = &it.plan;
    let passes = plan.passes.iter().map(|pass| {
        let grams = 1e3 * pass.off_kg;
        json!({
            "where": pass.place.words(),
            "grams": grams,
            "each_side_grams": pass.place.has_two_sides().then_some(0.5 * grams),
            "then": reading(&pass.then),
            "overshoot_chance": pass.overshoot,
        })
    });
    let to_come = plan.to_come.iter().map(|it| {
        json!({
            "what": it.what,
            "mass_kg": it.adds.mass_kg,
            "mass_sd_kg": it.relative_sd * it.adds.mass_kg,
            "swing_moment_kg_m2": it.adds.second_kg_m2,
        })
    });
    let [mass_sd_kg, balance_sd_m, swing_moment_sd_kg_m2] = plan.finished_sd;
    json!({
        "now": reading(&it.now),
        "passes": passes.collect::<Vec<_>>(),
        "to_come": to_come.collect::<Vec<_>>(),
        "finished": {
            "mass_kg": plan.finished.mass_kg,
            "mass_sd_kg": mass_sd_kg,
            "balance_m": plan.finished.balance_m(),
            "balance_sd_m": balance_sd_m,
            "swing_moment_kg_m2": plan.finished.second_kg_m2,
            "swing_moment_sd_kg_m2": swing_moment_sd_kg_m2,
        },
        "meets": plan.meets.iter().map(|it| it.words()).collect::<Vec<_>>(),
        "chance_within": plan.chance,
        "overshoot_limit": backlift::workshop::plane::plan::OVERSHOOT,
        "planing_relative_sd": it.planing_sd,
    })
}

fn reading(it: &PickupMoments) -> Value {
    json!({
        "mass_kg": it.mass_kg,
        "balance_m": it.balance_m(),
        "swing_moment_kg_m2": it.second_kg_m2,
        "ten_swings_s": it.ten_swings_s(),
    })
}

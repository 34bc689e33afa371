//! The plan for other programs.

use backlift::questions::plane::Planned;
use backlift::workshop::plane::{PickupMoments, Place};
use backlift::workshop::stages::Entry;
use serde_json::{Value, json};

use crate::json::joined;

/// Everything of it.
pub fn of(it: &Planned, kept: Option<&Entry>) -> Value {
    let (plan, swings) = (&it.plan, it.card.pendulum_swings);
    let passes = plan.passes.iter().zip(&it.thin_edges).map(|(pass, thin)| {
        let from_toe_m = |share: f64| (1.0 - share) * pass.shape.blade.length_m;
        let grams = 1e3 * pass.off_kg;
        json!({
            "where": pass.place.words(),
            "grams": grams,
            "each_side_grams": pass.place.has_two_sides().then_some(0.5 * grams),
            "left_grams": pass.sides_kg.map(|[left_kg, _]| 1e3 * left_kg),
            "right_grams": pass.sides_kg.map(|[_, right_kg]| 1e3 * right_kg),
            "deepest_m": pass.deepest.deep_m,
            "deepest_from_toe_m": from_toe_m(pass.deepest.from_shoulder),
            "thin_edge_m": thin.map(|it| it.edge_m),
            "thin_edge_from_toe_m": thin.map(|it| from_toe_m(it.from_shoulder)),
            "thin_edge_makers_m": thin.map(|it| it.makers_m),
            "handle_m": pass.handle_m,
            "then": reading(&pass.then, swings),
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
        "now": now(it, swings),
        "planed": kept.and_then(|it| it.planed).map(Place::words),
        "swings": swings,
        "readings": it.readings,
        "apart_sds": it.apart_sds,
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
        "handle_m": plan.handle_m.0,
        "handle_within": plan.handle_m.1,
        "meets": plan.meets.iter().map(|it| it.words()).collect::<Vec<_>>(),
        "chance_within": plan.chance,
        "overshoot_limit": plan.overshoot_limit,
        "planing_relative_sd": it.planing_sd,
    })
}

/// The bat now, with its doubts.
fn now(it: &Planned, swings: u32) -> Value {
    let sds = json!({
        "mass_sd_kg": it.together.mass_kg.sd,
        "balance_sd_m": it.together.balance_m.sd,
        "swing_moment_sd_kg_m2": it.together.swing_moment_kg_m2.sd,
    });
    joined([reading(&it.now, swings), sds])
}

fn reading(it: &PickupMoments, swings: u32) -> Value {
    json!({
        "mass_kg": it.mass_kg,
        "balance_m": it.balance_m(),
        "swing_moment_kg_m2": it.second_kg_m2,
        "ten_swings_s": it.ten_swings_s(),
        "swings_s": it.swings_s(swings),
    })
}

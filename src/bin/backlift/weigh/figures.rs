//! Weighed bats for other programs, SI.

use backlift::bat::figures::WeighedBat;
use backlift::bat::laws::Breach;
use backlift::bat::notes::EstimatedFigure;
use backlift::frames::DMat3;
use serde_json::{Value, json};

use super::verdict;
use crate::bat_figure::{
    BALANCE, DEAD_WEIGHT, HOLD_MOMENT, LENGTH, PERCUSSION, PICKUP_WEIGHT, SWING_MOMENT,
    TWIST_MOMENT,
};
use crate::json::joined;

/// All figures of some bats.
pub fn of(bats: &[&WeighedBat]) -> Value {
    json!({ "bats": bats.iter().map(|it| row(it)).collect::<Value>() })
}

/// A symmetric tensor row by row.
fn rows(it: DMat3) -> [[f64; 3]; 3] {
    it.to_cols_array_2d()
}

fn row(bat: &WeighedBat) -> Value {
    let breach = |it: &Breach| {
        json!({
            "dimension": it.dimension.words(),
            "measured_m": it.measured_m,
            "limit_m": it.limit_m,
        })
    };
    let estimated = |it: &EstimatedFigure| {
        json!({
            "what": it.what,
            "from": it.from,
            "relative_sd": it.relative_sd,
        })
    };
    joined([
        json!({ "label": bat.reading.label, "size": bat.size }),
        LENGTH.json(bat.length_m),
        DEAD_WEIGHT.json(bat.mass_kg),
        BALANCE.json(bat.balance_m),
        SWING_MOMENT.json(bat.swing_moment_kg_m2),
        json!({ "swing_moment_is_estimated": bat.swing_moment_kg_m2.is_estimated() }),
        HOLD_MOMENT.json(bat.hold_moment_n_m),
        TWIST_MOMENT.json(bat.twist_moment_kg_m2),
        PERCUSSION.json(bat.percussion_m),
        PICKUP_WEIGHT.json(bat.pickup_weight_kg),
        json!({
            "com_B_m": bat.bat.com_B().to_array(),
            "inertia_com_B_kg_m2": rows(bat.bat.I_Com_B()),
            "legal": verdict(bat.law.verdict),
            "edition": bat.law.edition,
            "breaches": bat.law.breaches.iter().map(breach).collect::<Value>(),
            "estimated": bat.estimated.iter().map(estimated).collect::<Value>(),
            "warnings": bat.warnings.iter().map(ToString::to_string).collect::<Value>(),
        }),
    ])
}

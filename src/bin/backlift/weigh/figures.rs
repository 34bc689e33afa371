//! Weighed bats for other programs, SI.

use backlift::bat::figures::WeighedBat;
use backlift::bat::laws::Breach;
use backlift::bat::notes::EstimatedFigure;
use serde::Serialize;

use super::verdict;

/// The result for other programs.
#[derive(Serialize)]
pub struct Weighed {
    bats: Vec<Row>,
}

/// One bat, SI; stations from the top of the handle.
#[derive(Serialize)]
struct Row {
    label: String,
    size: String,
    length_m: f64,
    length_sd_m: f64,
    mass_kg: f64,
    mass_sd_kg: f64,
    balance_m: f64,
    balance_sd_m: f64,
    swing_moment_kg_m2: f64,
    swing_moment_sd_kg_m2: f64,
    swing_moment_is_estimated: bool,
    hold_moment_n_m: f64,
    hold_moment_sd_n_m: f64,
    twist_moment_kg_m2: f64,
    twist_moment_sd_kg_m2: f64,
    percussion_m: f64,
    percussion_sd_m: f64,
    pickup_weight_kg: f64,
    pickup_weight_sd_kg: f64,
    legal: &'static str,
    edition: String,
    breaches: Vec<BreachRow>,
    estimated: Vec<EstimatedRow>,
    warnings: Vec<String>,
}

#[derive(Serialize)]
struct BreachRow {
    dimension: &'static str,
    measured_m: f64,
    limit_m: f64,
}

#[derive(Serialize)]
struct EstimatedRow {
    what: &'static str,
    from: String,
    relative_sd: f64,
}

/// All figures of some bats.
pub fn of(bats: &[&WeighedBat]) -> Weighed {
    Weighed { bats: bats.iter().map(|it| row(it)).collect() }
}

fn row(bat: &WeighedBat) -> Row {
    let breach = |it: &Breach| BreachRow {
        dimension: it.dimension.words(),
        measured_m: it.measured_m,
        limit_m: it.limit_m,
    };
    let estimated = |it: &EstimatedFigure| EstimatedRow {
        what: it.what,
        from: it.from.clone(),
        relative_sd: it.relative_sd,
    };
    Row {
        label: bat.reading.label.clone(),
        size: bat.size.clone(),
        length_m: bat.length_m.value,
        length_sd_m: bat.length_m.sd,
        mass_kg: bat.mass_kg.value,
        mass_sd_kg: bat.mass_kg.sd,
        balance_m: bat.balance_m.value,
        balance_sd_m: bat.balance_m.sd,
        swing_moment_kg_m2: bat.swing_moment_kg_m2.value,
        swing_moment_sd_kg_m2: bat.swing_moment_kg_m2.sd,
        swing_moment_is_estimated: bat.swing_moment_kg_m2.is_estimated(),
        hold_moment_n_m: bat.hold_moment_n_m.value,
        hold_moment_sd_n_m: bat.hold_moment_n_m.sd,
        twist_moment_kg_m2: bat.twist_moment_kg_m2.value,
        twist_moment_sd_kg_m2: bat.twist_moment_kg_m2.sd,
        percussion_m: bat.percussion_m.value,
        percussion_sd_m: bat.percussion_m.sd,
        pickup_weight_kg: bat.pickup_weight_kg.value,
        pickup_weight_sd_kg: bat.pickup_weight_kg.sd,
        legal: verdict(bat.law.verdict),
        edition: bat.law.edition.clone(),
        breaches: bat.law.breaches.iter().map(breach).collect(),
        estimated: bat.estimated.iter().map(estimated).collect(),
        warnings: bat.warnings.iter().map(ToString::to_string).collect(),
    }
}

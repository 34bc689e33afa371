//! The card as RON by position, in as few bytes as fit a small QR code.
//!
//! It has the same figures as the full form; the standing cautions, which follow from the age, are left out.

use super::card::{HandedV1, HandleShapeV1};
use crate::card::{Card, Condition, HandleShape, PlayerLine, cautions};
use crate::measurement::person::Handed;
use serde::{Deserialize, Serialize};

/// Schema of the short form.
pub const SHORT_SCHEMA: &str = "backlift/card-short/1";

/// Target, low, high.
type Limits = (f64, f64, f64);

/// The card by position: schema, (invented, age, stature, left-handed), (size, length), weight, balance,
/// swing moment, pickup weight, (pivot, swings, time), sweet spot, handle, shape, (grips, toe guard, oiled),
/// stature to fit again, reason, how sure, cautions beyond the standing ones, software, model.
#[derive(Serialize, Deserialize)]
pub(super) struct ShortV1(
    String,
    (bool, f64, f64, HandedV1),
    (String, f64),
    Limits,
    Limits,
    Limits,
    f64,
    (f64, u32, Limits),
    Limits,
    Limits,
    HandleShapeV1,
    (u32, bool, bool),
    Option<f64>,
    String,
    String,
    Vec<String>,
    String,
    String,
);

fn limits(target: f64, [low, high]: [f64; 2]) -> Limits {
    (target, low, high)
}

impl From<&Card> for ShortV1 {
    fn from(card: &Card) -> Self {
        let standing = cautions::standing(card.player.age_y, card.refit_stature_m);
        let further = card.cautions.iter().filter(|it| !standing.contains(it)).cloned().collect();
        let player = card.player;
        Self(
            SHORT_SCHEMA.to_owned(),
            (card.invented, player.age_y, player.stature_m, HandedV1::from(player.handed)),
            (card.size.clone(), card.length_m),
            limits(card.mass_kg, card.mass_tolerance_kg),
            limits(card.balance_m, card.balance_tolerance_m),
            limits(card.swing_moment_kg_m2, card.swing_moment_tolerance_kg_m2),
            card.pickup_weight_kg,
            (
                card.pendulum_pivot_m,
                card.pendulum_swings,
                limits(card.pendulum_time_s, card.pendulum_time_tolerance_s),
            ),
            limits(card.sweet_spot_from_toe_m, card.sweet_spot_tolerance_m),
            limits(card.handle_diameter_m, card.handle_tolerance_m),
            HandleShapeV1::from(card.handle_shape),
            (card.condition.grips, card.condition.toe_guard, card.condition.oiled),
            card.refit_stature_m,
            card.reason.clone(),
            card.how_sure.clone(),
            further,
            card.software.clone(),
            card.model.clone(),
        )
    }
}

impl From<ShortV1> for Card {
    fn from(short: ShortV1) -> Self {
        let ShortV1(
            _,
            (invented, age_y, stature_m, handed),
            (size, length_m),
            mass,
            balance,
            swing,
            pickup_weight_kg,
            (pendulum_pivot_m, pendulum_swings, time),
            sweet,
            handle,
            shape,
            (grips, toe_guard, oiled),
            refit_stature_m,
            reason,
            how_sure,
            further,
            software,
            model,
        ) = short;
        let mut cautions = cautions::standing(age_y, refit_stature_m);
        cautions.extend(further);
        Self {
            player: PlayerLine { age_y, stature_m, handed: Handed::from(handed) },
            invented,
            size,
            length_m,
            mass_kg: mass.0,
            mass_tolerance_kg: [mass.1, mass.2],
            balance_m: balance.0,
            balance_tolerance_m: [balance.1, balance.2],
            swing_moment_kg_m2: swing.0,
            swing_moment_tolerance_kg_m2: [swing.1, swing.2],
            region: None,
            pickup_weight_kg,
            pendulum_pivot_m,
            pendulum_swings,
            pendulum_time_s: time.0,
            pendulum_time_tolerance_s: [time.1, time.2],
            sweet_spot_from_toe_m: sweet.0,
            sweet_spot_tolerance_m: [sweet.1, sweet.2],
            handle_diameter_m: handle.0,
            handle_tolerance_m: [handle.1, handle.2],
            handle_shape: HandleShape::from(shape),
            reason,
            how_sure,
            cautions,
            condition: Condition { grips, toe_guard, oiled },
            refit_stature_m,
            software,
            model,
        }
    }
}

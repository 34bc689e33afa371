//! The card as RON by position, in as few bytes as fit a small QR code: figures, no sentences.
//!
//! Reason, how sure it is and further cautions stand on the sheet and in the full form; the standing
//! cautions follow from the age. What is still too long loses names, the least needed first.

use super::card_choices::{HandedV1, HandleShapeV1};
use crate::card::{Asked, Card, Condition, HandleShape, PlayerLine, cautions};
use crate::measurement::person::Handed;
use serde::{Deserialize, Serialize};

/// Schema of the short form.
pub const SHORT_SCHEMA: &str = "backlift/card-short/2";

/// Target, low, high.
type Limits = (f64, f64, f64);
/// Invented, age, stature, hand.
#[derive(Serialize, Deserialize)]
pub(super) struct Who(bool, f64, f64, #[serde(with = "HandedV1")] Handed);
/// Pivot, swings, time.
type Pendulum = (f64, u32, Limits);

/// The card by position: schema, who, (size, length), weight, balance, swing moment, pickup weight, pendulum,
/// sweet spot, handle, shape, (grips, toe guard, oiled), stature to fit again, software, model.
#[derive(Serialize, Deserialize)]
pub(super) struct ShortV2(
    String,
    Who,
    (String, f64),
    Limits,
    Limits,
    Limits,
    f64,
    Pendulum,
    Limits,
    Limits,
    #[serde(with = "HandleShapeV1")] HandleShape,
    (u32, bool, bool),
    Option<f64>,
    String,
    String,
);

impl ShortV2 {
    /// Leaves out the name that is least needed of those still there, and says which.
    pub(super) fn leave_out_a_name(&mut self) -> Option<&'static str> {
        let names = [
            (&mut self.13, "the program's name"),
            (&mut self.14, "the model's name"),
            (&mut self.2.0, "the size's name"),
        ];
        let (name, which) = names.into_iter().find(|(name, _)| !name.is_empty())?;
        name.clear();
        Some(which)
    }
}

fn limits(Asked { target, tolerance: [low, high] }: Asked) -> Limits {
    (target, low, high)
}

fn asked((target, low, high): Limits) -> Asked {
    Asked::new(target, [low, high])
}

impl From<&Card> for ShortV2 {
    fn from(card: &Card) -> Self {
        let player = card.player;
        let [swing, mass, balance, sweet, handle] = card.figures.map(limits);
        Self(
            SHORT_SCHEMA.to_owned(),
            Who(card.invented, player.age_y, player.stature_m, player.handed),
            (card.size.clone(), card.length_m),
            mass,
            balance,
            swing,
            card.pickup_weight_kg,
            (card.pendulum_pivot_m, card.pendulum_swings, limits(card.pendulum_time_s)),
            sweet,
            handle,
            card.handle_shape,
            (card.condition.grips, card.condition.toe_guard, card.condition.oiled),
            card.refit_stature_m,
            card.software.clone(),
            card.model.clone(),
        )
    }
}

impl From<ShortV2> for Card {
    /// The card without reason and how sure it is, and with the standing cautions alone.
    fn from(short: ShortV2) -> Self {
        let ShortV2(
            _,
            Who(invented, age_y, stature_m, handed),
            (size, length_m),
            mass,
            balance,
            swing,
            pickup_weight_kg,
            (pendulum_pivot_m, pendulum_swings, time),
            sweet,
            handle,
            handle_shape,
            (grips, toe_guard, oiled),
            refit_stature_m,
            software,
            model,
        ) = short;
        Self {
            player: PlayerLine { age_y, stature_m, handed },
            invented,
            size,
            length_m,
            figures: [swing, mass, balance, sweet, handle].map(asked),
            region: None,
            pickup_weight_kg,
            pendulum_pivot_m,
            pendulum_swings,
            pendulum_time_s: asked(time),
            handle_shape,
            reason: String::new(),
            how_sure: String::new(),
            cautions: cautions::standing(age_y, refit_stature_m),
            condition: Condition { grips, toe_guard, oiled },
            refit_stature_m,
            order: None,
            software,
            model,
        }
    }
}

/// Schema of the first short form, which had its sentences: no longer written, still read off cards that are about.
pub const SHORT_SCHEMA_1: &str = "backlift/card-short/1";

/// As [`ShortV2`], with reason, how sure, and cautions beyond the standing ones before software and model.
#[derive(Deserialize)]
pub(super) struct ShortV1(
    String,
    Who,
    (String, f64),
    Limits,
    Limits,
    Limits,
    f64,
    Pendulum,
    Limits,
    Limits,
    #[serde(with = "HandleShapeV1")] HandleShape,
    (u32, bool, bool),
    Option<f64>,
    String,
    String,
    Vec<String>,
    String,
    String,
);

impl From<ShortV1> for Card {
    fn from(old: ShortV1) -> Self {
        // What stands before is by position as in the second form.
        let ShortV1(.., reason, how_sure, further, software, model) = old;
        let mut card = Self::from(ShortV2(
            old.0, old.1, old.2, old.3, old.4, old.5, old.6, old.7, old.8, old.9, old.10, old.11,
            old.12, software, model,
        ));
        (card.reason, card.how_sure) = (reason, how_sure);
        card.cautions.extend(further);
        card
    }
}

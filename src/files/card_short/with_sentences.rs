//! The first short form, with its sentences: no longer written, still read off cards that are about.

use super::{Limits, Pendulum, ShortV2, Who};
use crate::card::{Card, HandleShape};
use crate::files::card_choices::HandleShapeV1;
use serde::Deserialize;

/// Schema of the first short form.
pub const SHORT_SCHEMA_1: &str = "backlift/card-short/1";

/// As [`ShortV2`], with reason, how sure, and cautions beyond the standing ones before software and model.
#[derive(Deserialize)]
pub(in crate::files) struct ShortV1(
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
        let ShortV1(
            schema,
            who,
            size,
            mass,
            balance,
            swing,
            pickup,
            pendulum,
            sweet,
            handle,
            shape,
            condition,
            refit,
            reason,
            how_sure,
            further,
            software,
            model,
        ) = old;
        let mut card = Self::from(ShortV2(
            schema, who, size, mass, balance, swing, pickup, pendulum, sweet, handle, shape,
            condition, refit, software, model,
        ));
        (card.reason, card.how_sure) = (reason, how_sure);
        card.cautions.extend(further);
        card
    }
}

//! The card as RON: in full for people and programs, and short for the QR code.
//!
//! Both carry their schema and are read by [`read`]. The short form has the same figures by position, and
//! no sentences but the standing cautions, which follow from the age.

use super::card_choices::{HandedV1, HandleShapeV1, OrderV1};
use super::card_short::{SHORT_SCHEMA, SHORT_SCHEMA_1, ShortV1, ShortV2};
use super::fault::plain;
use crate::card::order::Order;
use crate::card::{Asked, Card, CardFault, Condition, HandleShape, PlayerLine};
use crate::fit::region::{COEFFICIENTS, Region};
use crate::measurement::person::Handed;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

/// Schema of the full form.
pub const SCHEMA: &str = "backlift/card/1";

/// Why a text is not a card.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum CardFileFault {
    /// Not RON, half written, or a field missing, misnamed or of the wrong kind. Both count from 1.
    #[error("line {line}, column {column}: {what}")]
    Broken {
        /// Line.
        line: usize,
        /// Column, in characters.
        column: usize,
        /// What is wrong there.
        what: String,
    },
    /// RON, but something else, or of another edition.
    #[error(
        "this is \"{found}\", not a card that this version reads (\"{SCHEMA}\" or \"{SHORT_SCHEMA}\")"
    )]
    OtherSchema {
        /// The schema it names.
        found: String,
    },
    /// Reads well, but no bat can have these figures.
    #[error(transparent)]
    Unfit(#[from] CardFault),
    /// The values cannot be written as RON.
    #[error("the card cannot be written: {0}")]
    Unwritable(String),
}

/// The card as it stands in a file, version 1. SI units; `[low, high]` for a tolerance.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct CardV1 {
    schema: String,
    invented: bool,
    age_y: f64,
    stature_m: f64,
    #[serde(with = "HandedV1")]
    handed: Handed,
    size: String,
    length_m: f64,
    mass_kg: f64,
    mass_tolerance_kg: [f64; 2],
    balance_m: f64,
    balance_tolerance_m: [f64; 2],
    swing_moment_kg_m2: f64,
    swing_moment_tolerance_kg_m2: [f64; 2],
    #[serde(default, skip_serializing_if = "Option::is_none")]
    region: Option<RegionV1>,
    pickup_weight_kg: f64,
    pendulum_pivot_m: f64,
    pendulum_swings: u32,
    pendulum_time_s: f64,
    pendulum_time_tolerance_s: [f64; 2],
    sweet_spot_from_toe_m: f64,
    sweet_spot_tolerance_m: [f64; 2],
    handle_diameter_m: f64,
    handle_tolerance_m: [f64; 2],
    #[serde(with = "HandleShapeV1")]
    handle_shape: HandleShape,
    grips: u32,
    toe_guard: bool,
    oiled: bool,
    refit_stature_m: Option<f64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    order: Option<OrderV1>,
    reason: String,
    how_sure: String,
    cautions: Vec<String>,
    software: String,
    model: String,
}

/// Which bats are as good as the one asked: see [`Region`].
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct RegionV1 {
    gyration2_m2: f64,
    loss: [f64; COEFFICIENTS],
}

impl RegionV1 {
    fn of(region: &Region) -> Self {
        let short = |it: f64| (it * 1e7).round() / 1e7;
        Self { gyration2_m2: short(region.gyration2_m2), loss: region.loss.map(short) }
    }

    /// About the bat that the card asks.
    fn about(self, mass_kg: f64, balance_m: f64, swing_moment_kg_m2: f64) -> Region {
        let Self { gyration2_m2, loss } = self;
        Region { mass_kg, balance_m, swing_moment_kg_m2, gyration2_m2, loss }
    }
}

/// The schema alone, whatever else the text holds.
#[derive(Deserialize)]
struct Named {
    schema: String,
}

/// The card as RON, a field a line.
pub fn write(card: &Card) -> Result<String, CardFileFault> {
    let layout = ron::ser::PrettyConfig::new().new_line("\n").compact_arrays(true);
    let mut text = ron::ser::to_string_pretty(&CardV1::from(card), layout)
        .map_err(|it| CardFileFault::Unwritable(it.to_string()))?;
    text.push('\n');
    Ok(text)
}

/// The card's figures as RON, short enough for a QR code.
#[derive(Clone, Debug, PartialEq)]
pub struct Short {
    /// The text.
    pub text: String,
    /// Names left out so that it is no longer than asked, in the order in which they went.
    pub left_out: Vec<&'static str>,
}

/// The card's figures as RON, names left out while it has more than `most_bytes`.
///
/// The figures themselves are never left out; a card [`Card::rounded_for_the_bench`] has some 250 bytes of them.
pub fn write_short(card: &Card, most_bytes: usize) -> Result<Short, CardFileFault> {
    let mut short = ShortV2::from(card);
    let mut left_out = Vec::new();
    loop {
        let text =
            ron::ser::to_string(&short).map_err(|it| CardFileFault::Unwritable(it.to_string()))?;
        if text.len() <= most_bytes {
            return Ok(Short { text, left_out });
        }
        match short.leave_out_a_name() {
            Some(name) => left_out.push(name),
            None => return Ok(Short { text, left_out }),
        }
    }
}

/// Reads a card in either form.
pub fn read(text: &str) -> Result<Card, CardFileFault> {
    let is = |schema: &str| text.trim_start().starts_with(&format!("(\"{schema}\""));
    if is(SHORT_SCHEMA) {
        return form::<ShortV2>(text);
    }
    if is(SHORT_SCHEMA_1) {
        return form::<ShortV1>(text);
    }
    let Named { schema } = ron::from_str(text).map_err(broken)?;
    if schema != SCHEMA {
        return Err(CardFileFault::OtherSchema { found: schema });
    }
    form::<CardV1>(text)
}

fn form<F: DeserializeOwned>(text: &str) -> Result<Card, CardFileFault>
where
    Card: From<F>,
{
    let mut card = Card::from(ron::from_str::<F>(text).map_err(broken)?);
    for it in [&mut card.size, &mut card.reason, &mut card.how_sure]
        .into_iter()
        .chain([&mut card.software, &mut card.model])
        .chain(&mut card.cautions)
    {
        *it = plain(it);
    }
    if let Some(order) = &mut card.order {
        for it in [&mut order.number, &mut order.wish.note].into_iter().flatten() {
            *it = plain(it);
        }
    }
    Ok(card.checked()?)
}

fn broken(fault: ron::error::SpannedError) -> CardFileFault {
    let what = match fault.code {
        ron::Error::Eof | ron::Error::ExpectedStringEnd => "the card ends early".to_owned(),
        other => other.to_string(),
    };
    CardFileFault::Broken { line: fault.span.start.line, column: fault.span.start.col, what }
}

impl From<&Card> for CardV1 {
    fn from(card: &Card) -> Self {
        let card = card.clone();
        let [swing, mass, balance, sweet, handle] = card.figures;
        let time = card.pendulum_time_s;
        Self {
            schema: SCHEMA.to_owned(),
            invented: card.invented,
            age_y: card.player.age_y,
            stature_m: card.player.stature_m,
            handed: card.player.handed,
            size: card.size,
            length_m: card.length_m,
            mass_kg: mass.target,
            mass_tolerance_kg: mass.tolerance,
            balance_m: balance.target,
            balance_tolerance_m: balance.tolerance,
            swing_moment_kg_m2: swing.target,
            swing_moment_tolerance_kg_m2: swing.tolerance,
            region: card.region.as_ref().map(RegionV1::of),
            pickup_weight_kg: card.pickup_weight_kg,
            pendulum_pivot_m: card.pendulum_pivot_m,
            pendulum_swings: card.pendulum_swings,
            pendulum_time_s: time.target,
            pendulum_time_tolerance_s: time.tolerance,
            sweet_spot_from_toe_m: sweet.target,
            sweet_spot_tolerance_m: sweet.tolerance,
            handle_diameter_m: handle.target,
            handle_tolerance_m: handle.tolerance,
            handle_shape: card.handle_shape,
            grips: card.condition.grips,
            toe_guard: card.condition.toe_guard,
            oiled: card.condition.oiled,
            refit_stature_m: card.refit_stature_m,
            order: card.order.map(OrderV1::from),
            reason: card.reason,
            how_sure: card.how_sure,
            cautions: card.cautions,
            software: card.software,
            model: card.model,
        }
    }
}

impl From<CardV1> for Card {
    fn from(file: CardV1) -> Self {
        Self {
            player: PlayerLine {
                age_y: file.age_y,
                stature_m: file.stature_m,
                handed: file.handed,
            },
            invented: file.invented,
            size: file.size,
            length_m: file.length_m,
            figures: [
                Asked::new(file.swing_moment_kg_m2, file.swing_moment_tolerance_kg_m2),
                Asked::new(file.mass_kg, file.mass_tolerance_kg),
                Asked::new(file.balance_m, file.balance_tolerance_m),
                Asked::new(file.sweet_spot_from_toe_m, file.sweet_spot_tolerance_m),
                Asked::new(file.handle_diameter_m, file.handle_tolerance_m),
            ],
            region: file
                .region
                .map(|it| it.about(file.mass_kg, file.balance_m, file.swing_moment_kg_m2)),
            pickup_weight_kg: file.pickup_weight_kg,
            pendulum_pivot_m: file.pendulum_pivot_m,
            pendulum_swings: file.pendulum_swings,
            pendulum_time_s: Asked::new(file.pendulum_time_s, file.pendulum_time_tolerance_s),
            handle_shape: file.handle_shape,
            reason: file.reason,
            how_sure: file.how_sure,
            cautions: file.cautions,
            condition: Condition {
                grips: file.grips,
                toe_guard: file.toe_guard,
                oiled: file.oiled,
            },
            refit_stature_m: file.refit_stature_m,
            order: file.order.map(Order::from).and_then(Order::said),
            software: file.software,
            model: file.model,
        }
    }
}

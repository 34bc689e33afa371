//! Figures as they are printed: trade units and SI, a thin space before each unit, a true minus sign.

use crate::card::order::Wish;
use crate::card::{Card, Condition, HandleShape};
use crate::units::{INCH_M, POUND_KG, Units, spoken_stature};
pub use crate::units::{THIN, number};

/// A number and its unit, to be set apart.
pub type Part = (String, &'static str);

/// Whole pounds and tenths of an ounce.
pub fn pounds_ounces(mass_kg: f64) -> Vec<Part> {
    let tenths = (mass_kg / POUND_KG * 160.0).round();
    let pounds = (tenths / 160.0).floor();
    vec![(number(pounds, 0), "lb"), (number((tenths - 160.0 * pounds) / 10.0, 1), "oz")]
}

/// Inches with two decimals.
pub fn inches(length_m: f64) -> Vec<Part> {
    vec![(number(length_m / INCH_M, 2), "in")]
}

/// Kilograms to the gram.
pub fn kilograms(mass_kg: f64) -> Vec<Part> {
    vec![(number(mass_kg, 3), "kg")]
}

/// Whole millimetres.
pub fn millimetres(length_m: f64) -> Vec<Part> {
    vec![(number(length_m * 1e3, 0), "mm")]
}

/// Tenths of a millimetre.
pub fn fine_millimetres(length_m: f64) -> Vec<Part> {
    vec![(number(length_m * 1e3, 1), "mm")]
}

/// Swing moment to 0.0001 kg m².
pub fn swing_moment(moment_kg_m2: f64) -> Vec<Part> {
    vec![(number(moment_kg_m2, 4), "kg\u{2009}m²")]
}

/// Swing moment in ounce inches squared, to the ten.
pub fn ounce_inches_squared(moment_kg_m2: f64) -> Vec<Part> {
    let value = moment_kg_m2 / (POUND_KG / 16.0 * INCH_M * INCH_M);
    vec![(number((value / 10.0).round() * 10.0, 0), "oz\u{2009}in²")]
}

/// Seconds to the hundredth.
pub fn seconds(time_s: f64) -> Vec<Part> {
    vec![(number(time_s, 2), "s")]
}

/// The parts as one text.
pub fn joined(parts: &[Part]) -> String {
    let one = |(value, unit): &Part| format!("{value}{THIN}{unit}");
    parts.iter().map(one).collect::<Vec<_>>().join(" ")
}

/// "13 years, 5 ft 1 in (156 cm), right-handed".
pub fn player(card: &Card) -> String {
    format!(
        "{} years, {}, {}-handed",
        number(card.player.age_y.floor(), 0),
        spoken_stature(card.player.stature_m, Units::Trade),
        card.player.handed.words(),
    )
}

/// "middle high; handle oval; two grips; no stickers": nothing where nothing is wished.
pub fn wish(wish: &Wish) -> String {
    let middle = wish.middle.map(|it| format!("middle {}", it.words()));
    let handle = wish.handle_shape.map(|it| format!("handle {}", handle_shape(it)));
    let all = [middle, handle, wish.grips.map(grips), wish.note.clone()];
    all.into_iter().flatten().collect::<Vec<_>>().join("; ")
}

/// "two grips".
pub fn grips(count: u32) -> String {
    match count {
        0 => "no grip".to_owned(),
        1 => "one grip".to_owned(),
        2 => "two grips".to_owned(),
        more => format!("{more} grips"),
    }
}

/// "with one grip, no toe guard, unoiled".
pub fn condition(condition: Condition) -> String {
    let grips = grips(condition.grips);
    let guard = if condition.toe_guard { "a toe guard" } else { "no toe guard" };
    let oil = if condition.oiled { "oiled" } else { "not yet oiled" };
    format!("{grips}, {guard}, {oil}")
}

/// "oval".
pub fn handle_shape(shape: HandleShape) -> &'static str {
    match shape {
        HandleShape::Round => "round",
        HandleShape::Oval => "oval",
        HandleShape::SemiOval => "oval above, round below",
    }
}

//! What a player of this age most likely measures: the figures that examples and hints are made of.

use super::growth::median_stature_m;
use super::player;
use crate::measurement::person::{PersonReading, Sex};

/// Age of an example where none was given, years: the juniors that are fitted most.
const EXAMPLE_AGE_Y: f64 = 13.0;
/// Ages that the tables know, years.
const AGES_Y: [f64; 2] = [5.0, 100.0];

/// The likeliest figures of somebody.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Usual {
    /// Stature, m.
    pub stature_m: f64,
    /// Body mass, kg.
    pub mass_kg: f64,
    /// Point of the shoulder to the centre of the grip, m.
    pub arm_length_m: f64,
    /// Wrist crease to the tip of the middle finger, m.
    pub hand_length_m: f64,
    /// Grip of either hand, N.
    pub grip_n: f64,
}

/// Arm over stature: the mean of the proportions that a reading is judged by.
const ARM_OVER_STATURE: f64 = 0.38;

/// Of somebody of whom this much is known; a stature that nobody has is left aside. None only if the tables had nobody.
pub fn usual(age_y: Option<f64>, sex: Option<Sex>, stature_m: Option<f64>) -> Option<Usual> {
    let [youngest, oldest] = AGES_Y;
    let age_y = age_y.filter(|it| it.is_finite()).unwrap_or(EXAMPLE_AGE_Y).clamp(youngest, oldest);
    let sex = sex.unwrap_or(Sex::Male);
    let with = |stature_m: f64| player(&PersonReading::of(sex, age_y, stature_m)).ok();
    let it = stature_m.and_then(with).or_else(|| with(median_stature_m(sex, age_y)))?;
    Some(Usual {
        stature_m: median_stature_m(sex, age_y),
        mass_kg: it.mass_kg.value,
        arm_length_m: ARM_OVER_STATURE * it.stature_m,
        hand_length_m: it.hand_length_m.value,
        grip_n: it.grip_top_n.value,
    })
}

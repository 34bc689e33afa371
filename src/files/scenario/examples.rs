//! Examples of a player's measurements that fit the player: a child is not told a grown man's.

use crate::frames::STANDARD_GRAVITY_M_S2;
use crate::measurement::person::{PersonReading, Sex};
use crate::player::usual::{Usual, usual};
use crate::units::{INCH_M, POUND_KG, THIN, Units, spoken_stature};

/// What somebody like the player would measure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Examples(Option<Usual>);

/// One figure, written in two ways.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Example {
    /// As it is mostly written.
    pub trade: String,
    /// In other units.
    pub other: String,
}

/// Where the tables have nobody of that kind.
const NO_EXAMPLE: &str = "a number with its unit";

impl Examples {
    /// For a player of whom this much is known.
    pub fn of(age_y: Option<f64>, sex: Option<Sex>, stature_m: Option<f64>) -> Self {
        Self(usual(age_y, sex, stature_m))
    }

    /// For a player whose reading holds something that nobody has.
    pub fn beside(reading: &PersonReading) -> Self {
        Self::of(Some(reading.age_y), Some(reading.sex), Some(reading.stature_m))
    }

    /// Of a field of the player: `mass`; none of those that do not hang on age.
    pub fn of_field(&self, name: &str) -> Option<Example> {
        let it = self.0?;
        let [trade, other] = match name {
            "stature" => [feet(it.stature_m), format!("{:.2} m", it.stature_m)],
            "mass" => [format!("{:.0} kg", it.mass_kg), format!("{:.0} lb", it.mass_kg / POUND_KG)],
            "arm_length" => lengths(it.arm_length_m, 0),
            "hand_length" => lengths(it.hand_length_m, 1),
            "grip_top" | "grip_bottom" => {
                let grip_kg = it.grip_n / STANDARD_GRAVITY_M_S2;
                [format!("{grip_kg:.0} kg"), format!("{:.0} lb", grip_kg / POUND_KG)]
            }
            _ => return None,
        };
        Some(Example { trade, other })
    }

    /// Both in quotation marks, to be written so into a file.
    pub(super) fn quoted(&self, name: &str) -> String {
        self.of_field(name).map_or_else(
            || NO_EXAMPLE.to_owned(),
            |Example { trade, other }| format!("{trade:?} or {other:?}"),
        )
    }
}

/// "5 ft 3 in".
fn feet(stature_m: f64) -> String {
    let spoken = spoken_stature(stature_m, Units::Trade).replace(THIN, " ");
    spoken.split_once(" (").map_or(spoken.clone(), |it| it.0.to_owned())
}

fn lengths(length_m: f64, decimals: usize) -> [String; 2] {
    [format!("{:.decimals$} cm", 1e2 * length_m), format!("{:.1} in", length_m / INCH_M)]
}

//! How the window looks and speaks.

use backlift::units::Units;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// Sizes of text there are: the least and the most.
pub const TEXT_SCALES: [f32; 2] = [0.8, 2.0];

/// Settings of the eye, not of the fitting.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Look {
    pub dark: bool,
    /// Size of the text, 1 as designed.
    pub text_scale: f32,
    /// Units to show figures in; in a file, whether they are those of the SI.
    #[serde(rename = "si", serialize_with = "is_si", deserialize_with = "si_or_trade")]
    pub units: Units,
    pub reduced_motion: bool,
    /// Fewer triangles, no shadows: for slow machines.
    pub reduced_detail: bool,
}

impl Default for Look {
    fn default() -> Self {
        Self {
            dark: false,
            text_scale: 1.0,
            units: Units::Trade,
            reduced_motion: false,
            reduced_detail: false,
        }
    }
}

fn is_si<S: Serializer>(it: &Units, into: S) -> Result<S::Ok, S::Error> {
    into.serialize_bool(*it == Units::Si)
}

fn si_or_trade<'a, D: Deserializer<'a>>(from: D) -> Result<Units, D::Error> {
    Ok(if bool::deserialize(from)? { Units::Si } else { Units::Trade })
}

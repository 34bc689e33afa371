//! What the map shows, as plain values.

use crate::card::Asked;

/// A bat to mark.
#[derive(Clone, Debug, PartialEq)]
pub struct MapBat {
    /// Dead weight, kg.
    pub mass_kg: f64,
    /// Balance point, m from the top of the handle.
    pub balance_m: f64,
}

/// The bat to make, with the limits within which the advice holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MapTarget {
    /// Dead weight, kg.
    pub mass_kg: Asked,
    /// Balance point, m from the top of the handle.
    pub balance_m: Asked,
}

/// What the map shows.
#[derive(Clone, Debug, PartialEq)]
pub struct MapPicture {
    /// What it says, in one sentence.
    pub sentence: String,
    /// Columns: dead weights, kg, rising.
    pub mass_kg: Vec<f64>,
    /// Rows: balance points, m from the top of the handle, rising.
    pub balance_m: Vec<f64>,
    /// Row by row: what is gained or lost; none where no legal bat can be made or the player cannot.
    pub value: Vec<Option<f64>>,
    /// What the value is, with its unit: "expected ball speed, late balls and mishits counted, km/h".
    pub value_label: String,
    /// Row by row: pickup weight, kg; none where unknown.
    pub pickup_weight_kg: Vec<Option<f64>>,
    /// Bats to mark; their place gives colour and letter.
    pub bats: Vec<MapBat>,
    /// The bat to make.
    pub target: Option<MapTarget>,
}

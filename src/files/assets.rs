//! Tables shipped with the program: trade sizes and the limits of the Laws.

use serde::Deserialize;

use super::shape_table::ShapeTable;
use crate::bat::laws::Limits;
use crate::bat::shape::BatShape;
use crate::bat::sizes::{Craft, Size, SizeRow};

const SIZES: &str = include_str!("../../assets/sizes.ron");
const LAWS: &str = include_str!("../../assets/laws.ron");

/// A table shipped with the program cannot be read: a fault of the program, not of its user.
#[derive(Debug, thiserror::Error)]
#[error("the shipped table {table} cannot be read: {cause}")]
pub struct AssetFault {
    table: &'static str,
    cause: Box<ron::error::SpannedError>,
}

fn read<'a, T: Deserialize<'a>>(table: &'static str, text: &'a str) -> Result<T, AssetFault> {
    ron::from_str(text).map_err(|cause| AssetFault { table, cause: Box::new(cause) })
}

/// All trade sizes, smallest first.
pub fn sizes() -> Result<Vec<Size>, AssetFault> {
    let SizesTable { adult, craft, sizes, .. } = read("sizes.ron", SIZES)?;
    Ok(sizes.into_iter().map(|Row(row)| Size::scaled(&adult, row, craft)).collect())
}

/// Size limits of the edition of the Laws in use.
pub fn limits() -> Result<Limits, AssetFault> {
    let table: LawsTable = read("laws.ron", LAWS)?;
    Ok(table.limits)
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct LawsTable {
    #[serde(rename = "source")]
    _source: String,
    #[serde(with = "LimitsTable")]
    limits: Limits,
}

#[derive(Deserialize)]
#[serde(remote = "Limits", deny_unknown_fields)]
struct LimitsTable {
    edition: String,
    length_m: f64,
    width_m: f64,
    depth_m: f64,
    edge_m: f64,
    handle_share: f64,
    rubber_share: f64,
    rubber_share_c_d: f64,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SizesTable {
    #[serde(rename = "source")]
    _source: String,
    #[serde(with = "ShapeTable")]
    adult: BatShape,
    #[serde(with = "CraftTable")]
    craft: Craft,
    sizes: Vec<Row>,
}

#[derive(Deserialize)]
#[serde(remote = "Craft", deny_unknown_fields)]
struct CraftTable {
    density_kg_m3: [f64; 2],
    density_share: f64,
    greatest_taper: f64,
    swell_per_taper: f64,
    greatest_swell_move: f64,
    ends_spread: f64,
    handle_spread: f64,
    thinnest_edge_m: f64,
    swell_from_toe: [f64; 2],
}

#[derive(Deserialize)]
#[serde(transparent)]
struct Row(#[serde(with = "RowTable")] SizeRow);

#[derive(Deserialize)]
#[serde(remote = "SizeRow", deny_unknown_fields)]
struct RowTable {
    name: String,
    also: Vec<String>,
    length_m: f64,
    handle_m: f64,
    width_m: f64,
    thickness: f64,
    handle_diameter_m: f64,
    stature_from_m: Option<f64>,
    stature_to_m: Option<f64>,
    usual_kg: [f64; 2],
}

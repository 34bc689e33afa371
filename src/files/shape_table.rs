//! The shape of a bat as the shipped sizes and the figures of outside programs have it.

use serde::{Deserialize, Deserializer};

use crate::bat::blade::{Blade, Station};
use crate::bat::handle::Handle;
use crate::bat::shape::BatShape;

#[derive(Deserialize)]
#[serde(remote = "BatShape", deny_unknown_fields)]
pub(super) struct ShapeTable {
    #[serde(with = "HandleTable")]
    handle: Handle,
    #[serde(with = "BladeTable")]
    blade: Blade,
}

#[derive(Deserialize)]
#[serde(remote = "Handle", deny_unknown_fields)]
pub(super) struct HandleTable {
    length_m: f64,
    top_diameter_m: f64,
    shoulder_diameter_m: f64,
    #[serde(deserialize_with = "same_at_both_ends")]
    oval: [f64; 2],
    density_kg_m3: f64,
    splice_m: f64,
    twine_m: f64,
    twine_kg_m3: f64,
    grips: u32,
    grip_m: f64,
    grip_length_m: f64,
    grip_kg_m3: f64,
}

#[derive(Deserialize)]
#[serde(remote = "Blade", deny_unknown_fields)]
pub(super) struct BladeTable {
    length_m: f64,
    face_m: f64,
    /// The tables' blades are straight.
    #[serde(skip)]
    bow_m: f64,
    density_kg_m3: f64,
    #[serde(deserialize_with = "rows")]
    stations: Vec<Station>,
    face_cover_kg_m2: f64,
    toe_guard_m: f64,
    toe_guard_kg_m3: f64,
}

fn same_at_both_ends<'de, D: Deserializer<'de>>(table: D) -> Result<[f64; 2], D::Error> {
    f64::deserialize(table).map(|it| [it; 2])
}

fn rows<'de, D: Deserializer<'de>>(table: D) -> Result<Vec<Station>, D::Error> {
    let rows = Vec::<[f64; 6]>::deserialize(table)?;
    Ok(rows.into_iter().map(Station::of_row).collect())
}

//! Tables shipped with the program: trade sizes and the limits of the Laws.

use serde::Deserialize;

use crate::bat::blade::{Blade, Station};
use crate::bat::handle::Handle;
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
    let table: SizesTable = read("sizes.ron", SIZES)?;
    let adult = table.adult.into();
    let craft: Craft = table.craft.into();
    Ok(table.sizes.into_iter().map(|row| Size::scaled(&adult, row.into(), craft)).collect())
}

/// Size limits of the edition of the Laws in use.
pub fn limits() -> Result<Limits, AssetFault> {
    let table: LawsTable = read("laws.ron", LAWS)?;
    Ok(Limits {
        edition: table.edition,
        length_m: table.length_m,
        width_m: table.width_m,
        depth_m: table.depth_m,
        edge_m: table.edge_m,
        handle_share: table.handle_share,
        rubber_share: table.rubber_share,
        rubber_share_c_d: table.rubber_share_c_d,
    })
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct LawsTable {
    #[serde(rename = "source")]
    _source: String,
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
    adult: ShapeTable,
    craft: CraftTable,
    sizes: Vec<RowTable>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct ShapeTable {
    handle: HandleTable,
    blade: BladeTable,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct HandleTable {
    length_m: f64,
    top_diameter_m: f64,
    shoulder_diameter_m: f64,
    oval: f64,
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
#[serde(deny_unknown_fields)]
struct BladeTable {
    length_m: f64,
    face_m: f64,
    density_kg_m3: f64,
    face_cover_kg_m2: f64,
    toe_guard_m: f64,
    toe_guard_kg_m3: f64,
    stations: Vec<(f64, f64, f64, f64, f64, f64)>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct CraftTable {
    density_kg_m3: (f64, f64),
    density_share: f64,
    greatest_taper: f64,
    swell_per_taper: f64,
    greatest_swell_move: f64,
    ends_spread: f64,
    handle_spread: f64,
    thinnest_edge_m: f64,
    swell_from_toe: (f64, f64),
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
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

impl From<ShapeTable> for BatShape {
    fn from(table: ShapeTable) -> Self {
        let h = table.handle;
        let b = table.blade;
        Self {
            handle: Handle {
                length_m: h.length_m,
                top_diameter_m: h.top_diameter_m,
                shoulder_diameter_m: h.shoulder_diameter_m,
                oval: [h.oval; 2],
                density_kg_m3: h.density_kg_m3,
                splice_m: h.splice_m,
                twine_m: h.twine_m,
                twine_kg_m3: h.twine_kg_m3,
                grips: h.grips,
                grip_m: h.grip_m,
                grip_length_m: h.grip_length_m,
                grip_kg_m3: h.grip_kg_m3,
            },
            blade: Blade {
                length_m: b.length_m,
                face_m: b.face_m,
                bow_m: 0.0,
                density_kg_m3: b.density_kg_m3,
                face_cover_kg_m2: b.face_cover_kg_m2,
                toe_guard_m: b.toe_guard_m,
                toe_guard_kg_m3: b.toe_guard_kg_m3,
                stations: b.stations.into_iter().map(|it| Station::of_row(it.into())).collect(),
            },
        }
    }
}

impl From<CraftTable> for Craft {
    fn from(table: CraftTable) -> Self {
        Self {
            density_kg_m3: table.density_kg_m3.into(),
            density_share: table.density_share,
            greatest_taper: table.greatest_taper,
            swell_per_taper: table.swell_per_taper,
            greatest_swell_move: table.greatest_swell_move,
            ends_spread: table.ends_spread,
            handle_spread: table.handle_spread,
            thinnest_edge_m: table.thinnest_edge_m,
            swell_from_toe: table.swell_from_toe.into(),
        }
    }
}

impl From<RowTable> for SizeRow {
    fn from(table: RowTable) -> Self {
        Self {
            name: table.name,
            also: table.also,
            length_m: table.length_m,
            handle_m: table.handle_m,
            width_m: table.width_m,
            thickness: table.thickness,
            handle_diameter_m: table.handle_diameter_m,
            stature_from_m: table.stature_from_m,
            stature_to_m: table.stature_to_m,
            usual_kg: table.usual_kg,
        }
    }
}

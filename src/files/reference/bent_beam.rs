//! Free bending of a wedge and of a bat, by other ways than ours.

use serde::Deserialize;

use crate::bat::shape::BatShape;
use crate::bat::stiffness::Moduli;
use crate::files::shape_table::ShapeTable;

/// A beam of one width whose thickness runs straight.
#[derive(Clone, Debug, Deserialize, PartialEq)]
#[serde(deny_unknown_fields)]
pub struct Wedge {
    pub length_m: f64,
    pub width_m: f64,
    /// At either end.
    pub thickness_m: [f64; 2],
    pub modulus_pa: f64,
    pub density_kg_m3: f64,
    /// Lowest frequencies with both ends free.
    pub frequency_hz: Vec<f64>,
}

/// Wedge and bat with the outside's figures.
#[derive(Clone, Debug, Deserialize, PartialEq)]
#[serde(deny_unknown_fields)]
pub struct BentBeam {
    /// Program and version.
    pub made_by: String,
    pub wedge: Wedge,
    /// The bat.
    #[serde(with = "ShapeTable")]
    pub shape: BatShape,
    #[serde(with = "ModuliTable")]
    pub moduli: Moduli,
    /// The bat's lowest frequencies.
    pub frequency_hz: Vec<f64>,
    /// Their nodes from the top of the handle.
    pub nodes_m: Vec<Vec<f64>>,
}

#[derive(Deserialize)]
#[serde(remote = "Moduli", deny_unknown_fields)]
struct ModuliTable {
    willow_pa: f64,
    cane_pa: f64,
}

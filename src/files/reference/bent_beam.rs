//! Free bending of a wedge and of a bat, by other ways than ours.

use serde::Deserialize;

use crate::bat::blade::{Blade, Station};
use crate::bat::handle::Handle;
use crate::bat::shape::BatShape;
use crate::bat::stiffness::Moduli;

/// A beam of one width whose thickness runs straight.
#[derive(Clone, Debug, Deserialize, PartialEq)]
#[serde(deny_unknown_fields)]
pub struct Wedge {
    /// Length, m.
    pub length_m: f64,
    /// Width, m.
    pub width_m: f64,
    /// Thickness at either end, m.
    pub thickness_m: [f64; 2],
    /// Stiffness, Pa.
    pub modulus_pa: f64,
    /// Density, kg/m³.
    pub density_kg_m3: f64,
    /// Lowest frequencies with both ends free, Hz.
    pub frequency_hz: Vec<f64>,
}

/// Wedge and bat with the outside's figures.
#[derive(Clone, Debug, PartialEq)]
pub struct BentBeam {
    /// Program and version.
    pub made_by: String,
    /// The wedge.
    pub wedge: Wedge,
    /// The bat.
    pub shape: BatShape,
    /// Its stiffness.
    pub moduli: Moduli,
    /// Its lowest frequencies, Hz.
    pub frequency_hz: Vec<f64>,
    /// Their nodes from the top of the handle, m.
    pub nodes_m: Vec<Vec<f64>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Table {
    made_by: String,
    wedge: Wedge,
    bat: BatTable,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct BatTable {
    handle: HandleTable,
    blade: BladeTable,
    willow_pa: f64,
    cane_pa: f64,
    frequency_hz: Vec<f64>,
    nodes_m: Vec<Vec<f64>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct HandleTable {
    length: f64,
    top: f64,
    shoulder: f64,
    oval: f64,
    rho: f64,
    splice: f64,
    twine: f64,
    twine_rho: f64,
    grip: f64,
    grip_length: f64,
    grip_rho: f64,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct BladeTable {
    length: f64,
    face: f64,
    rho: f64,
    stations: Vec<[f64; 6]>,
}

impl From<Table> for BentBeam {
    fn from(it: Table) -> Self {
        let (h, b) = (it.bat.handle, it.bat.blade);
        let handle = Handle {
            splice_m: h.splice,
            twine_m: h.twine,
            twine_kg_m3: h.twine_rho,
            grips: 1,
            grip_m: h.grip,
            grip_length_m: h.grip_length,
            grip_kg_m3: h.grip_rho,
            ..Handle::bare(h.length, [h.top, h.shoulder], [h.oval; 2], h.rho)
        };
        let blade = Blade {
            length_m: b.length,
            face_m: b.face,
            bow_m: 0.0,
            density_kg_m3: b.rho,
            stations: b.stations.into_iter().map(Station::of_row).collect(),
            face_cover_kg_m2: 0.0,
            toe_guard_m: 0.0,
            toe_guard_kg_m3: 0.0,
        };
        Self {
            made_by: it.made_by,
            wedge: it.wedge,
            shape: BatShape { handle, blade },
            moduli: Moduli { willow_pa: it.bat.willow_pa, cane_pa: it.bat.cane_pa },
            frequency_hz: it.bat.frequency_hz,
            nodes_m: it.bat.nodes_m,
        }
    }
}

//! Mass properties of a blade and a handle by a mesh program.

use serde::Deserialize;

use crate::bat::blade::{Blade, Station};
use crate::bat::handle::Handle;

/// One solid as both sides describe it, and what the mesh program made of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Meshed {
    /// Mass, kg.
    pub mass_kg: f64,
    /// Centre of mass from the top of the handle, in B, m.
    pub com_B: [f64; 3],
    /// Tensor of inertia about the centre of mass, in B, kg m².
    pub I_Com_B: [[f64; 3]; 3],
}

/// Blade and handle with the outside figures.
#[derive(Clone, Debug, PartialEq)]
pub struct LoftedBlade {
    /// Program and version.
    pub made_by: String,
    /// Blade, bare.
    pub blade: Blade,
    /// Its shoulder from the top of the handle, m.
    pub shoulder_m: f64,
    /// Handle, bare.
    pub handle: Handle,
    /// The blade's figures.
    pub meshed_blade: Meshed,
    /// The handle's figures.
    pub meshed_handle: Meshed,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Table {
    made_by: String,
    blade: BladeTable,
    handle: HandleTable,
    blade_result: MeshedTable,
    handle_result: MeshedTable,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct BladeTable {
    shoulder_m: f64,
    length_m: f64,
    face_m: f64,
    density_kg_m3: f64,
    stations: Vec<[f64; 6]>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct HandleTable {
    length_m: f64,
    top_diameter_m: f64,
    shoulder_diameter_m: f64,
    oval: f64,
    density_kg_m3: f64,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct MeshedTable {
    mass_kg: f64,
    com_m: [f64; 3],
    inertia_kg_m2: [[f64; 3]; 3],
}

impl From<MeshedTable> for Meshed {
    fn from(it: MeshedTable) -> Self {
        Self { mass_kg: it.mass_kg, com_B: it.com_m, I_Com_B: it.inertia_kg_m2 }
    }
}

impl From<Table> for LoftedBlade {
    fn from(it: Table) -> Self {
        let (b, h) = (it.blade, it.handle);
        Self {
            made_by: it.made_by,
            blade: Blade {
                length_m: b.length_m,
                face_m: b.face_m,
                bow_m: 0.0,
                density_kg_m3: b.density_kg_m3,
                stations: b.stations.into_iter().map(Station::of_row).collect(),
                face_cover_kg_m2: 0.0,
                toe_guard_m: 0.0,
                toe_guard_kg_m3: 0.0,
            },
            shoulder_m: b.shoulder_m,
            handle: Handle::bare(
                h.length_m,
                [h.top_diameter_m, h.shoulder_diameter_m],
                [h.oval; 2],
                h.density_kg_m3,
            ),
            meshed_blade: it.blade_result.into(),
            meshed_handle: it.handle_result.into(),
        }
    }
}

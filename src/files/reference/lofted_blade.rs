//! Mass properties of a blade and a handle by a mesh program.

use serde::Deserialize;

use crate::bat::blade::Blade;
use crate::bat::handle::Handle;
use crate::files::shape_table::{BladeTable, HandleTable};

/// What the mesh program made of a solid.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq)]
#[serde(deny_unknown_fields)]
pub struct Meshed {
    pub mass_kg: f64,
    /// From the top of the handle, m.
    #[serde(rename = "com_m")]
    pub com_B: [f64; 3],
    /// kg m².
    #[serde(rename = "inertia_kg_m2")]
    pub I_Com_B: [[f64; 3]; 3],
}

/// Blade and handle, both bare, with the outside figures.
#[derive(Clone, Debug, Deserialize, PartialEq)]
#[serde(deny_unknown_fields)]
pub struct LoftedBlade {
    /// Program and version.
    pub made_by: String,
    /// The blade's shoulder from the top of the handle.
    pub shoulder_m: f64,
    #[serde(with = "BladeTable")]
    pub blade: Blade,
    #[serde(with = "HandleTable")]
    pub handle: Handle,
    pub meshed_blade: Meshed,
    pub meshed_handle: Meshed,
}

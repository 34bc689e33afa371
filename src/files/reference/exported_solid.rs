//! The solid that is exported for printing, read and integrated by a mesh program.

use serde::Deserialize;

/// Every case with the outside figures.
#[derive(Clone, Debug, Deserialize, PartialEq)]
#[serde(deny_unknown_fields)]
pub struct ExportedSolids {
    /// Program and version.
    pub made_by: String,
    /// One described bat each.
    pub cases: Vec<Exported>,
}

/// One exported bat.
#[derive(Clone, Debug, Deserialize, PartialEq)]
#[serde(deny_unknown_fields)]
pub struct Exported {
    pub name: String,
    /// What was put over the built-in described bat, as after `--set`.
    pub sets: Vec<String>,
    /// What the mesh program found: blade, handle.
    pub bodies: Vec<Body>,
}

/// One closed body of the file, in a stuff of density 1.
#[derive(Clone, Debug, Deserialize, PartialEq)]
#[serde(deny_unknown_fields)]
pub struct Body {
    /// Closed, every triangle turned outward, none flat.
    pub watertight: bool,
    pub triangles: usize,
    pub volume_m3: f64,
    /// Centre from the top of the handle, in B, m.
    #[serde(rename = "com_m")]
    pub com_B_m: [f64; 3],
    /// Tensor of inertia about the centre, in B, m⁵.
    #[serde(rename = "inertia_m5")]
    pub I_Com_B_m5: [[f64; 3]; 3],
}

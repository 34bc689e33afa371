//! What pressing the face does to where the wood lies: hardly anything.
//!
//! The roller pushes the face back and squeezes the wood behind it; no wood is lost. The density above the
//! unpressed falls off straight from the face to where the pressing ends. What pressing is done for (a face
//! that lasts, how the ball leaves it) is not computed: see [`PRACTICE`].

use crate::bat::blade::Station;
use crate::bat::lofted_solid::GAUSS_4;
use crate::bat::shape::BatShape;

/// Density of the face above the unpressed wood when none is given, a share. Assumption.
pub const USUAL_DENSER: f64 = 0.4;

/// What is said of pressing in the trade, and not computed here. Common practice, no source.
pub const PRACTICE: &str = "A harder press makes a face that lasts longer and is deader; a softer one is livelier and dents sooner: common practice, no source, and not computed here";

/// A face as it was pressed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pressing {
    /// How far the face was pushed back, m.
    pub depth_m: f64,
    /// Density of the face itself above the unpressed wood, a share.
    pub denser: f64,
}

/// What it does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pressed {
    /// Wood that is denser than before, m behind the pressed face: `2 depth/denser`, so that no wood is lost.
    pub layer_m: f64,
    /// Density of the face itself, kg/m³.
    pub face_kg_m3: f64,
    /// Move of the bat's centre of mass along z, m; below 0 to the back.
    pub com_change_m: f64,
    /// Change of the swing moment, kg m².
    pub swing_moment_change_kg_m2: f64,
}

/// Why a pressing cannot be.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum PressingFault {
    /// Not above zero, or not a number.
    #[error("the face is pushed back by {depth_m} m: it must be above zero")]
    Depth {
        /// What was given.
        depth_m: f64,
    },
    /// Denser than the wood of the cells themselves, or not denser at all.
    #[error(
        "a face {:.0} % denser than the willow cannot be: give more than 0 and at most {:.0} %",
        100.0 * .denser, 100.0 * .most
    )]
    Denser {
        /// What was given.
        denser: f64,
        /// The most there can be, a share.
        most: f64,
    },
    /// It would reach through the edges.
    #[error(
        "pressed by {depth_m} m to a face {:.0} % denser, the wood would be squeezed {layer_m:.4} m deep, more than the edges are thick ({edge_m:.4} m)",
        100.0 * .denser
    )]
    ThroughTheEdges {
        /// What was given.
        depth_m: f64,
        /// What was given.
        denser: f64,
        /// Where the pressing would end, m behind the face.
        layer_m: f64,
        /// Thinnest edge of the blade, m.
        edge_m: f64,
    },
}

/// Density of wood without its pores, kg/m³. Source: any text on wood (from memory, high).
const CELL_WALL_KG_M3: f64 = 1500.0;

impl Pressing {
    /// Where the pressing ends, m behind the pressed face.
    pub fn layer_m(self) -> f64 {
        2.0 * self.depth_m / self.denser
    }

    /// Presses the whole face of a shape: from its shape as made, with the face where it now is, against the
    /// same wood unpressed.
    pub fn press(self, shape: &BatShape) -> Result<Pressed, PressingFault> {
        let blade = &shape.blade;
        let Self { depth_m, denser } = self;
        if !(depth_m.is_finite() && depth_m > 0.0) {
            return Err(PressingFault::Depth { depth_m });
        }
        let most = CELL_WALL_KG_M3 / blade.density_kg_m3 - 1.0;
        if !(denser > 0.0 && denser <= most) {
            return Err(PressingFault::Denser { denser, most });
        }
        let (layer_m, edge_m) = (self.layer_m(), blade.thinnest_edge_m());
        if layer_m > edge_m {
            return Err(PressingFault::ThroughTheEdges { depth_m, denser, layer_m, edge_m });
        }
        let mut moved = Moved::default();
        for (a, b) in blade.stations.iter().zip(blade.stations.iter().skip(1)) {
            let length_m = (b.from_shoulder - a.from_shoulder) * blade.length_m;
            for (t, weight) in GAUSS_4 {
                let station = a.towards(b, t);
                let across = self.across(&station, blade.face_at_m(station.from_shoulder));
                moved.z_m3 += weight * length_m * across.z_m3;
                moved.zz_m4 += weight * length_m * across.zz_m4;
            }
        }
        let mass_kg = shape.mass_moments().mass_kg;
        Ok(Pressed {
            layer_m,
            face_kg_m3: blade.density_kg_m3 * (1.0 + denser),
            com_change_m: blade.density_kg_m3 * moved.z_m3 / mass_kg,
            swing_moment_change_kg_m2: blade.density_kg_m3 * moved.zz_m4,
        })
    }

    /// Change of the moments of a section, for each metre along the bat and each kg/m³.
    fn across(self, station: &Station, face_m: f64) -> Moved {
        let mut moved = Moved::default();
        for (u, weight) in GAUSS_4 {
            let (face, _) = station.face_and_back_m(face_m, u);
            let column = self.column(face);
            moved.z_m3 += weight * station.width_m * column.z_m3;
            moved.zz_m4 += weight * station.width_m * column.zz_m4;
        }
        moved
    }

    /// The same of a column behind one point of the pressed face at z = `face_m`; with h the layer, d the
    /// depth and `p h = 2 d`, so that the column holds the wood of `h + d` unpressed.
    fn column(self, face_m: f64) -> Moved {
        let (d, h, p) = (self.depth_m, self.layer_m(), self.denser);
        let (pressed, unpressed, end) = (face_m, face_m + d, face_m - h);
        let cube = |it: f64| it * it * it;
        let before = (cube(unpressed) - cube(end)) / 3.0;
        let even = (cube(pressed) - cube(end)) / 3.0;
        let wedge = p * (0.5 * pressed * pressed * h - pressed * h * h / 3.0 + h * h * h / 12.0);
        Moved { z_m3: -d * (0.5 * d + h / 3.0), zz_m4: even + wedge - before }
    }
}

/// First and second moment along z that pressing moves, for each kg/m³ of unpressed wood.
#[derive(Clone, Copy, Debug, Default)]
struct Moved {
    z_m3: f64,
    zz_m4: f64,
}

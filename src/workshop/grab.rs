//! What can be taken hold of on the bat and dragged.

use crate::bat::blade::{Blade, HOLLOW, Station};
use crate::bat::shape::BatShape;
use crate::frames::DVec3;

/// A point of the bat that a figure of its description moves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grab {
    /// Its field in the described bat: `blade.edge`.
    pub path: &'static str,
    /// What it is called.
    pub name: &'static str,
    /// Where it is, m, B.
    pub at_B: DVec3,
    /// How it moves for each unit of the figure, B: m for each metre, or for all of the hollowing.
    pub way_B: DVec3,
    /// The figure now, SI.
    pub value: f64,
    /// Least and most that it can be dragged to.
    pub range: [f64; 2],
    /// Whether it is a share; else a length.
    pub is_share: bool,
}

/// Least of a length that is dragged, m.
const LEAST_M: f64 = 0.001;

impl Grab {
    /// The figure after the point was dragged on the screen by `drag`, `per_unit` being how far it goes for
    /// each unit of the figure; rounded to a tenth of a millimetre or half a percent. None where it runs along
    /// the line of sight.
    pub fn dragged(&self, from: f64, drag: [f64; 2], per_unit: [f64; 2]) -> Option<f64> {
        let square = per_unit[0] * per_unit[0] + per_unit[1] * per_unit[1];
        let by = (drag[0] * per_unit[0] + drag[1] * per_unit[1]) / square;
        let to = from + by;
        let ([least, most], step) = (self.range, if self.is_share { 0.005 } else { 1e-4 });
        let to = (to / step).round() * step;
        to.is_finite().then(|| to.clamp(least, most))
    }
}

/// Everything that can be taken hold of.
pub fn grabs(shape: &BatShape) -> Vec<Grab> {
    let (blade, handle) = (&shape.blade, &shape.handle);
    let shoulder_m = handle.length_m;
    let x = |at: &Station| shoulder_m + blade.length_m * at.from_shoulder;
    let length = |path, name, at_B, way_B, value| {
        let range = [LEAST_M, f64::INFINITY];
        Grab { path, name, at_B, way_B, value, range, is_share: false }
    };
    let mut out = Vec::new();
    let face_m = |at: &Station| blade.face_at_m(at.from_shoulder);
    if let Some(swell) = blade.deepest() {
        let spine = DVec3::new(x(swell), 0.0, face_m(swell) - swell.depth_m);
        out.push(length("blade.depth", "spine height", spine, -DVec3::Z, swell.depth_m));
        let from_toe_m = blade.from_toe_m(swell);
        let ahead = DVec3::new(0.035, 0.0, 0.0);
        out.push(length("blade.swell", "swell", spine - ahead, -DVec3::X, from_toe_m));
        out.push(hollow(blade, swell, x(swell)));
        let face_edge = DVec3::new(x(swell), -0.5 * swell.width_m, face_m(swell) - swell.camber_m);
        out.push(length(
            "blade.camber",
            "camber of the face",
            face_edge,
            -DVec3::Z,
            swell.camber_m,
        ));
        // Figures of the whole blade: at the swell all of them move by its own share.
        let (edge_m, width_m) = (blade.thickest_edge_m(), blade.width_m());
        let half_y = DVec3::new(x(swell), 0.5 * swell.width_m, face_m(swell) - swell.camber_m);
        let corner = half_y - DVec3::new(0.0, 0.0, swell.edge_m);
        out.push(length("blade.edge", "edge", corner, -DVec3::Z * (swell.edge_m / edge_m), edge_m));
        let side = half_y - DVec3::new(0.0, 0.0, 0.5 * swell.edge_m);
        let wider = DVec3::Y * (0.5 * swell.width_m / width_m);
        out.push(length("blade.width", "width", side, wider, width_m));
    }
    if let Some(toe) = blade.stations.last() {
        let spine = DVec3::new(x(toe), 0.0, face_m(toe) - toe.depth_m);
        out.push(length("blade.toe_depth", "depth at the toe", spine, -DVec3::Z, toe.depth_m));
        let end = DVec3::new(x(toe), 0.0, face_m(toe) - 0.5 * toe.depth_m);
        out.push(length("blade.length", "blade length", end, DVec3::X, blade.length_m));
    }
    if let Some(root) = blade.stations.first() {
        let side = DVec3::new(x(root), 0.5 * root.width_m, face_m(root) - 0.5 * root.depth_m);
        out.push(length("blade.shoulder_width", "shoulders", side, 0.5 * DVec3::Y, root.width_m));
    }
    let at_m = handle.bottom_hand_m();
    let half_m = 0.5 * handle.diameter_over_grip_m(at_m);
    let side = DVec3::new(at_m, half_m, 0.0);
    out.push(length("handle.diameter", "handle", side, 0.5 * DVec3::Y, 2.0 * half_m));
    out
}

/// Half way from edge to spine, on the back.
fn hollow(blade: &Blade, swell: &Station, x_m: f64) -> Grab {
    let (_, back_m) = swell.face_and_back_m(blade.face_at_m(swell.from_shoulder), 0.5);
    // There the rise from edge to spine falls by a quarter of it for all of the hollowing.
    let rise_m = swell.depth_m - swell.camber_m - swell.edge_m;
    Grab {
        path: "blade.hollow",
        name: "hollow of the back",
        at_B: DVec3::new(x_m, -0.25 * swell.width_m, back_m),
        way_B: DVec3::new(0.0, 0.0, 0.25 * rise_m),
        value: swell.hollow,
        range: HOLLOW,
        is_share: true,
    }
}

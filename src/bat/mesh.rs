//! The surface of a shape as closed shells of triangles.

use super::blade::{Blade, Station};
use super::handle::Handle;
use super::shape::BatShape;
use crate::frames::DVec3;

/// One closed shell, its triangles counter-clockwise seen from outside.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shell {
    /// What it is: "blade", "handle".
    pub name: &'static str,
    /// Points, m, in frame B.
    pub points_B: Vec<DVec3>,
    /// Three points each.
    pub triangles: Vec<[u32; 3]>,
}

/// Points across half a face, and across half a back.
pub const ACROSS: usize = 24;
/// Rings from one station to the next.
const ALONG: usize = 6;
/// Points round a handle.
const AROUND: usize = 96;
/// Rings along a handle, or along each of its parts, under the grips and below them.
const HANDLE_RINGS: usize = 12;
/// Steps and lengths under this are none, m: in a file of four-byte floats both rings would be one.
const NEAR_M: f64 = 1e-6;

impl Shell {
    /// Joins rings of one length to a tube and closes both ends, each by a strip from one half of its ring
    /// to the other. Rings run counter-clockwise seen from the first ring's side.
    fn tube(name: &'static str, rings: &[Vec<DVec3>]) -> Self {
        let n = rings.first().map_or(0, Vec::len);
        let points_B = rings.concat();
        let mut triangles = Vec::new();
        let at = |ring: usize, k: usize| (ring * n + k % n) as u32;
        for ring in 1..rings.len() {
            for k in 0..n {
                let (a, b) = (at(ring - 1, k), at(ring - 1, k + 1));
                let (c, d) = (at(ring, k), at(ring, k + 1));
                triangles.extend([[a, c, b], [b, c, d]]);
            }
        }
        for (ring, turned) in [(0, false), (rings.len().saturating_sub(1), true)] {
            for k in 0..n / 2 - 1 {
                let (a, b) = (at(ring, k), at(ring, k + 1));
                let (c, d) = (at(ring, n - 1 - k), at(ring, n - 2 - k));
                let lid = [[a, b, c], [b, d, c]];
                triangles.extend(if turned { lid.map(|[a, b, c]| [a, c, b]) } else { lid });
            }
        }
        Self { name, points_B, triangles }
    }

    /// Volume by the divergence theorem, m³.
    pub fn volume_m3(&self) -> f64 {
        let six: f64 = self.corners().map(|[a, b, c]| a.dot(b.cross(c))).sum();
        six / 6.0
    }

    /// Area of the surface, m².
    pub fn area_m2(&self) -> f64 {
        let twice: f64 =
            self.corners().map(|[a, b, c]| libm::sqrt((b - a).cross(c - a).length_squared())).sum();
        0.5 * twice
    }

    /// Corners of each triangle, m.
    pub fn corners(&self) -> impl Iterator<Item = [DVec3; 3]> + '_ {
        self.triangles.iter().map(|it| it.map(|k| self.points_B[k as usize]))
    }
}

/// Blade and handle, grips on. They touch at the shoulder; the splice lies inside the blade, and the toe guard under
/// it is left out.
pub fn shells(shape: &BatShape) -> [Shell; 2] {
    [blade(&shape.blade, shape.handle.length_m), handle(&shape.handle)]
}

fn blade(blade: &Blade, shoulder_m: f64) -> Shell {
    let mut sections: Vec<Station> = blade.stations.first().copied().into_iter().collect();
    for it in blade.stations.windows(2) {
        sections.extend((1..=ALONG).map(|n| it[0].towards(&it[1], n as f64 / ALONG as f64)));
    }
    let rings: Vec<Vec<DVec3>> =
        sections.iter().map(|it| outline(blade, shoulder_m, it, ACROSS).concat()).collect();
    Shell::tube("blade", &rings)
}

/// The outline of a section: points across its face, from edge to edge, and across its back, back again, so many
/// for each half; in B, m. The shoulder lies `shoulder_m` from the top of the handle.
pub fn outline(
    blade: &Blade,
    shoulder_m: f64,
    station: &Station,
    across: usize,
) -> [Vec<DVec3>; 2] {
    let x_m = shoulder_m + station.from_shoulder * blade.length_m;
    let half_m = 0.5 * station.width_m;
    let face_m = blade.face_at_m(station.from_shoulder);
    let at = |n: usize| {
        let share = n as f64 / across as f64 - 1.0;
        let (face, back) = station.face_and_back_m(face_m, 1.0 - share.abs());
        [face, back].map(|z_m| DVec3::new(x_m, half_m * share, z_m))
    };
    let face = (0..=2 * across).map(|n| at(n)[0]).collect();
    let back = (0..=2 * across).rev().map(|n| at(n)[1]).collect();
    [face, back]
}

fn handle(handle: &Handle) -> Shell {
    let circle = |x: f64, cover_m: f64| -> Vec<DVec3> {
        let [half_y_m, half_z_m] = handle.half_axes_m(x).map(|it| it + cover_m);
        let point = |k: usize| {
            // From −y over +z, as the blade's rings run; half a step on, so that a lid's strips pair up.
            let turn =
                std::f64::consts::PI - std::f64::consts::TAU * (k as f64 + 0.5) / AROUND as f64;
            let (sin, cos) = libm::sincos(turn);
            DVec3::new(x, half_y_m * cos, half_z_m * sin)
        };
        (0..AROUND).map(point).collect()
    };
    let (grip_m, shoulder_m) = (handle.grip_length_m, handle.length_m);
    let (gripped_m, bare_m) = (handle.cover_m(), handle.twine_m);
    // Each length under one cover, from, to and how thick: a ring of its own on either side of a step, none without.
    let lengths = if gripped_m - bare_m < NEAR_M || grip_m < NEAR_M {
        vec![(0.0, shoulder_m, bare_m)]
    } else if shoulder_m - grip_m < NEAR_M {
        vec![(0.0, shoulder_m, gripped_m)]
    } else {
        vec![(0.0, grip_m, gripped_m), (grip_m, shoulder_m, bare_m)]
    };
    let rings: Vec<Vec<DVec3>> = lengths
        .into_iter()
        .flat_map(|(from, to, cover_m)| {
            let at = move |n: usize| from + (to - from) * n as f64 / HANDLE_RINGS as f64;
            (0..=HANDLE_RINGS).map(move |n| (at(n), cover_m))
        })
        .map(|(x, cover_m)| circle(x, cover_m))
        .collect();
    Shell::tube("handle", &rings)
}

//! The blade: stations along it, the cross-section at each, and what is glued to the willow.

use super::bow::Bow;
use super::lofted_solid::{GAUSS_4, MassMoments, Section};

/// Least and most hollow that a back is described with: fuller it bulges, hollower it turns up at the edge.
pub const HOLLOW: [f64; 2] = [-1.0, 1.5];

/// The blade at one place along it. Between stations every figure runs straight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Station {
    /// Place, as a share of the way from shoulder to toe.
    pub from_shoulder: f64,
    /// Width, m.
    pub width_m: f64,
    /// Thickness of the edges, m.
    pub edge_m: f64,
    /// Depth from the middle of the face to the spine, m.
    pub depth_m: f64,
    /// Hollowing of the back between edge and spine: 0 straight, 1 as hollow as a parabola that
    /// leaves the edge level, below 0 full.
    pub hollow: f64,
    /// Height of the middle of the face over its edges, m: 0 is a flat face.
    pub camber_m: f64,
}

impl Station {
    /// A row of a table: share from shoulder, width, edge, depth, hollow, camber.
    pub fn of_row([from_shoulder, width_m, edge_m, depth_m, hollow, camber_m]: [f64; 6]) -> Self {
        Self { from_shoulder, width_m, edge_m, depth_m, hollow, camber_m }
    }

    /// The station at the share `t` of the way to the next.
    pub fn towards(&self, next: &Self, t: f64) -> Self {
        let mix = |a: f64, b: f64| a + (b - a) * t;
        Self {
            from_shoulder: mix(self.from_shoulder, next.from_shoulder),
            width_m: mix(self.width_m, next.width_m),
            edge_m: mix(self.edge_m, next.edge_m),
            depth_m: mix(self.depth_m, next.depth_m),
            hollow: mix(self.hollow, next.hollow),
            camber_m: mix(self.camber_m, next.camber_m),
        }
    }

    /// Face and back, m along z of B, at the share `u` of the way from an edge (0) to the middle (1);
    /// `face_m` is where the middle of the face lies.
    pub fn face_and_back_m(&self, face_m: f64, u: f64) -> (f64, f64) {
        let face = face_m - self.camber_m * (1.0 - u) * (1.0 - u);
        let back_at_edge = face_m - self.camber_m - self.edge_m;
        let back_at_spine = face_m - self.depth_m;
        let rise = u * (1.0 - self.hollow) + u * u * self.hollow;
        (face, back_at_edge + (back_at_spine - back_at_edge) * rise)
    }

    /// Thinnest place of the section between edge and middle, m; below nought where the back comes out
    /// of the face. Thickness is a parabola in u.
    pub fn thinnest_m(&self) -> f64 {
        let thickness = |u: f64| {
            let (face, back) = self.face_and_back_m(0.0, u);
            face - back
        };
        let (edge, half, middle) = (thickness(0.0), thickness(0.5), thickness(1.0));
        let (slope, bend) = (4.0 * half - 3.0 * edge - middle, 2.0 * (edge + middle) - 4.0 * half);
        let turn = -slope / (2.0 * bend);
        let at_turn = if bend > 0.0 && (0.0..1.0).contains(&turn) { thickness(turn) } else { edge };
        edge.min(middle).min(at_turn)
    }

    /// Moments of the cross-section: face and back are parabolas in u, so that four Gauss points are
    /// exact in it.
    pub fn section(&self, density: f64, face_m: f64) -> Section {
        let half_m = 0.5 * self.width_m;
        let mut section = Section::default();
        for (u, weight) in GAUSS_4 {
            let (face, back) = self.face_and_back_m(face_m, u);
            let y = half_m * (1.0 - u);
            // both halves at once
            let w = 2.0 * weight * half_m * density;
            section.mass += w * (face - back);
            section.z += w * 0.5 * (face * face - back * back);
            section.yy += w * y * y * (face - back);
            section.zz += w * (face * face * face - back * back * back) / 3.0;
        }
        section
    }
}

/// A blade as its maker describes it.
#[derive(Clone, Debug, PartialEq)]
pub struct Blade {
    /// From shoulder to toe, m: of the wood, without the toe guard under it.
    pub length_m: f64,
    /// Height of the middle of the face over the axis of the handle at shoulder and toe, m.
    pub face_m: f64,
    /// Bow: height of the face's arc along the blade, m; shoulder and toe stand so far before the middle. 0 is
    /// straight. The chord lies along the handle (assumption).
    pub bow_m: f64,
    /// Density of the willow as played, oil and moisture included, kg/m³.
    pub density_kg_m3: f64,
    /// Stations from shoulder (0) to toe (1), in order.
    pub stations: Vec<Station>,
    /// Labels, face sheet and glue, kg for each m² of face.
    pub face_cover_kg_m2: f64,
    /// Thickness of the toe guard, m; 0 without. It is stuck under the toe, outside the wood, as wide and deep as
    /// the toe (assumption).
    pub toe_guard_m: f64,
    /// Density of the toe guard, kg/m³.
    pub toe_guard_kg_m3: f64,
}

impl Blade {
    /// Adds the blade, whose shoulder lies `shoulder_m` from the top of the handle.
    pub fn add_to(&self, moments: &mut MassMoments, shoulder_m: f64) {
        let place = |station: &Station| shoulder_m + self.length_m * station.from_shoulder;
        for (a, b) in self.stations.iter().zip(self.stations.iter().skip(1)) {
            moments.add_between(place(a), place(b), |t| {
                let station = a.towards(b, t);
                let face_m = self.face_at_m(station.from_shoulder);
                let willow = station.section(self.density_kg_m3, face_m);
                let cover = self.face_cover_kg_m2 * station.width_m;
                Section {
                    mass: willow.mass + cover,
                    z: willow.z + cover * face_m,
                    yy: willow.yy + cover * station.width_m * station.width_m / 12.0,
                    zz: willow.zz + cover * face_m * face_m,
                }
            });
        }
        if let Some(toe) = self.stations.last() {
            let toe_m = place(toe);
            moments.add_between(toe_m, toe_m + self.toe_guard_m, |_| {
                toe.section(self.toe_guard_kg_m3, self.face_m)
            });
        }
    }

    /// Height of the middle of the face over the axis of the handle, m, at a share of the way from shoulder to toe:
    /// an arc of a circle over its chord.
    pub fn face_at_m(&self, from_shoulder: f64) -> f64 {
        self.face_m - self.bow().behind_chord_m(from_shoulder)
    }

    /// The arc of the face along the blade.
    pub fn bow(&self) -> Bow {
        Bow { chord_m: self.length_m, sagitta_m: self.bow_m.max(0.0) }
    }

    /// The blade at a place between its stations, as a share of the way from shoulder to toe; none of a
    /// blade without stations.
    pub fn at(&self, from_shoulder: f64) -> Option<Station> {
        let next = self.stations.iter().position(|it| it.from_shoulder >= from_shoulder);
        match next {
            None => self.stations.last().copied(),
            Some(0) => self.stations.first().copied(),
            Some(n) => {
                let (a, b) = (&self.stations[n - 1], &self.stations[n]);
                let t = (from_shoulder - a.from_shoulder) / (b.from_shoulder - a.from_shoulder);
                Some(a.towards(b, t))
            }
        }
    }

    /// The deepest station: the swell.
    pub fn deepest(&self) -> Option<&Station> {
        self.stations.get(self.deepest_index()?)
    }

    /// Thickest edge, m.
    pub fn thickest_edge_m(&self) -> f64 {
        self.stations.iter().map(|it| it.edge_m).fold(0.0, f64::max)
    }

    /// Thinnest edge, m.
    pub fn thinnest_edge_m(&self) -> f64 {
        self.stations.iter().map(|it| it.edge_m).fold(f64::INFINITY, f64::min)
    }

    /// Greatest width, m.
    pub fn width_m(&self) -> f64 {
        self.stations.iter().map(|it| it.width_m).fold(0.0, f64::max)
    }
}

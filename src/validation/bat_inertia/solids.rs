//! Solids whose mass properties are known in closed form.

use std::f64::consts::PI;

use crate::bat::blade::{Blade, Station};
use crate::bat::handle::Handle;
use crate::bat::lofted_solid::{MassMoments, Section};
use crate::validation::{Accept, CheckFault, Checked, Row};

/// Exact to rounding.
const EXACT: Accept = Accept::Within(1e-12);
/// Density of the solids, kg/m³.
const DENSITY: f64 = 400.0;

/// Mass, centre along the bat, and moments about the centre of mass (x, y, z).
struct Exact {
    solid: &'static str,
    source: &'static str,
    mass_kg: f64,
    centre_m: f64,
    moments_kg_m2: [f64; 3],
}

pub(super) fn check() -> Result<Checked, CheckFault> {
    Ok(vec![block(), prism(), cylinder(), ellipsoid_cut()].into())
}

impl Exact {
    fn row(&self, ours: &MassMoments) -> Row {
        let I = ours.I_Com_B();
        let [x, y, z] = self.moments_kg_m2;
        let largest = [
            (ours.mass_kg, self.mass_kg),
            (ours.com_B().x, self.centre_m),
            (I.x_axis.x, x),
            (I.y_axis.y, y),
            (I.z_axis.z, z),
        ]
        .iter()
        .map(|(ours, exact)| (ours / exact - 1.0).abs())
        .fold(0.0, f64::max);
        let what = format!("{}: largest error of mass, balance and three moments", self.solid);
        Row::compared(what, self.source, "share", 0.0, largest, EXACT)
    }
}

/// A blade of one cross-section, 0.5 m long, its shoulder 0.3 m from the top of the handle.
fn bar(width_m: f64, edge_m: f64, depth_m: f64) -> MassMoments {
    let station = |from_shoulder| Station {
        from_shoulder,
        width_m,
        edge_m,
        depth_m,
        hollow: 0.0,
        camber_m: 0.0,
    };
    let blade = Blade {
        length_m: 0.5,
        face_m: 0.02,
        bow_m: 0.0,
        density_kg_m3: DENSITY,
        stations: vec![station(0.0), station(1.0)],
        face_cover_kg_m2: 0.0,
        toe_guard_m: 0.0,
        toe_guard_kg_m3: 0.0,
    };
    let mut moments = MassMoments::default();
    blade.add_to(&mut moments, 0.3);
    moments
}

fn block() -> Row {
    let (w, h, l) = (0.1, 0.04, 0.5);
    let m = DENSITY * w * h * l;
    let exact = Exact {
        solid: "box 0.1 × 0.04 × 0.5 m",
        source: "m(a² + b²)/12, any text on mechanics",
        mass_kg: m,
        centre_m: 0.55,
        moments_kg_m2: [
            m * (w * w + h * h) / 12.0,
            m * (l * l + h * h) / 12.0,
            m * (l * l + w * w) / 12.0,
        ],
    };
    exact.row(&bar(w, h, h))
}

/// An isosceles triangle drawn out: h²/18 across the height, w²/24 across the base.
fn prism() -> Row {
    let (w, h, l) = (0.1, 0.06, 0.5);
    let m = DENSITY * 0.5 * w * h * l;
    let (high, wide, long) = (h * h / 18.0, w * w / 24.0, l * l / 12.0);
    let exact = Exact {
        solid: "three-sided prism",
        source: "h²/18 and w²/24 of an isosceles triangle, any text on mechanics",
        mass_kg: m,
        centre_m: 0.55,
        moments_kg_m2: [m * (high + wide), m * (high + long), m * (wide + long)],
    };
    exact.row(&bar(w, 0.0, h))
}

fn cylinder() -> Row {
    let (a, b, l) = (0.015, 0.012, 0.3);
    let handle = Handle::bare(l, [2.0 * a, 2.0 * a], [b / a; 2], DENSITY);
    let mut moments = MassMoments::default();
    handle.add_to(&mut moments, DENSITY);
    let m = DENSITY * PI * a * b * l;
    let exact = Exact {
        solid: "oval cylinder",
        source: "m a²/4 of an ellipse, any text on mechanics",
        mass_kg: m,
        centre_m: 0.5 * l,
        moments_kg_m2: [
            0.25 * m * (a * a + b * b),
            m * (l * l / 12.0 + 0.25 * b * b),
            m * (l * l / 12.0 + 0.25 * a * a),
        ],
    };
    exact.row(&moments)
}

/// An ellipsoid about the handle's axis, cut at its middle and at six tenths of its half-length.
fn ellipsoid_cut() -> Row {
    let (a, b, c) = (0.25, 0.05, 0.03);
    let h = 0.6 * a;
    let mut moments = MassMoments::default();
    moments.add_between(0.0, h, |t| {
        let narrow = libm::sqrt(1.0 - t * t * h * h / (a * a));
        Section::ellipse(DENSITY, b * narrow, c * narrow)
    });
    // Integrals of (1 − x²/a²), with x and x², and of its square, from 0 to h.
    let area = DENSITY * PI * b * c;
    let (h2, a2) = (h * h, a * a);
    let m = area * h * (1.0 - h2 / (3.0 * a2));
    let first = area * h2 * (0.5 - h2 / (4.0 * a2));
    let second = area * h * h2 * (1.0 / 3.0 - h2 / (5.0 * a2));
    let round = 0.25 * area * h * (1.0 - 2.0 * h2 / (3.0 * a2) + h2 * h2 / (5.0 * a2 * a2));
    let centre_m = first / m;
    let along = second - m * centre_m * centre_m;
    let exact = Exact {
        solid: "cut of an ellipsoid",
        source: "its integrals in closed form, worked by hand",
        mass_kg: m,
        centre_m,
        moments_kg_m2: [round * (b * b + c * c), along + round * c * c, along + round * b * b],
    };
    exact.row(&moments)
}

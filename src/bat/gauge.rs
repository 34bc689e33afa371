//! The printed bat gauge: does the blade pass through it?
//!
//! A house-shaped opening: a base that is an arc, since a pressed face is curved, upright sides, and a roof
//! of two straight slopes up to the full depth.
//!
//! Source: Laws of Cricket (2017 Code), Appendix B, bat gauge: width 11.0 cm, sides 4.1 cm, full depth 6.8 cm, base an arc of
//! 30.5 cm radius (from memory); that the roof is straight is an assumption. The drawing was looked for and not found; an
//! umpires' page says of it that the gauge is a little larger than the sizes allowed, for coverings, and has room for a
//! curved face: undecided.

use super::blade::{Blade, Station};

/// Width of the opening, m.
pub const WIDTH_M: f64 = 0.110;
/// Height of its sides, m.
pub const SIDE_M: f64 = 0.041;
/// Height from the lowest point of its base to the ridge, m.
pub const DEPTH_M: f64 = 0.068;
/// Radius of its base, m.
pub const BASE_RADIUS_M: f64 = 0.305;

/// How a blade goes through the gauge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GaugeCheck {
    /// Least room left at any section, m; below nought where the blade sticks.
    pub room_m: f64,
    /// Where that is, m from the toe.
    pub tightest_from_toe_m: f64,
}

impl GaugeCheck {
    /// Whether it passes.
    pub fn passes(&self) -> bool {
        self.room_m >= 0.0
    }
}

/// Places across half a section at which it is compared with the opening.
const ACROSS: usize = 24;
/// Sections between two stations.
const BETWEEN: usize = 4;

/// Passes a blade through the gauge.
pub fn pass(blade: &Blade) -> GaugeCheck {
    let mut check = GaugeCheck { room_m: f64::INFINITY, tightest_from_toe_m: 0.0 };
    for (a, b) in blade.stations.iter().zip(blade.stations.iter().skip(1)) {
        for n in 0..=BETWEEN {
            let station = a.towards(b, n as f64 / BETWEEN as f64);
            let (room_m, _) = placed(&station);
            if room_m < check.room_m {
                check = GaugeCheck { room_m, tightest_from_toe_m: blade.from_toe_m(&station) };
            }
        }
    }
    check
}

/// Least room of one section in the opening, m, and where the middle of its face then lies over the lowest
/// point of the base, m.
pub fn placed(station: &Station) -> (f64, f64) {
    let half_m = 0.5 * station.width_m;
    // Depth into the opening from the lowest point of the base: face down, back to the roof.
    let (mut below, mut above) = (f64::INFINITY, f64::INFINITY);
    for n in 0..=ACROSS {
        let u = n as f64 / ACROSS as f64;
        let y = half_m * (1.0 - u);
        let (face, back) = station.face_and_back_m(0.0, u);
        below = below.min(-face - base_m(y));
        above = above.min(roof_m(y) + back);
    }
    // Sliding by s gives below + s and above − s: best halfway.
    let room_m = (0.5 * (below + above)).min(0.5 * WIDTH_M - half_m);
    (room_m, 0.5 * (above - below))
}

/// The opening, m: y from its middle, and height over the lowest point of its base.
pub fn opening_m() -> Vec<[f64; 2]> {
    let half_m = 0.5 * WIDTH_M;
    let base = (0..=2 * ACROSS).map(|n| {
        let y = half_m * (n as f64 / ACROSS as f64 - 1.0);
        [y, base_m(y)]
    });
    base.chain([[half_m, roof_m(half_m)], [0.0, DEPTH_M], [-half_m, roof_m(half_m)]]).collect()
}

/// Height of the base over its lowest point, y from the middle, m.
fn base_m(y: f64) -> f64 {
    BASE_RADIUS_M - libm::sqrt(BASE_RADIUS_M * BASE_RADIUS_M - y * y)
}

/// Height of the roof over the lowest point of the base, m.
fn roof_m(y: f64) -> f64 {
    let eaves_m = base_m(0.5 * WIDTH_M) + SIDE_M;
    let rise = 1.0 - (y / (0.5 * WIDTH_M)).abs();
    eaves_m + (DEPTH_M - eaves_m) * rise
}

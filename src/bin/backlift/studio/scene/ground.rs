//! The net: ground, creases and stumps after the Laws, and the ball's way.

use backlift::frames::DVec3;
use backlift::impact::ball::RADIUS_M;

use super::solid::{Ring, Solid, Tone};

/// Popping crease in front of the middle stump: 4 ft. Source: Laws of Cricket, Law 7 (from memory, high).
const CREASE_TO_STUMPS_M: f64 = 1.22;
/// Stumps: 28 in tall, 9 in wide. Source: Laws of Cricket, Law 8 (from memory, high).
const STUMPS_TALL_M: f64 = 0.7112;
const STUMPS_WIDE_M: f64 = 0.2286;
const STUMP_M: f64 = 0.018;
/// Width of the pitch: 10 ft. Source: Laws of Cricket, Law 6 (from memory, high).
const PITCH_WIDE_M: f64 = 3.05;
/// The batter stands across the crease: so far in front of the middle of the stance it lies (assumption).
const CREASE_AHEAD_M: f64 = 0.22;

const TURF: Tone = [0.62, 0.66, 0.56];
const TURF_DARK: Tone = [0.17, 0.20, 0.18];
const PITCH: Tone = [0.79, 0.75, 0.65];
const PITCH_DARK: Tone = [0.30, 0.28, 0.24];
const LINE: Tone = [0.97, 0.96, 0.93];
const ASH: Tone = [0.82, 0.68, 0.46];
const LEATHER: Tone = [0.55, 0.12, 0.11];

pub fn ground(dark: bool) -> Solid {
    let (turf, pitch) = if dark { (TURF_DARK, PITCH_DARK) } else { (TURF, PITCH) };
    let slab = |x: [f64; 2], half_y: f64, top: f64, tone: Tone| {
        Solid::block(DVec3::new(x[0], -half_y, top - 0.02), DVec3::new(x[1], half_y, top), tone)
    };
    let stumps = CREASE_AHEAD_M - CREASE_TO_STUMPS_M;
    let mut it = slab([-14.0, 30.0], 14.0, -0.004, turf);
    it.add(slab([stumps - 1.2, 20.5], 0.5 * PITCH_WIDE_M, -0.002, pitch));
    let line = |x: f64, half_y: f64| slab([x - 0.02, x + 0.02], half_y, 0.001, LINE);
    it.add(line(CREASE_AHEAD_M, 1.83));
    it.add(line(stumps, 1.32));
    for side in [-1.32, 1.32] {
        let low = DVec3::new(stumps - 1.2, side - 0.02, -0.02);
        it.add(Solid::block(low, DVec3::new(CREASE_AHEAD_M, side + 0.02, 0.001), LINE));
    }
    it
}

/// Three stumps and two bails.
pub fn stumps() -> Solid {
    let x = CREASE_AHEAD_M - CREASE_TO_STUMPS_M;
    let apart = 0.5 * STUMPS_WIDE_M - STUMP_M;
    let mut it = Solid::default();
    for y in [-apart, 0.0, apart] {
        let ring = |z: f64| Ring::new(z, [STUMP_M; 2]).aside(x, y);
        it.add(Solid::limb(&[ring(0.0), ring(STUMPS_TALL_M - STUMP_M)], 12, ASH));
    }
    for y in [-apart, 0.006] {
        let low = DVec3::new(x - 0.008, y, STUMPS_TALL_M);
        let high = DVec3::new(x + 0.008, y + apart - 0.006, STUMPS_TALL_M + 0.012);
        it.add(Solid::block(low, high, ASH));
    }
    it
}

/// The ball about its centre.
pub fn ball() -> Solid {
    let ring = |z: f64| Ring::new(z * RADIUS_M, [RADIUS_M * libm::sqrt(1.0 - z * z); 2]);
    let rings: Vec<_> = (-9..=9).map(|n| ring(0.999 * f64::from(n) / 9.0)).collect();
    Solid::skin(&rings, 20, LEATHER)
}

/// From where bat meets ball back to where it pitched and to the bowler's hand, m, W. By eye: a ball to
/// drive pitches full, one to pull or hook short.
pub fn ball_path(contact_W: DVec3, is_short: bool) -> [DVec3; 3] {
    let pitched_m = if is_short { 7.5 } else { 1.8 };
    let pitched = DVec3::new(contact_W.x + pitched_m, 0.9 * contact_W.y, RADIUS_M);
    let hand = DVec3::new(17.5, 0.4 * contact_W.y, 2.1);
    [contact_W, pitched, hand]
}

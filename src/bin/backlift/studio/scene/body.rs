//! The body's parts as solids, each in its own frame. Lengths are the player's own; girths of trunk and
//! arms follow from their masses, so that a slight player looks slight. The outlines are drawing, by eye.

use backlift::frames::DVec3;
use backlift::player::grip::HAND_BREADTH_PER_LENGTH;
use backlift::player::{Player, Segments};

use super::solid::{Ring, Solid, Tone};

/// One pale tone for the body; hands and forearms a little deeper, so that they read first.
const SKIN: Tone = [0.80, 0.76, 0.71];
const ARM: Tone = [0.74, 0.66, 0.58];
const GLOVE: Tone = [0.88, 0.87, 0.84];
const HAIR: Tone = [0.42, 0.44, 0.47];
/// Density of a limb, kg/m³ (from memory, medium; for the drawing only).
const LIMB_KG_M3: f64 = 1060.0;
/// Thigh and shank over body mass: de Leva 1996, men (from memory, high; for the drawing only).
const THIGH_MASS: f64 = 0.1416;
const SHANK_MASS: f64 = 0.0433;
/// Thigh over thigh and shank together; ankle over stature (assumptions, for the drawing only).
const THIGH_PART: f64 = 0.49;
const ANKLE_HEIGHT: f64 = 0.039;

/// Chin to vertex over stature: a grown player's, and what a child's is larger by for each year short of grown
/// (from memory, medium; for the drawing only).
const HEAD: f64 = 0.130;
const HEAD_BY_YEAR: f64 = 0.0024;
const GROWN_Y: f64 = 18.0;

/// Left and right as the batter has them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Top hand; leg nearer the bowler.
    Front,
    /// Bottom hand; leg nearer the stumps.
    Back,
}

/// A part of the body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    Pelvis,
    /// From the waist to the shoulders.
    Trunk,
    /// Neck and head.
    Head,
    UpperArm(Side),
    Forearm(Side),
    /// Palm.
    Hand(Side),
    Fingers(Side),
    Thigh(Side),
    Shank(Side),
    Foot(Side),
}

impl Part {
    /// Whether it belongs to an arm.
    pub fn is_arm(self) -> bool {
        matches!(self, Self::UpperArm(_) | Self::Forearm(_) | Self::Hand(_) | Self::Fingers(_))
    }
}

/// Lengths that the drawing of a player hangs on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    pub stature_m: f64,
    /// Hip joints beside the middle, m.
    pub hip_half_m: f64,
    pub thigh_m: f64,
    pub shank_m: f64,
    /// Ankle above the ground, m.
    pub ankle_m: f64,
    /// Hips to shoulders, m.
    pub back_m: f64,
    /// Shoulders to the base of the head, m.
    pub neck_m: f64,
    /// Chin to vertex, m.
    pub head_m: f64,
}

impl Frame {
    /// Of a player.
    pub fn of(player: &Player) -> Self {
        let (s, stature_m) = (&player.segments, player.stature_m);
        let ankle_m = ANKLE_HEIGHT * stature_m;
        let leg_m = s.hip_height_m - ankle_m;
        let short_of_grown_y = (GROWN_Y - player.age_y).clamp(0.0, 12.0);
        let head_m = (HEAD + HEAD_BY_YEAR * short_of_grown_y) * stature_m;
        Self {
            stature_m,
            hip_half_m: s.hip_half_breadth_m,
            thigh_m: THIGH_PART * leg_m,
            shank_m: (1.0 - THIGH_PART) * leg_m,
            ankle_m,
            back_m: s.shoulder_height_m - s.hip_height_m,
            neck_m: (stature_m - s.shoulder_height_m - head_m).max(0.02 * stature_m),
            head_m,
        }
    }
}

/// All parts with their surfaces; `around` corners to a ring.
pub fn parts(player: &Player, handle_m: f64, around: usize) -> Vec<(Part, Solid)> {
    let (s, frame) = (&player.segments, Frame::of(player));
    let mass_kg = player.mass_kg.value;
    let mut all = vec![
        (Part::Pelvis, pelvis(s, &frame, around)),
        (Part::Trunk, trunk(s, &frame, around)),
        (Part::Head, head(&frame, around)),
    ];
    for side in [Side::Front, Side::Back] {
        let upper_m = round_m(s.upper_arm.mass_kg, s.upper_arm.length_m);
        let fore_m = round_m(s.forearm.mass_kg, s.forearm.length_m);
        let thigh_m = round_m(THIGH_MASS * mass_kg, frame.thigh_m);
        let shank_m = round_m(SHANK_MASS * mass_kg, frame.shank_m);
        all.extend([
            (Part::UpperArm(side), limb(&UPPER_ARM, s.upper_arm.length_m, upper_m, around, ARM)),
            (Part::Forearm(side), limb(&FOREARM, s.forearm.length_m, fore_m, around, ARM)),
            (Part::Hand(side), palm(s, around)),
            (Part::Fingers(side), fingers(s, handle_m, around)),
            (Part::Thigh(side), limb(&THIGH, frame.thigh_m, thigh_m, around, SKIN)),
            (Part::Shank(side), limb(&SHANK, frame.shank_m, shank_m, around, SKIN)),
            (Part::Foot(side), foot(&frame, around)),
        ]);
    }
    all
}

/// Along a limb, from its upper end: half-axes forward and across over the mean one, and how far the
/// middle lies forward.
type Outline = [(f64, [f64; 2], f64)];

const UPPER_ARM: [(f64, [f64; 2], f64); 8] = [
    (0.00, [1.06, 1.06], 0.0),
    (0.10, [1.20, 1.16], 0.0),
    (0.22, [1.18, 1.14], 0.0),
    (0.40, [1.10, 0.98], 0.08),
    (0.58, [1.12, 0.96], 0.10),
    (0.76, [0.98, 0.92], 0.05),
    (0.90, [0.86, 0.92], 0.0),
    (1.00, [0.82, 0.90], 0.0),
];
const FOREARM: [(f64, [f64; 2], f64); 8] = [
    (0.00, [0.96, 0.94], 0.0),
    (0.10, [1.16, 1.08], 0.03),
    (0.24, [1.26, 1.12], 0.05),
    (0.42, [1.14, 1.02], 0.03),
    (0.62, [0.94, 0.82], 0.0),
    (0.80, [0.80, 0.64], 0.0),
    (0.94, [0.78, 0.58], 0.0),
    (1.00, [0.76, 0.56], 0.0),
];
const THIGH: [(f64, [f64; 2], f64); 7] = [
    (0.00, [1.18, 1.08], 0.0),
    (0.15, [1.22, 1.14], 0.02),
    (0.35, [1.14, 1.08], 0.05),
    (0.55, [1.02, 0.98], 0.06),
    (0.75, [0.88, 0.84], 0.04),
    (0.92, [0.80, 0.76], 0.02),
    (1.00, [0.78, 0.74], 0.03),
];
const SHANK: [(f64, [f64; 2], f64); 8] = [
    (0.00, [1.06, 1.00], 0.04),
    (0.10, [1.06, 1.00], 0.0),
    (0.25, [1.22, 1.14], -0.16),
    (0.38, [1.20, 1.12], -0.18),
    (0.55, [1.00, 0.94], -0.10),
    (0.75, [0.76, 0.72], -0.02),
    (0.92, [0.64, 0.58], 0.0),
    (1.00, [0.66, 0.60], 0.0),
];

/// Radius of the cylinder with a segment's mass and length, m.
fn round_m(mass_kg: f64, length_m: f64) -> f64 {
    libm::sqrt(mass_kg / (LIMB_KG_M3 * std::f64::consts::PI * length_m))
}

/// A limb that hangs from its upper joint along −z.
fn limb(outline: &Outline, length_m: f64, mean_m: f64, around: usize, tone: Tone) -> Solid {
    let ring = |(at, [x, y], forward): &(f64, [f64; 2], f64)| {
        Ring::new(-at * length_m, [x * mean_m, y * mean_m]).aside(forward * mean_m, 0.0)
    };
    Solid::limb(&outline.iter().map(ring).collect::<Vec<_>>(), around, tone)
}

/// Breadth of the body beside the shoulders' own, from the trunk's mass.
fn build(s: &Segments, frame: &Frame) -> f64 {
    const PLAIN_M: f64 = 0.0745;
    let round = round_m(s.trunk.mass_kg, frame.back_m + 0.5 * frame.head_m);
    round / frame.stature_m / PLAIN_M
}

fn pelvis(s: &Segments, frame: &Frame, around: usize) -> Solid {
    let (h, build) = (frame.stature_m, build(s, frame));
    let ring =
        |z: f64, deep: f64, broad: f64| Ring::new(z * h, [deep * h * build, broad * h * build]);
    let rings = [
        ring(-0.046, 0.030, 0.040),
        ring(-0.040, 0.046, 0.066),
        ring(-0.024, 0.060, 0.088),
        ring(0.000, 0.066, 0.096),
        ring(0.030, 0.061, 0.092),
        ring(0.060, 0.054, 0.083),
    ];
    Solid::skin(&closed(&rings), 2 * around, SKIN)
}

/// Stands on the hips, x out of the chest.
fn trunk(s: &Segments, frame: &Frame, around: usize) -> Solid {
    let (h, build) = (frame.stature_m, build(s, frame));
    let back = frame.back_m;
    let shoulder = s.shoulder_half_breadth_m;
    let ring = |share: f64, deep: f64, broad_m: f64, forward: f64| {
        Ring::new(share * back, [deep * h * build, broad_m]).aside(forward * h, 0.0)
    };
    let rings = [
        ring(0.08, 0.052, 0.082 * h * build, 0.000),
        ring(0.22, 0.050, 0.076 * h * build, 0.002),
        ring(0.38, 0.052, 0.077 * h * build, 0.004),
        ring(0.55, 0.058, 0.084 * h * build, 0.004),
        ring(0.72, 0.064, 0.092 * h * build, 0.003),
        ring(0.86, 0.064, 0.96 * shoulder, 0.000),
        ring(0.95, 0.058, 1.06 * shoulder, -0.004),
        ring(1.03, 0.048, 1.04 * shoulder, -0.006),
        ring(1.08, 0.038, 0.80 * shoulder, -0.008),
        ring(1.12, 0.030, 0.42 * shoulder, -0.008),
    ];
    Solid::limb(&rings, 2 * around, SKIN)
}

/// Chin to vertex along +z from the origin, x out of the face; the neck hangs below.
fn head(frame: &Frame, around: usize) -> Solid {
    // A head's breadth goes with its height.
    let (tall, h) = (frame.head_m, frame.head_m / HEAD);
    let ring = |share: f64, deep: f64, broad: f64, forward: f64| {
        Ring::new(share * tall, [deep * 0.056 * h, broad * 0.0435 * h])
            .aside(forward * 0.056 * h, 0.0)
    };
    let skull = [
        ring(0.02, 0.42, 0.46, 0.38),
        ring(0.12, 0.60, 0.66, 0.26),
        ring(0.26, 0.80, 0.84, 0.12),
        ring(0.42, 0.93, 0.95, 0.03),
        ring(0.58, 1.00, 1.00, -0.02),
        ring(0.72, 0.99, 0.98, -0.04),
        ring(0.84, 0.84, 0.84, -0.04),
        ring(0.93, 0.60, 0.60, -0.04),
        ring(0.98, 0.34, 0.34, -0.04),
    ];
    let mut it = Solid::skin(&closed(&skull), around, SKIN);
    let neck_m = 0.036 * h;
    let below = frame.neck_m + 0.02 * h;
    let neck = [Ring::new(0.2 * tall, [0.8 * neck_m; 2]), Ring::new(-below, [neck_m; 2])];
    it.add(Solid::limb(&neck, around, SKIN));
    let nose = [ring(0.46, 0.06, 0.10, 0.97), ring(0.34, 0.16, 0.20, 1.00)];
    it.add(Solid::limb(&nose, around, SKIN));
    // A plain helmet: a shell and a peak, which also shows where the head looks.
    let shell = |share: f64, deep: f64, broad: f64| ring(share, 1.1 * deep, 1.1 * broad, -0.06);
    let helmet = [
        shell(0.50, 1.02, 1.03),
        shell(0.62, 1.04, 1.04),
        shell(0.76, 1.00, 1.00),
        shell(0.90, 0.80, 0.80),
        shell(0.97, 0.58, 0.58),
        shell(1.01, 0.36, 0.36),
        shell(1.03, 0.16, 0.16),
    ];
    it.add(Solid::skin(&closed(&helmet), around, HAIR));
    let peak = [ring(0.585, 0.62, 0.80, 1.05), ring(0.61, 0.62, 0.80, 1.00)];
    it.add(Solid::skin(&closed(&peak), around, HAIR));
    it
}

/// The same rings with flat ends.
fn closed(rings: &[Ring]) -> Vec<Ring> {
    let point = |it: &Ring| Ring { half_m: it.half_m.map(|it| 0.02 * it), ..*it };
    let (first, last) = (rings.first().map(point), rings.last().map(point));
    first.into_iter().chain(rings.iter().copied()).chain(last).collect()
}

/// From the wrist to the grip along −z. The handle lies in front of it: the fingers close round that.
fn palm(s: &Segments, around: usize) -> Solid {
    let half_m = 0.5 * HAND_BREADTH_PER_LENGTH * s.hand.length_m;
    let grip_m = s.wrist_to_grip_m;
    let rings = [
        Ring::new(0.0, [0.70 * half_m, 0.58 * half_m]),
        Ring::new(-0.30 * grip_m, [0.90 * half_m, 0.62 * half_m]),
        Ring::new(-0.62 * grip_m, [0.98 * half_m, 0.58 * half_m]),
        Ring::new(-0.86 * grip_m, [0.94 * half_m, 0.46 * half_m]),
    ];
    Solid::limb(&rings, around, GLOVE)
}

/// Four fingers round the handle; x along it to the toe, the middle of the grip at the origin.
fn fingers(s: &Segments, handle_m: f64, around: usize) -> Solid {
    let half_m = 0.5 * HAND_BREADTH_PER_LENGTH * s.hand.length_m;
    let tube_m = 0.25 * half_m;
    let mut it = Solid::default();
    for n in 0..4 {
        let along_m = (f64::from(n) - 1.5) * 2.0 * tube_m;
        it.add(Solid::torus(along_m, 0.5 * handle_m + 0.75 * tube_m, tube_m, around, GLOVE));
    }
    it
}

/// From the ankle: the sole on the ground, the toes along +x.
fn foot(frame: &Frame, around: usize) -> Solid {
    let (h, up) = (frame.stature_m, frame.ankle_m);
    let sole = |z: f64, deep: f64, broad: f64, forward: f64| {
        Ring::new(z - up, [deep * h, broad * h]).aside(forward * h, 0.0)
    };
    let rings = [
        sole(0.004, 0.074, 0.026, 0.034),
        sole(0.3 * up, 0.076, 0.028, 0.034),
        sole(0.6 * up, 0.060, 0.026, 0.022),
        sole(0.9 * up, 0.034, 0.022, 0.002),
        sole(1.2 * up, 0.026, 0.020, -0.004),
    ];
    Solid::skin(&closed(&rings), around, GLOVE)
}

/// Where the eyes are in the head's frame, m.
pub fn eyes_m(frame: &Frame) -> DVec3 {
    DVec3::new(0.05 * frame.head_m / HEAD, 0.0, 0.5 * frame.head_m)
}

//! Range and neutral posture of the joint angles, in the order of [`JOINTS`](super::joints::JOINTS), rad.
//!
//! Shared by every player: ranges are those of a supple adult (from memory, medium; the wrist's 40°
//! of ulnar and 27° of radial deviation are the ones that decide whether a stroke can be made at all).
//! Bend and lean of the trunk include what the hips give. The hips turn the pelvis against the ground, the spine
//! the shoulders against the pelvis: 45° either way (from memory, medium). Nothing here is a limit for any person's
//! exercise.

use super::joints::{JOINT_COUNT, TOP_ARM};

/// Range and neutral posture of one joint angle, degrees: low, high, neutral.
type Row = [f64; 3];

const TRUNK: [Row; TOP_ARM] =
    [[-45.0, 90.0, 15.0], [-45.0, 45.0, 5.0], [-10.0, 60.0, 20.0], [-30.0, 30.0, 0.0]];

const ARM: [Row; 7] = [
    [-60.0, 170.0, 50.0], // shoulder flexion
    [-55.0, 120.0, 5.0],  // shoulder abduction
    [-80.0, 90.0, 20.0],  // shoulder rotation, internal positive
    [3.0, 145.0, 50.0],   // elbow flexion
    [-85.0, 85.0, 0.0],   // forearm pronation
    [-70.0, 75.0, 0.0],   // wrist flexion
    [-40.0, 27.0, 0.0],   // wrist radial deviation
];

const fn column(which: usize) -> [f64; JOINT_COUNT] {
    let mut out = [0.0; JOINT_COUNT];
    let mut j = 0;
    while j < JOINT_COUNT {
        let row = if j < TOP_ARM { TRUNK[j] } else { ARM[(j - TOP_ARM) % 7] };
        out[j] = row[which] * (std::f64::consts::PI / 180.0);
        j += 1;
    }
    out
}

/// Least angle of each joint, rad.
pub const LOWEST_RAD: [f64; JOINT_COUNT] = column(0);
/// Greatest angle of each joint, rad.
pub const HIGHEST_RAD: [f64; JOINT_COUNT] = column(1);
/// Posture towards which joints are drawn when the stroke leaves them free, rad.
pub const NEUTRAL_RAD: [f64; JOINT_COUNT] = column(2);

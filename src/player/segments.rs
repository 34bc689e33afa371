//! Lengths, masses and inertias of trunk and arms, from stature, mass and what the tape gave.
//!
//! Masses, centres and radii of gyration: de Leva 1996, J Biomech 29:1223, Table 4 (adults), read
//! second-hand. Heights and breadths: ANSUR II (4082 men, 1986 women), computed from its records.
//! Children: head share of Jensen 1986, J Biomech 19:359 (12 boys of 4–15 years), the other segments
//! shrunk alike to make room; their proportions otherwise are the adult's, which is an assumption.

use super::growth::by_sex;
use super::pelvis::{HIP_HALF_BREADTH, legs_turning_kg_m2, pelvis};
use super::{Segment, Segments};
use crate::measurement::person::{PersonReading, Sex};
use crate::uncertain::Uncertain;

/// One segment after de Leva: length over stature, mass over body mass, then over its own length:
/// centre of mass from the proximal end, radii of gyration about the sagittal, transverse, long axis.
struct Share {
    length: f64,
    mass: f64,
    com: f64,
    gyration: [f64; 3],
}

const fn share(length: f64, mass: f64, com: f64, gyration: [f64; 3]) -> Share {
    Share { length, mass, com, gyration }
}

/// What differs between men and women.
struct Build {
    /// Mid-shoulder to mid-hip; centre of mass from the mid-shoulder.
    trunk: Share,
    /// Vertex to seventh cervical vertebra; centre of mass from the vertex.
    head: Share,
    upper_arm: Share,
    forearm: Share,
    /// Wrist to tip of the middle finger.
    hand: Share,
    /// Hip joints above the ground over stature: ANSUR II, top of the thigh bone (trochanterion).
    hip_height: f64,
    /// Distance between the bony points of the shoulders over stature: ANSUR II, biacromial.
    biacromial: f64,
    /// Wrist crease to the tip of the middle finger over stature: ANSUR II.
    hand_length: f64,
    /// Standard deviation of the last over stature.
    hand_length_sd: f64,
}

/// Reference bodies of de Leva: 1.741 m and 1.735 m.
const MAN: Build = Build {
    trunk: share(0.5155 / 1.741, 0.4346, 0.4310, [0.384, 0.358, 0.197]),
    head: share(0.2429 / 1.741, 0.0694, 0.5002, [0.303, 0.315, 0.261]),
    upper_arm: share(0.2817 / 1.741, 0.0271, 0.5772, [0.285, 0.269, 0.158]),
    forearm: share(0.2689 / 1.741, 0.0162, 0.4574, [0.276, 0.265, 0.121]),
    hand: share(0.1879 / 1.741, 0.0061, 0.3624, [0.288, 0.235, 0.184]),
    hip_height: 0.5128,
    biacromial: 0.2368,
    hand_length: 0.1101,
    hand_length_sd: 0.0042,
};

const WOMAN: Build = Build {
    trunk: share(0.4979 / 1.735, 0.4257, 0.3782, [0.379, 0.361, 0.182]),
    head: share(0.2437 / 1.735, 0.0668, 0.4841, [0.271, 0.295, 0.261]),
    upper_arm: share(0.2751 / 1.735, 0.0255, 0.5754, [0.278, 0.260, 0.148]),
    forearm: share(0.2643 / 1.735, 0.0138, 0.4559, [0.261, 0.257, 0.094]),
    hand: share(0.1701 / 1.735, 0.0056, 0.3427, [0.244, 0.208, 0.154]),
    hip_height: 0.5190,
    biacromial: 0.2244,
    hand_length: 0.1112,
    hand_length_sd: 0.0047,
};

/// Centre of the grip from the wrist over hand length: elbow to centre of grip (ANSUR II) less the
/// forearm of de Leva gives 0.40 for men, 0.39 for women (computed).
const GRIP_OVER_HAND: f64 = 0.40;

/// Shoulder joint below the bony point of the shoulder along the hanging arm, over stature: 10.4 % of
/// the ANSUR upper arm, 0.191 (de Leva 1996, joint centres, from memory, medium).
const JOINT_BELOW_ACROMION: f64 = 0.020;

/// Shoulder joint inwards of the bony point of the shoulder, over stature: about 3 cm in an adult
/// (assumption, no source).
const JOINT_INSIDE_ACROMION: f64 = 0.018;

/// Age from which the adult's proportions are taken as published.
pub const ADULT_FROM_Y: f64 = 18.0;

/// Hand length of someone of this sex and stature, m (adult ratio; half as much spread again below 18).
pub fn expected_hand_length_m(sex: Sex, age_y: f64, stature_m: f64) -> Uncertain {
    let b = by_sex(sex, &MAN, &WOMAN);
    let wider = if age_y < ADULT_FROM_Y { 1.5 } else { 1.0 };
    Uncertain::estimated(b.hand_length * stature_m, wider * b.hand_length_sd * stature_m)
}

/// Share of the body mass that is head: `0.2376 − 0.0114 age` in children (Jensen 1986, with a printed
/// coefficient corrected), never less than the adult's.
fn head_share(adult_share: f64, age_y: f64) -> f64 {
    (0.2376 - 0.0114 * age_y).max(adult_share)
}

fn limb(share: &Share, length_m: f64, mass_kg: f64) -> Segment {
    Segment {
        length_m,
        mass_kg,
        com_m: share.com * length_m,
        gyration_m: share.gyration.map(|r| r * length_m),
    }
}

/// Trunk, head and neck as one rigid body above the hips (parallel axis).
fn trunk(
    b: &Build,
    stature_m: f64,
    shoulder_to_hip_m: f64,
    trunk_kg: f64,
    head_kg: f64,
    head_size: f64,
) -> Segment {
    let trunk_com_m = (1.0 - b.trunk.com) * shoulder_to_hip_m;
    let head_length_m = b.head.length * stature_m * head_size;
    let head_com_m = (1.0 - b.hip_height) * stature_m - b.head.com * head_length_m;
    let mass_kg = trunk_kg + head_kg;
    let com_m = (trunk_kg * trunk_com_m + head_kg * head_com_m) / mass_kg;
    let gyration_m = std::array::from_fn(|axis| {
        let part = |kg: f64, r_m: f64, at_m: f64| {
            let off_m = if axis == 2 { 0.0 } else { at_m - com_m };
            kg * (r_m * r_m + off_m * off_m)
        };
        let moment = part(trunk_kg, b.trunk.gyration[axis] * shoulder_to_hip_m, trunk_com_m)
            + part(head_kg, b.head.gyration[axis] * head_length_m, head_com_m);
        libm::sqrt(moment / mass_kg)
    });
    Segment { length_m: shoulder_to_hip_m, mass_kg, com_m, gyration_m }
}

/// Segments of a player whose body mass and hand length are known or estimated.
///
/// A measured arm length runs from the bony point of the shoulder to the centre of the grip: the part
/// above the joint comes off, then upper arm and forearm are scaled alike to what is left.
pub fn segments(reading: &PersonReading, mass_kg: f64, hand_length_m: f64) -> Segments {
    let b = by_sex(reading.sex, &MAN, &WOMAN);
    let stature_m = reading.stature_m;
    let head = head_share(b.head.mass, reading.age_y);
    let others = mass_kg * (1.0 - head) / (1.0 - b.head.mass);
    // A child's head is larger for its body: its length follows the cube root of its share.
    let head_size = libm::cbrt(head / b.head.mass);
    let shoulder_to_hip_m = b.trunk.length * stature_m;
    let wrist_to_grip_m = GRIP_OVER_HAND * hand_length_m;
    let (upper_m, fore_m) = (b.upper_arm.length * stature_m, b.forearm.length * stature_m);
    let stretch = reading.arm_length_m.map_or(1.0, |arm_m| {
        (arm_m - JOINT_BELOW_ACROMION * stature_m - wrist_to_grip_m) / (upper_m + fore_m)
    });
    Segments {
        hip_height_m: b.hip_height * stature_m,
        shoulder_height_m: b.hip_height * stature_m + shoulder_to_hip_m,
        shoulder_half_breadth_m: (0.5 * b.biacromial - JOINT_INSIDE_ACROMION) * stature_m,
        hip_half_breadth_m: HIP_HALF_BREADTH * stature_m,
        trunk: trunk(
            b,
            stature_m,
            shoulder_to_hip_m,
            b.trunk.mass * others,
            head * mass_kg,
            head_size,
        ),
        pelvis: pelvis(reading.sex, stature_m, others),
        legs_turning_kg_m2: legs_turning_kg_m2(reading.sex, stature_m, others),
        upper_arm: limb(&b.upper_arm, upper_m * stretch, b.upper_arm.mass * others),
        forearm: limb(&b.forearm, fore_m * stretch, b.forearm.mass * others),
        hand: limb(&b.hand, hand_length_m, b.hand.mass * others),
        wrist_to_grip_m,
    }
}

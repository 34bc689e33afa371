//! Greatest torques of the joints: published isometric maxima of a reference man, scaled to the player.
//!
//! A torque is a force at a lever: the force goes with grip strength, the lever with size. So a
//! player's torque is the reference man's × (grip / his grip) × (stature / his stature), each arm by
//! the grip of its own hand, the trunk by the mean of both.

use super::Strength;
use super::endurance::Endurance;
use super::joints::{GROUP_COUNT, Group, JOINT_COUNT, JOINTS, TOP_ARM};
use crate::frames::STANDARD_GRAVITY_M_S2;
use crate::measurement::person::WristHold;
use crate::uncertain::Uncertain;

/// Grip of the reference man, N: 48 kgf, the median at 25 years (Dodds et al. 2014, read second-hand).
pub const REFERENCE_GRIP_N: f64 = 48.0 * STANDARD_GRAVITY_M_S2;
/// Stature of the reference man, m (median of young men).
pub const REFERENCE_STATURE_M: f64 = 1.76;

/// One joint angle of the reference man.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JointMaximum {
    /// Greatest isometric torque in the positive direction, N m.
    pub positive_n_m: f64,
    /// Greatest isometric torque in the negative direction, N m.
    pub negative_n_m: f64,
    /// Joint speed at which no torque is left, rad/s.
    pub max_rate_rad_s: f64,
}

const fn maximum(positive_n_m: f64, negative_n_m: f64, max_rate_rad_s: f64) -> JointMaximum {
    JointMaximum { positive_n_m, negative_n_m, max_rate_rad_s }
}

/// Trunk of the reference man: hips turning the pelvis on the ground, spine turning the shoulders on the pelvis
/// (one after the other: torques are shared, speeds add), bend, lean. 20 rad/s: assumption (hips and spine in
/// series; the gymnast's hips alone 9 rad/s).
///
/// Where the torques come from, assumptions all:
/// * hips: both feet on the ground, 60 to 200 N m: the rotators of two hips, and the legs pushing against each other on
///   the breadth of the hips. Zero-torque speed 10 of 6 to 16 rad/s: an elite gymnast's hips 9.0 in extension, 9.2 in
///   flexion (Jackson 2010 through Millard's table, read second-hand);
/// * spine: alone, pelvis held; men 50 to 140 N m: 80 from memory, 40 and 43 the mean of 80 adults of both sexes, 129 and
///   143 tennis players if their unit is read rightly (both read second-hand). Zero-torque speed 12 of 8 to 20 rad/s: an
///   elite gymnast's spine in extension 8, in flexion 19 (Raschke & Chaffin and Dolan through Millard's table, read
///   second-hand);
/// * bend and lean: round figures; ±30 %.
const TRUNK: [JointMaximum; TOP_ARM] = [
    maximum(110.0, 110.0, 10.0),
    maximum(85.0, 85.0, 12.0),
    maximum(220.0, 220.0, 20.0),
    maximum(200.0, 200.0, 20.0),
];

/// Arm of the reference man, in the order of the joint angles.
///
/// Speeds are the gymnast's (same table: shoulder 16–19.5, elbow 18, forearm 28–35, wrist 36 and
/// 18–22 rad/s, read second-hand): a speed does not go with strength as a torque does. His curves leave
/// 0.21–0.29 of the torque at half that speed at the shoulder and in forearm rotation, where κ = 0.5
/// leaves 0.25; at the elbow and in radial and ulnar deviation 0.19–0.21, so the curve is generous there; in wrist
/// flexion 0.115 at half of 36 rad/s, which κ = 0.5 leaves there with a zero-torque speed of 25.
///
/// Where the torques come from:
/// * shoulder flexion and rotation: elite gymnast of Jackson 2010 and Kentel et al. 2011 (torque-muscle table of Millard,
///   read second-hand), divided by 1.35: the mean by which he surpasses ordinary men at the elbow (101/68.5 and 70/57.6);
///   computed;
/// * shoulder adduction: Holzbaur et al. 2007, J Biomech 40:2442, 67.9 N m, men and women together, taken as it stands: as
///   men alone it would be 85, by the same study's ratio to wrist extension 46; abduction: the gymnast's ratio of
///   horizontal abduction to adduction, 0.74; computed;
/// * elbow flexion: Falk et al. 2009, Appl Physiol Nutr Metab 34:609, 16 men, 68.5 N m; extension: flexion / 1.19 (Lategan
///   & Kruger 2003); read;
/// * forearm: O'Sullivan & Gallwey 2002, J Electromyogr Kinesiol 12:275, 24 men; read;
/// * wrist: Delp, Grierson & Buchanan 1996, J Biomech 29:1371, 10 men; read.
const ARM: [JointMaximum; 7] = [
    maximum(68.0, 94.0, 18.0), // flexion, extension
    maximum(50.0, 68.0, 18.0), // abduction, adduction
    maximum(37.0, 32.0, 19.0), // internal, external rotation
    maximum(68.5, 57.6, 18.0), // flexion, extension
    maximum(13.1, 16.2, 30.0), // pronation, supination
    maximum(12.2, 7.1, 25.0),  // flexion, extension
    maximum(11.0, 9.5, 20.0),  // radial, ulnar deviation
];

/// Radial deviation of the top wrist: what holds the bat up in the wrist hold test.
const TOP_WRIST_RADIAL: usize = TOP_ARM + 6;

/// The reference man: 25 years, 1.76 m, grip 48 kgf, in the order of the joint angles.
pub const REFERENCE_MAN: [JointMaximum; JOINT_COUNT] = {
    let mut out = [TRUNK[0]; JOINT_COUNT];
    let mut j = 0;
    while j < JOINT_COUNT {
        out[j] = if j < TOP_ARM { TRUNK[j] } else { ARM[(j - TOP_ARM) % 7] };
        j += 1;
    }
    out
};

/// How much joints of one person differ from what his grip says, as a share, by group: 0.15 at elbow
/// and wrist (assumption), 0.20 at the shoulder, whose rows are derived, 0.30 for the trunk, which has none.
fn between_joints(group: Group) -> f64 {
    match group {
        Group::Trunk => 0.30,
        Group::TopShoulder | Group::BottomShoulder => 0.20,
        _ => 0.15,
    }
}

/// Strength of a player of this stature with these grips (of the top and the bottom hand).
pub fn strength(stature_m: f64, grip_top_n: Uncertain, grip_bottom_n: Uncertain) -> Strength {
    let size = stature_m / REFERENCE_STATURE_M;
    // Both hands of one person are strong or weak together: the spread of the mean is that of one.
    let mean_n = Uncertain::computed(
        0.5 * (grip_top_n.value + grip_bottom_n.value),
        0.5 * (grip_top_n.sd + grip_bottom_n.sd),
    );
    let grip = |group: Group| match group {
        Group::Trunk => mean_n,
        Group::TopShoulder | Group::TopElbow | Group::TopWrist => grip_top_n,
        _ => grip_bottom_n,
    };
    let mut out = Strength {
        positive_n_m: REFERENCE_MAN.map(|it| it.positive_n_m),
        negative_n_m: REFERENCE_MAN.map(|it| it.negative_n_m),
        max_rate_rad_s: REFERENCE_MAN.map(|it| it.max_rate_rad_s),
        relative_sd: [0.0; GROUP_COUNT],
    };
    for (j, joint) in JOINTS.iter().enumerate() {
        let factor = grip(joint.group).value / REFERENCE_GRIP_N * size;
        out.positive_n_m[j] *= factor;
        out.negative_n_m[j] *= factor;
    }
    for group in Group::ALL {
        let grip_sd = grip(group).relative_sd();
        out.relative_sd[group as usize] = libm::hypot(between_joints(group), grip_sd);
    }
    out
}

/// Spread of a capacity read off a wrist hold test, as a share: the power law and the three-compartment
/// model differ by up to 0.3 between them, and the row is the grip's, not the wrist's.
pub const WRIST_HOLD_RELATIVE_SD: f64 = 0.30;

/// The same with the top wrist's capacity moved towards what its hold test says.
///
/// The bat's hold moment is a share of the wrist's radial deviation that the endurance power law gives
/// for the time held (at most 1, which it gives for anything under half a minute); estimate and test are
/// weighed by their spreads, on the logarithm. A test stopped at its limit with the toe still up is a
/// lower bound only. All directions of forearm and wrist of that hand move together.
pub fn with_wrist_hold(strength: &Strength, hold: WristHold) -> Strength {
    let group = Group::TopWrist as usize;
    let estimate_n_m = strength.positive_n_m[TOP_WRIST_RADIAL];
    let tested_n_m = hold.hold_moment_n_m / Endurance::GRIP.share_held(hold.time_s);
    let ratio = tested_n_m / estimate_n_m;
    if hold.stopped_at_limit && ratio <= 1.0 {
        return *strength;
    }
    let sd = strength.relative_sd[group];
    let weight = sd * sd / (sd * sd + WRIST_HOLD_RELATIVE_SD * WRIST_HOLD_RELATIVE_SD);
    let mut factors = [1.0; GROUP_COUNT];
    factors[group] = libm::pow(ratio, weight);
    let mut out = strength.times(&factors);
    out.relative_sd[group] = sd * libm::sqrt(1.0 - weight);
    out
}

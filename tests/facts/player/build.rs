//! Segments, what is estimated, and what is refused.

use super::someone;
use approx::assert_relative_eq;
use backlift::measurement::person::{PersonReading, Sex};
use backlift::player::growth::{body_mass_index, median_stature_m, stature_z};
use backlift::player::{player, posture, unusual};

/// de Leva 1996: man of 1.741 m and 73.0 kg: upper arm 0.2817 m and 2.71 %, forearm 0.2689 m and 1.62 %,
/// hand 0.61 %; trunk with head 50.40 %.
#[test]
fn published_arm_of_the_reference_man_comes_back() {
    let mut man = someone(Sex::Male, 22.0, 1.741);
    man.mass_kg = Some(73.0);
    let s = player(&man).unwrap().segments;
    assert_relative_eq!(s.upper_arm.length_m, 0.2817, max_relative = 1e-9);
    assert_relative_eq!(s.forearm.length_m, 0.2689, max_relative = 1e-9);
    assert_relative_eq!(s.upper_arm.mass_kg, 0.0271 * 73.0, max_relative = 1e-9);
    assert_relative_eq!(s.forearm.mass_kg, 0.0162 * 73.0, max_relative = 1e-9);
    assert_relative_eq!(s.hand.mass_kg, 0.0061 * 73.0, max_relative = 1e-9);
    assert_relative_eq!(s.trunk.mass_kg, 0.5040 * 73.0, max_relative = 1e-9);
}

/// The female hand's radius about its long axis is 0.154 of its length, not the male 0.184 of a
/// known copy error (0.335 × 0.0780/0.1701 = 0.154, de Leva 1996).
#[test]
fn published_female_hand_is_not_given_the_male_radius() {
    let hand = player(&someone(Sex::Female, 25.0, 1.63)).unwrap().segments.hand;
    assert_relative_eq!(
        hand.gyration_m[2] / hand.length_m,
        0.335 * 0.0780 / 0.1701,
        epsilon = 5e-4
    );
}

/// Trunk and head taken apart again from the published rows: 43.46 % at 0.569 of mid-hip to
/// mid-shoulder (0.5155 m), 6.94 % at 0.5002 of vertex to C7 (0.2429 m) below the vertex.
#[test]
fn published_trunk_and_head_balance_where_their_parts_do() {
    let mut man = someone(Sex::Male, 22.0, 1.741);
    man.mass_kg = Some(73.0);
    let s = player(&man).unwrap().segments;
    let trunk_m = 0.569 * 0.5155;
    let head_m = 1.741 - s.hip_height_m - 0.5002 * 0.2429;
    let com_m = (0.4346 * trunk_m + 0.0694 * head_m) / 0.5040;
    assert_relative_eq!(s.trunk.com_m, com_m, max_relative = 1e-9);
    // About the long axis nothing is added for distance: between the trunk's and the head's own radius.
    let long_m = s.trunk.gyration_m[2];
    assert!(long_m > 0.261 * 0.2429 && long_m < 0.197 * 0.5155, "{long_m}");
    // About the others the head's distance makes it larger than the trunk's own 0.198 m.
    assert!(s.trunk.gyration_m[0] > 0.384 * 0.5155);
}

/// ANSUR II: the bony point of the shoulder stands at 0.820 of the stature, SD 0.0096; the joint lies
/// 2–5 cm below it.
#[test]
fn published_shoulder_point_lies_just_above_our_shoulder_joint() {
    for (sex, acromion) in [(Sex::Male, 0.8203), (Sex::Female, 0.8198)] {
        let s = player(&someone(sex, 25.0, 1.70)).unwrap().segments;
        let below_m = acromion * 1.70 - s.shoulder_height_m;
        assert!((0.01..0.05).contains(&below_m), "{below_m}");
    }
}

/// ANSUR II, men: elbow to centre of grip 0.1987 SD 0.0068 of the stature.
#[test]
fn published_elbow_to_grip_agrees_within_a_standard_deviation() {
    for (sex, mean, sd) in [(Sex::Male, 0.1987, 0.0068), (Sex::Female, 0.1951, 0.0076)] {
        let s = player(&someone(sex, 30.0, 1.70)).unwrap().segments;
        let ratio = (s.forearm.length_m + s.wrist_to_grip_m) / 1.70;
        assert!((ratio - mean).abs() < sd, "{ratio:.4} against {mean}");
    }
}

/// Jensen 1986: head 0.2376 − 0.0114 × age of the body mass; at 6 years 16.9 %, and nothing is lost.
#[test]
fn published_childs_head_takes_its_share_from_the_rest() {
    let mut child = someone(Sex::Male, 6.0, 1.16);
    child.mass_kg = Some(20.6);
    let s = player(&child).unwrap().segments;
    let head = 0.2376 - 0.0114 * 6.0;
    let trunk = 0.4346 * (1.0 - head) / (1.0 - 0.0694);
    assert_relative_eq!(s.trunk.mass_kg / 20.6, head + trunk, max_relative = 1e-9);
    assert!(s.upper_arm.mass_kg / 20.6 < 0.0271);
}

#[test]
fn a_measured_arm_sets_the_reach_and_leaves_the_hand_alone() {
    let base = player(&someone(Sex::Male, 30.0, 1.80)).unwrap().segments;
    let mut long = someone(Sex::Male, 30.0, 1.80);
    long.arm_length_m = Some(base.arm_m() + 0.020 * 1.80 + 0.030);
    let s = player(&long).unwrap().segments;
    assert_relative_eq!(s.arm_m(), base.arm_m() + 0.030, max_relative = 1e-12);
    assert_eq!(s.wrist_to_grip_m, base.wrist_to_grip_m);
    assert_eq!(s.upper_arm.mass_kg, base.upper_arm.mass_kg);
}

/// WHO 2007, boys of 12: stature 1.4908 m, +2 SD 1.6325 m; body mass index 17.53.
#[test]
fn published_growth_reference_gives_the_boy_of_twelve() {
    assert_relative_eq!(median_stature_m(Sex::Male, 12.0), 1.490807, max_relative = 1e-9);
    assert_relative_eq!(stature_z(Sex::Male, 12.0, 1.6325), 2.0, epsilon = 0.001);
    assert_relative_eq!(body_mass_index(Sex::Male, 12.0).0, 17.5334, max_relative = 1e-9);
    let mass = player(&someone(Sex::Male, 12.0, 1.490807)).unwrap().mass_kg;
    assert!(mass.is_estimated());
    assert_relative_eq!(mass.value, 17.5334 * 1.490807 * 1.490807, max_relative = 1e-9);
}

#[test]
fn what_was_not_measured_is_named_with_its_spread() {
    let player = player(&someone(Sex::Female, 15.0, 1.62)).unwrap();
    for what in ["body mass", "hand length", "arm length", "grip of both hands"] {
        let found = player.estimated.iter().find(|it| it.what == what).expect(what);
        assert!(found.relative_sd > 0.0 && !found.from.is_empty());
    }
}

#[test]
fn absurd_figures_are_refused_by_the_name_of_their_field() {
    let good = someone(Sex::Male, 25.0, 1.80);
    let cases: [(&str, PersonReading); 12] = [
        ("stature", PersonReading { stature_m: 3.0, ..good.clone() }),
        ("stature", PersonReading { stature_m: f64::NAN, ..good.clone() }),
        ("stature", PersonReading { stature_m: -1.8, ..good.clone() }),
        ("stature", PersonReading { stature_m: 180.0, ..good.clone() }),
        ("age", PersonReading { age_y: 0.0, ..good.clone() }),
        ("age", PersonReading { age_y: f64::INFINITY, ..good.clone() }),
        ("mass", PersonReading { mass_kg: Some(-70.0), ..good.clone() }),
        ("mass", PersonReading { mass_kg: Some(20.0), ..good.clone() }),
        ("arm_length", PersonReading { arm_length_m: Some(0.30), ..good.clone() }),
        ("hand_length", PersonReading { hand_length_m: Some(0.29), ..good.clone() }),
        ("grip_top", PersonReading { grip_top_n: Some(0.0), ..good.clone() }),
        ("grip_bottom", PersonReading { grip_bottom_n: Some(f64::NAN), ..good.clone() }),
    ];
    for (field, reading) in cases {
        let fault = player(&reading).expect_err(field);
        assert_eq!(fault.field(), field, "{fault}");
    }
    let both = PersonReading { age_y: -1.0, grip_top_n: Some(5000.0), ..good };
    assert_eq!(both.faults().len(), 2, "all faults come together");
}

#[test]
fn rare_figures_are_asked_about_and_common_ones_are_not() {
    let mut reading = someone(Sex::Male, 13.0, 1.56);
    reading.mass_kg = Some(47.0);
    reading.grip_top_n = Some(24.0 * 9.80665);
    assert_eq!(unusual(&reading), []);
    reading.stature_m = 1.95;
    reading.grip_top_n = Some(90.0 * 9.80665);
    let fields: Vec<_> = unusual(&reading).into_iter().map(|it| it.field).collect();
    assert!(fields.contains(&"stature") && fields.contains(&"grip_top"), "{fields:?}");
}

#[test]
fn the_neutral_posture_lies_inside_the_ranges() {
    for j in 0..posture::NEUTRAL_RAD.len() {
        assert!(posture::LOWEST_RAD[j] < posture::NEUTRAL_RAD[j], "{j}");
        assert!(posture::NEUTRAL_RAD[j] < posture::HIGHEST_RAD[j], "{j}");
    }
}

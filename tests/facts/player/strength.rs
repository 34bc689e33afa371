//! Capacity: the reference man, and how far the scaling carries.

use super::someone;
use approx::assert_relative_eq;
use backlift::measurement::person::{Sex, WristHold};
use backlift::player::capacity::{REFERENCE_GRIP_N, REFERENCE_STATURE_M};
use backlift::player::grip_by_age::expected_grip_n;
use backlift::player::growth::median_stature_m;
use backlift::player::joints::{Group, JOINTS};
use backlift::player::{Player, player};
use proptest::prelude::*;

fn joint(name: &str) -> usize {
    JOINTS.iter().position(|it| it.name == name).expect("a joint of that name")
}

fn typical(sex: Sex, age_y: f64) -> Player {
    player(&someone(sex, age_y, median_stature_m(sex, age_y))).expect("a typical person")
}

/// Delp et al. 1996: flexion 12.2, extension 7.1, radial 11.0, ulnar 9.5 N m; Falk et al. 2009: 68.5.
#[test]
fn published_maxima_are_those_of_a_man_with_the_reference_grip_and_stature() {
    let mut man = someone(Sex::Male, 25.0, REFERENCE_STATURE_M);
    man.grip_top_n = Some(REFERENCE_GRIP_N);
    man.grip_bottom_n = Some(REFERENCE_GRIP_N);
    let s = player(&man).unwrap().strength;
    let wrist = [joint("top_wrist_flexion"), joint("bottom_wrist_radial")];
    assert_relative_eq!(s.positive_n_m[wrist[0]], 12.2, max_relative = 1e-12);
    assert_relative_eq!(s.negative_n_m[wrist[0]], 7.1, max_relative = 1e-12);
    assert_relative_eq!(s.positive_n_m[wrist[1]], 11.0, max_relative = 1e-12);
    assert_relative_eq!(s.negative_n_m[wrist[1]], 9.5, max_relative = 1e-12);
    assert_relative_eq!(s.positive_n_m[joint("top_elbow_flexion")], 68.5, max_relative = 1e-12);
}

/// Falk et al. 2009: boys of 9.7 years 19.5 SD 5.8 N m, men of 22.1 years 68.5 SD 11.0, ratio 0.285.
/// Accepted 0.22–0.35: boys within half their standard deviation (0.3), the grip of boys of 10 being
/// from memory. Ours: 0.27 against young men of the same grip table.
#[test]
fn published_elbow_flexion_of_boys_is_the_share_of_mens_that_their_grip_and_size_say() {
    let elbow = joint("top_elbow_flexion");
    let boy = typical(Sex::Male, 9.7).strength.positive_n_m[elbow];
    let man = typical(Sex::Male, 25.0).strength.positive_n_m[elbow];
    let ratio = boy / man;
    assert!((0.22..0.35).contains(&ratio), "ratio {ratio:.3}");
    assert!((boy - 19.5).abs() < 5.8, "boys {boy:.1} N m against 19.5 SD 5.8");
}

/// Axelsson et al. 2018: men's forearm torque about 1.7 times women's. Accepted ±0.2 ("about").
#[test]
fn published_forearm_torque_of_men_is_about_1_7_times_womens() {
    let roll = joint("bottom_forearm_pronation");
    let men = typical(Sex::Male, 35.0).strength.positive_n_m[roll];
    let women = typical(Sex::Female, 35.0).strength.positive_n_m[roll];
    assert!((1.5..1.9).contains(&(men / women)), "ratio {:.2}", men / women);
}

/// Torque-muscle table of Millard (Jackson 2010, Kentel et al. 2011), one elite gymnast: an envelope.
#[test]
fn published_elite_maxima_are_above_every_arm_joint_of_a_typical_man() {
    let man = typical(Sex::Male, 30.0).strength;
    let elite = [
        ("top_shoulder_flexion", 91.1, 127.4),
        ("top_shoulder_rotation", 50.5, 43.6),
        ("top_elbow_flexion", 101.4, 69.9),
        ("top_wrist_flexion", 39.2, 15.6),
        ("top_wrist_radial", 23.8, 31.4),
    ];
    for (name, positive, negative) in elite {
        let j = joint(name);
        assert!(man.positive_n_m[j] < positive && man.negative_n_m[j] < negative, "{name}");
    }
}

/// Dodds et al. 2014, medians of 25 years: 48 and 30 kgf; of 15-year-old boys 29 kgf.
#[test]
fn published_median_grips_come_back_at_the_median_stature() {
    for (sex, age_y, kgf) in
        [(Sex::Male, 25.0, 48.0), (Sex::Female, 25.0, 30.0), (Sex::Male, 15.0, 29.0)]
    {
        let grip = expected_grip_n(sex, age_y, median_stature_m(sex, age_y));
        assert_relative_eq!(grip.value, kgf * 9.80665, max_relative = 1e-12);
    }
}

/// Steiber 2016, women of 25–29: 30.8 kgf at 1.52 m, 34.2 at 1.72 m, ratio 1.110; men of 40–44: 49.9 at
/// 1.67 m, 54.5 at 1.82 m, ratio 1.092. Accepted ±0.03: one exponent for all ages.
#[test]
fn published_taller_adults_of_one_age_grip_harder_by_the_measured_share() {
    let ratio = |sex, age, low, high| {
        expected_grip_n(sex, age, high).value / expected_grip_n(sex, age, low).value
    };
    assert_relative_eq!(ratio(Sex::Female, 27.0, 1.52, 1.72), 1.110, epsilon = 0.03);
    assert_relative_eq!(ratio(Sex::Male, 42.0, 1.67, 1.82), 1.092, epsilon = 0.03);
}

#[test]
fn each_arm_goes_by_the_grip_of_its_own_hand_and_the_trunk_by_both() {
    let mut p = someone(Sex::Male, 25.0, REFERENCE_STATURE_M);
    p.grip_top_n = Some(0.5 * REFERENCE_GRIP_N);
    p.grip_bottom_n = Some(REFERENCE_GRIP_N);
    let s = player(&p).unwrap().strength;
    let (top, bottom) = (joint("top_elbow_flexion"), joint("bottom_elbow_flexion"));
    assert_relative_eq!(s.positive_n_m[top], 0.5 * s.positive_n_m[bottom], max_relative = 1e-12);
    assert_relative_eq!(s.positive_n_m[joint("trunk_yaw")], 0.75 * 120.0, max_relative = 1e-12);
}

#[test]
fn a_measured_grip_narrows_every_group_but_the_trunk_stays_widest() {
    let guessed = player(&someone(Sex::Female, 15.0, 1.62)).unwrap();
    let mut reading = someone(Sex::Female, 15.0, 1.62);
    reading.grip_top_n = Some(guessed.grip_top_n.value);
    reading.grip_bottom_n = Some(guessed.grip_bottom_n.value);
    let measured = player(&reading).unwrap();
    for group in Group::ALL {
        let g = group as usize;
        assert!(measured.strength.relative_sd[g] < guessed.strength.relative_sd[g], "{group:?}");
        assert!(measured.strength.relative_sd[g] <= measured.strength.relative_sd[0]);
    }
}

#[test]
fn a_wrist_hold_stopped_at_its_limit_never_lowers_the_wrist() {
    let base = player(&someone(Sex::Male, 13.0, 1.56)).unwrap();
    let with = |hold_moment_n_m, time_s, stopped_at_limit| {
        let mut p = someone(Sex::Male, 13.0, 1.56);
        p.wrist_hold = Some(WristHold { hold_moment_n_m, time_s, stopped_at_limit });
        player(&p).unwrap().strength
    };
    let wrist = joint("top_wrist_radial");
    let light = with(1.0, 30.0, true);
    assert_eq!(light.positive_n_m, base.strength.positive_n_m);
    let heavy = with(8.0, 30.0, true);
    assert!(heavy.positive_n_m[wrist] > base.strength.positive_n_m[wrist]);
    let dropped = with(2.0, 10.0, false);
    assert!(dropped.positive_n_m[wrist] < base.strength.positive_n_m[wrist]);
    assert!(
        dropped.relative_sd[Group::TopWrist as usize]
            < base.strength.relative_sd[Group::TopWrist as usize]
    );
    let other = joint("bottom_wrist_radial");
    assert_eq!(dropped.positive_n_m[other], base.strength.positive_n_m[other]);
}

proptest! {
    #[test]
    fn more_grip_is_never_less_torque(grip in 60.0..700.0_f64, more in 1.0..100.0_f64) {
        let with = |n: f64| {
            let mut p = someone(Sex::Male, 20.0, 1.75);
            p.grip_top_n = Some(n);
            p.grip_bottom_n = Some(n);
            player(&p).unwrap().strength
        };
        let (weak, strong) = (with(grip), with(grip + more));
        for j in 0..JOINTS.len() {
            prop_assert!(strong.positive_n_m[j] > weak.positive_n_m[j]);
            prop_assert!(strong.negative_n_m[j] > weak.negative_n_m[j]);
        }
    }
}

#[test]
fn the_same_grip_on_a_longer_lever_turns_harder_in_proportion() {
    let with = |stature_m: f64| {
        let mut p = someone(Sex::Male, 25.0, stature_m);
        p.grip_top_n = Some(400.0);
        p.grip_bottom_n = Some(400.0);
        player(&p).unwrap().strength.positive_n_m
    };
    let (short, tall) = (with(1.60), with(1.92));
    for j in 0..JOINTS.len() {
        assert_relative_eq!(tall[j], 1.2 * short[j], max_relative = 1e-12);
    }
}

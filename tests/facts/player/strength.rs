//! Capacity: the reference man, and how far the scaling carries.

use approx::assert_relative_eq;
use backlift::measurement::person::{PersonReading, Sex, WristHold};
use backlift::player::capacity::{REFERENCE_GRIP_N, REFERENCE_STATURE_M};
use backlift::player::growth::median_stature_m;
use backlift::player::joints::{BOTTOM_ARM, Group, JOINTS, TOP_ARM};
use backlift::player::player;
use proptest::prelude::*;

fn joint(name: &str) -> usize {
    JOINTS.iter().position(|it| it.name == name).expect("a joint of that name")
}

#[test]
fn each_arm_goes_by_the_grip_of_its_own_hand_and_the_trunk_by_both() {
    let mut p = PersonReading::of(Sex::Male, 25.0, REFERENCE_STATURE_M);
    p.grip_top_n = Some(0.5 * REFERENCE_GRIP_N);
    p.grip_bottom_n = Some(REFERENCE_GRIP_N);
    let s = player(&p).unwrap().strength;
    let (top, bottom) = (joint("top_elbow_flexion"), joint("bottom_elbow_flexion"));
    assert_relative_eq!(s.positive_n_m[top], 0.5 * s.positive_n_m[bottom], max_relative = 1e-12);
    assert_relative_eq!(s.positive_n_m[joint("trunk_yaw")], 0.75 * 85.0, max_relative = 1e-12);
}

#[test]
fn a_measured_grip_narrows_every_group_but_the_trunk_stays_widest() {
    let guessed = player(&PersonReading::of(Sex::Female, 15.0, 1.62)).unwrap();
    let mut reading = PersonReading::of(Sex::Female, 15.0, 1.62);
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
    let base = player(&PersonReading::of(Sex::Male, 13.0, 1.56)).unwrap();
    let with = |hold_moment_n_m, time_s, stopped_at_limit| {
        let mut p = PersonReading::of(Sex::Male, 13.0, 1.56);
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

/// Mean of all greatest torques of the top arm, N m.
fn arm_n_m(reading: &PersonReading) -> f64 {
    let strength = player(reading).unwrap().strength;
    (TOP_ARM..BOTTOM_ARM).map(|j| strength.positive_n_m[j] + strength.negative_n_m[j]).sum::<f64>()
        / 14.0
}

fn median(sex: Sex, age_y: f64) -> PersonReading {
    PersonReading::of(sex, age_y, median_stature_m(sex, age_y))
}

/// Meta-analysis of 33 studies: girls over boys 0.845 SD 0.082 at 5 to 10 years, 0.647 SD 0.061 at 14 to 17. Adults:
/// men about 1.7 times women (Axelsson et al. 2018, forearm).
#[test]
fn published_arms_of_girls_beside_boys_and_of_women_beside_men() {
    let over_males =
        |age_y: f64| arm_n_m(&median(Sex::Female, age_y)) / arm_n_m(&median(Sex::Male, age_y));
    for (age_y, published, sd) in [(7.5, 0.845, 0.082), (15.5, 0.647, 0.061)] {
        let ours = over_males(age_y);
        println!("girls over boys of {age_y}: {ours:.4}, published {published} SD {sd}");
        assert_relative_eq!(ours, published, max_relative = 1e-6);
    }
    for age_y in [5.0, 9.9, 14.0, 17.0] {
        let (published, sd) = if age_y < 10.0 { (0.845, 0.082) } else { (0.647, 0.061) };
        assert!((over_males(age_y) - published).abs() < sd, "{age_y}: {}", over_males(age_y));
    }
    for age_y in [25.0, 35.0, 45.0] {
        assert!((1.0 / over_males(age_y) - 1.7).abs() < 0.2, "{age_y}: {}", over_males(age_y));
    }
}

/// Nothing jumps with age, and from twenty on grip and stature say it all.
#[test]
fn girls_arms_grow_into_womens_without_a_step() {
    let over_males =
        |age_y: f64| arm_n_m(&median(Sex::Female, age_y)) / arm_n_m(&median(Sex::Male, age_y));
    for tenth in 50..260 {
        let (now, next) = (f64::from(tenth) / 10.0, f64::from(tenth + 1) / 10.0);
        let step = over_males(next) - over_males(now);
        assert!((-0.01..0.005).contains(&step), "{now}: {step}");
    }
}

/// The same girl, her grip read on the dynamometer just as the table says.
#[test]
fn a_girl_whose_grip_was_read_is_as_strong_as_one_whose_grip_was_looked_up() {
    for age_y in [7.5, 12.0, 15.5] {
        let guessed = median(Sex::Female, age_y);
        let grip = player(&guessed).unwrap().grip_top_n.value;
        let read =
            PersonReading { grip_top_n: Some(grip), grip_bottom_n: Some(grip), ..guessed.clone() };
        assert_relative_eq!(arm_n_m(&read), arm_n_m(&guessed), max_relative = 1e-12);
        let trunk = |it: &PersonReading| player(it).unwrap().strength.positive_n_m[0];
        assert_relative_eq!(trunk(&read), trunk(&guessed), max_relative = 1e-12);
    }
}

proptest! {
    #[test]
    fn more_grip_is_never_less_torque(grip in 60.0..700.0_f64, more in 1.0..100.0_f64) {
        let with = |n: f64| {
            let mut p = PersonReading::of(Sex::Male, 20.0, 1.75);
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
        let mut p = PersonReading::of(Sex::Male, 25.0, stature_m);
        p.grip_top_n = Some(400.0);
        p.grip_bottom_n = Some(400.0);
        player(&p).unwrap().strength.positive_n_m
    };
    let (short, tall) = (with(1.60), with(1.92));
    for j in 0..JOINTS.len() {
        assert_relative_eq!(tall[j], 1.2 * short[j], max_relative = 1e-12);
    }
}

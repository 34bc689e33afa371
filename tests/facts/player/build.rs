//! Segments, what is estimated, and what is refused.

use approx::assert_relative_eq;
use backlift::measurement::person::{PersonReading, Sex};
use backlift::player::growth::body_mass_index;
use backlift::player::{Segment, player, posture, unusual};

/// About the long axis nothing is added for the distance of head and trunk, about the others much is.
#[test]
fn head_and_trunk_together_turn_harder_than_the_trunk_but_not_about_the_long_axis() {
    let mut man = PersonReading::of(Sex::Male, 22.0, 1.741);
    man.mass_kg = Some(73.0);
    let trunk = player(&man).unwrap().segments.trunk;
    assert!(trunk.gyration_m[2] > 0.261 * 0.2429 && trunk.gyration_m[2] < 0.197 * 0.5155);
    assert!(trunk.gyration_m[0] > 0.384 * 0.5155);
}

/// De Leva 1996, Table 4, lower trunk of the man of 1.741 m and 73 kg: 0.1117 of the mass; 0.587 of 0.1457 m.
#[test]
fn pelvis_and_what_stands_on_it_are_together_the_trunk() {
    for sex in [Sex::Male, Sex::Female] {
        let mut someone = PersonReading::of(sex, 22.0, 1.741);
        someone.mass_kg = Some(73.0);
        let s = player(&someone).unwrap().segments;
        let (whole, parts) = (s.trunk, [s.pelvis, s.above_pelvis()]);
        let sum = |f: &dyn Fn(&Segment) -> f64| parts.iter().map(f).sum::<f64>();
        assert_relative_eq!(sum(&|it| it.mass_kg), whole.mass_kg, max_relative = 1e-12);
        let first = sum(&|it| it.mass_kg * it.com_m);
        assert_relative_eq!(first, whole.mass_kg * whole.com_m, max_relative = 1e-12);
        for axis in 0..3 {
            let about_hips = |it: &Segment| {
                let up_m = if axis == 2 { 0.0 } else { it.com_m };
                it.mass_kg * (it.gyration_m[axis].powi(2) + up_m * up_m)
            };
            assert!(about_hips(&parts[0]) > 0.0 && about_hips(&parts[1]) > 0.0);
            assert_relative_eq!(sum(&about_hips), about_hips(&whole), max_relative = 1e-12);
        }
        if sex == Sex::Male {
            assert_relative_eq!(s.pelvis.mass_kg, 0.1117 * 73.0, max_relative = 1e-12);
            assert_relative_eq!(s.pelvis.gyration_m[2], 0.587 * 0.1457, max_relative = 1e-12);
        }
    }
}

#[test]
fn a_child_has_lighter_arms_for_the_larger_head() {
    let mut child = PersonReading::of(Sex::Male, 6.0, 1.16);
    child.mass_kg = Some(20.6);
    assert!(player(&child).unwrap().segments.upper_arm.mass_kg / 20.6 < 0.0271);
}

#[test]
fn a_body_not_weighed_has_the_usual_build_at_its_stature() {
    let mass = player(&PersonReading::of(Sex::Male, 12.0, 1.50)).unwrap().mass_kg;
    assert!(mass.is_estimated());
    let (bmi, _) = body_mass_index(Sex::Male, 12.0);
    assert_relative_eq!(mass.value, bmi * 1.50 * 1.50, max_relative = 1e-12);
}

#[test]
fn a_measured_arm_sets_the_reach_and_leaves_the_hand_alone() {
    let base = player(&PersonReading::of(Sex::Male, 30.0, 1.80)).unwrap().segments;
    let mut long = PersonReading::of(Sex::Male, 30.0, 1.80);
    long.arm_length_m = Some(base.arm_m() + 0.020 * 1.80 + 0.030);
    let s = player(&long).unwrap().segments;
    assert_relative_eq!(s.arm_m(), base.arm_m() + 0.030, max_relative = 1e-12);
    assert_eq!(s.wrist_to_grip_m, base.wrist_to_grip_m);
    assert_eq!(s.upper_arm.mass_kg, base.upper_arm.mass_kg);
}

#[test]
fn what_was_not_measured_is_named_with_its_spread() {
    let player = player(&PersonReading::of(Sex::Female, 15.0, 1.62)).unwrap();
    for what in ["body mass", "hand length", "arm length", "grip of both hands"] {
        let found = player.estimated.iter().find(|it| it.what == what).expect(what);
        assert!(found.relative_sd > 0.0 && !found.from.is_empty());
    }
}

#[test]
fn absurd_figures_are_refused_by_the_name_of_their_field() {
    let good = PersonReading::of(Sex::Male, 25.0, 1.80);
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
    let mut reading = PersonReading::of(Sex::Male, 13.0, 1.56);
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

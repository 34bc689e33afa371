use approx::assert_relative_eq;
use backlift::bat::figures::{WeighedBat, weigh};
use backlift::bat::laws::Verdict;
use backlift::bat::notes::{Miscount, Warning};
use backlift::bat::pendulum::time_for_swings_s;
use backlift::bat::weigh_fault::WeighFault;
use backlift::frames::STANDARD_GRAVITY_M_S2;
use backlift::measurement::absurd::Absurd;
use backlift::measurement::bench::{BatReading, PICKUP_AXIS_FROM_TOP_M};

use super::{limits, reading, size, sizes, ten_swings};

fn weighed(reading: &BatReading) -> WeighedBat {
    weigh(reading, &sizes(), &limits()).unwrap()
}

fn faults(reading: &BatReading) -> Vec<WeighFault> {
    weigh(reading, &sizes(), &limits()).unwrap_err()
}

/// Time of ten swings of the invented bat if it has this swing moment, s.
fn time_s(swing_moment_kg_m2: f64) -> f64 {
    time_for_swings_s(1.18, 0.527, swing_moment_kg_m2, 10, 0.1524, 10f64.to_radians()).unwrap()
}

fn timed(time_s: f64) -> BatReading {
    BatReading { pendulum: Some(ten_swings(time_s)), ..reading() }
}

#[test]
fn a_timed_bat_has_the_swing_moment_its_pendulum_gives() {
    let bat = weighed(&timed(time_s(0.224)));
    assert_relative_eq!(bat.swing_moment_kg_m2.value, 0.224, max_relative = 1e-12);
    assert_relative_eq!(bat.bat.swing_moment_kg_m2(), 0.224, max_relative = 1e-12);
    assert!(!bat.swing_moment_kg_m2.is_estimated());
    assert!(bat.warnings.is_empty(), "{:?}", bat.warnings);
    let hold = 1.18 * STANDARD_GRAVITY_M_S2 * (0.527 - PICKUP_AXIS_FROM_TOP_M);
    assert_relative_eq!(bat.hold_moment_n_m.value, hold, max_relative = 1e-12);
    let percussion = PICKUP_AXIS_FROM_TOP_M + 0.224 / (1.18 * (0.527 - PICKUP_AXIS_FROM_TOP_M));
    assert_relative_eq!(bat.percussion_m.value, percussion, max_relative = 1e-12);
}

#[test]
fn an_untimed_bat_is_estimated_says_so_and_is_less_sure() {
    let timed = weighed(&timed(time_s(0.224)));
    let untimed = weighed(&reading());
    assert!(untimed.swing_moment_kg_m2.is_estimated());
    assert!(untimed.pickup_weight_kg.is_estimated());
    assert!(untimed.estimated.iter().any(|it| it.what == "swing moment"));
    assert!(untimed.swing_moment_kg_m2.sd > 1.5 * timed.swing_moment_kg_m2.sd);
    assert!((0.03..0.08).contains(&untimed.swing_moment_kg_m2.relative_sd()));
}

#[test]
fn a_bat_of_which_only_the_weight_is_known_still_gets_every_figure_with_more_doubt() {
    let only_weight = BatReading { size: None, length_m: None, balance_m: None, ..reading() };
    let bat = weighed(&only_weight);
    let known = weighed(&reading());
    for (a, b) in [
        (bat.length_m, known.length_m),
        (bat.balance_m, known.balance_m),
        (bat.swing_moment_kg_m2, known.swing_moment_kg_m2),
        (bat.hold_moment_n_m, known.hold_moment_n_m),
    ] {
        assert!(a.is_estimated() && a.sd > b.sd);
    }
    assert!(matches!(&bat.warnings[..], [Warning::SizeGuessedFromWeight { .. }]));
    assert_eq!(bat.estimated.len(), 4);
}

#[test]
fn the_reference_bat_picks_up_like_itself_and_a_toe_heavy_one_like_more() {
    let reference = size("short handle").reference.bat("reference").unwrap();
    let like = |balance_m| {
        let reading =
            BatReading { mass_kg: reference.mass_kg(), balance_m: Some(balance_m), ..reading() };
        weighed(&reading).pickup_weight_kg.value
    };
    assert_relative_eq!(like(reference.balance_m()), reference.mass_kg(), max_relative = 1e-9);
    assert!(like(reference.balance_m() + 0.01) > reference.mass_kg() + 0.03);
}

/// Every point of a flat bat obeys ∫x²+z² < ∫x²+y²: the moment about y is the smaller transverse one.
#[test]
fn a_bat_swings_face_first_about_its_smaller_transverse_moment() {
    let I = weighed(&timed(time_s(0.224))).bat.I_Com_B();
    let between = I.z_axis.z - I.y_axis.y;
    assert!((0.0003..0.0012).contains(&between), "{between}");
    assert!(between < I.x_axis.x);
}

#[test]
fn other_mass_properties_give_a_bat_that_has_exactly_those() {
    let bat = weighed(&timed(time_s(0.224)));
    let other = bat.with(1.20, 0.53, 0.235).unwrap();
    assert_relative_eq!(other.mass_kg(), 1.20);
    assert_relative_eq!(other.balance_m(), 0.53);
    assert_relative_eq!(other.swing_moment_kg_m2(), 0.235, max_relative = 1e-12);
    let same = bat.with(1.18, 0.527, bat.swing_moment_kg_m2.value).unwrap();
    assert_eq!(same, bat.bat);
}

/// Nine or eleven swings counted as ten move the time of one by a tenth, the moment by a fifth.
#[test]
fn a_miscounted_pendulum_is_questioned_and_the_likely_count_named() {
    let expected = weighed(&reading()).swing_moment_kg_m2.value;
    let likely = |made: f64| {
        let bat = weighed(&timed(time_s(expected) * made / 10.0));
        match &bat.warnings[..] {
            [Warning::PendulumUnlikeSize { counted: 10, likely, .. }] => *likely,
            other => panic!("{made} swings: {other:?}"),
        }
    };
    assert_eq!(likely(9.0), Some(Miscount::OneFewer));
    assert_eq!(likely(11.0), Some(Miscount::OneMore));
    let text = weighed(&timed(time_s(expected) * 0.9)).warnings[0].to_string();
    assert!(text.contains("did you count 9, 11 or single passes?"), "{text}");
}

#[test]
fn single_passes_counted_as_swings_are_faster_than_physics_allows() {
    let expected = weighed(&reading()).swing_moment_kg_m2.value;
    let found = faults(&timed(time_s(expected) / 2.0));
    assert!(matches!(found[..], [WeighFault::Absurd(Absurd::PendulumTooFast { .. })]), "{found:?}");
    assert_eq!(found[0].field(), Some("pendulum.time"));
    let found = faults(&timed(time_s(expected) * 2.0));
    assert!(matches!(found[..], [WeighFault::Absurd(Absurd::PendulumTooSlow { .. })]), "{found:?}");
}

#[test]
fn impossible_readings_are_refused_all_at_once_with_their_fields() {
    let mut broken = timed(16.0);
    broken.mass_kg = 4.0;
    broken.length_m = Some(f64::INFINITY);
    broken.balance_m = Some(-0.5);
    broken.width_m = Some(f64::NAN);
    broken.pendulum.as_mut().unwrap().swings = 0;
    broken.pendulum.as_mut().unwrap().time_s = 0.0;
    let fields: Vec<_> = faults(&broken).iter().filter_map(WeighFault::field).collect();
    assert_eq!(fields, ["mass", "length", "balance", "width", "pendulum.swings", "pendulum.time"]);
    let four_kg = faults(&BatReading { mass_kg: 4.0, ..reading() })[0].to_string();
    assert!(four_kg.contains('4') && four_kg.contains('3'), "{four_kg}");
}

#[test]
fn every_number_of_a_reading_refuses_what_is_no_number() {
    type Set = fn(&mut BatReading, f64);
    let fields: [Set; 10] = [
        |it, v| it.mass_kg = v,
        |it, v| it.length_m = Some(v),
        |it, v| it.balance_m = Some(v),
        |it, v| it.width_m = Some(v),
        |it, v| it.edge_m = Some(v),
        |it, v| it.depth_m = Some(v),
        |it, v| it.handle_diameter_m = Some(v),
        |it, v| it.pendulum.as_mut().unwrap().time_s = v,
        |it, v| it.pendulum.as_mut().unwrap().pivot_from_top_m = v,
        |it, v| it.pendulum.as_mut().unwrap().amplitude_rad = v,
    ];
    for (i, set) in fields.iter().enumerate() {
        for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -1.0] {
            let mut broken = timed(16.0);
            set(&mut broken, value);
            assert_eq!(faults(&broken).len(), 1, "field {i} accepts {value}");
        }
    }
}

#[test]
fn a_balance_point_beyond_the_toe_names_both_lengths() {
    let found = faults(&BatReading { balance_m: Some(0.9), ..reading() });
    let beyond = Absurd::BalanceBeyondToe { balance_m: 0.9, length_m: 0.851 };
    assert_eq!(found, [WeighFault::Absurd(beyond)]);
}

#[test]
fn a_pivot_below_the_balance_point_and_edges_deeper_than_the_bat_are_refused() {
    let mut upside_down = timed(16.0);
    upside_down.pendulum.as_mut().unwrap().pivot_from_top_m = 0.4;
    upside_down.balance_m = Some(0.39);
    assert_eq!(faults(&upside_down)[0].field(), Some("pendulum.pivot"));
    let swapped = BatReading { edge_m: Some(0.06), depth_m: Some(0.04), ..reading() };
    assert_eq!(faults(&swapped)[0].field(), Some("edge"));
}

#[test]
fn odd_but_possible_readings_warn_and_go_on() {
    let heavy = weighed(&BatReading { mass_kg: 1.9, ..reading() });
    assert!(heavy.warnings.iter().any(|it| matches!(it, Warning::Unusual(u) if u.field == "mass")));
    assert!(heavy.warnings.iter().any(|it| matches!(it, Warning::UnlikeItsSize { .. })));
    let wrong_size = weighed(&BatReading { size: Some("5".into()), ..reading() });
    assert!(wrong_size.warnings.iter().any(|it| matches!(it, Warning::LengthUnlikeSize { .. })));
    // Far outside every blade of the size: the scaled reference stands in.
    let odd = weighed(&BatReading { balance_m: Some(0.7), ..reading() });
    assert!(odd.swing_moment_kg_m2.value.is_finite());
}

#[test]
fn an_unknown_size_is_refused_with_the_names_there_are() {
    let found = faults(&BatReading { size: Some("Harow".into()), ..reading() });
    assert!(matches!(&found[..], [WeighFault::UnknownSize(it)] if it.known.len() == 9));
}

#[test]
fn the_size_check_uses_what_was_measured_only() {
    let mut sizes_taken = reading();
    assert_eq!(weighed(&sizes_taken).law.verdict, Verdict::NotMeasured);
    (sizes_taken.width_m, sizes_taken.depth_m, sizes_taken.edge_m) =
        (Some(0.107), Some(0.063), Some(0.038));
    assert_eq!(weighed(&sizes_taken).law.verdict, Verdict::Yes);
    sizes_taken.edge_m = Some(0.042);
    assert_eq!(weighed(&sizes_taken).law.verdict, Verdict::No);
}

//! Torque against speed, endurance, grip.

use approx::assert_relative_eq;
use backlift::player::endurance::Endurance;
use backlift::player::force_velocity::HillCurve;
use backlift::player::grip::{grip_needed_n, traction_n, twist_limit_n_m};
use proptest::prelude::*;

#[test]
fn torque_is_isometric_at_rest_and_gone_beyond_the_greatest_speed() {
    let hill = HillCurve::JOINT;
    assert_eq!(hill.at(0.0).value, 1.0);
    assert_eq!(hill.at(1.2).value, 0.0);
    assert!(hill.at(1.0).value < 0.01);
    assert!(hill.at(-50.0).value < 1.4 && hill.at(-50.0).value > 1.39);
}

#[test]
fn the_share_held_for_a_hold_time_is_the_share_again_and_never_above_one() {
    for row in [Endurance::GRIP, Endurance::SHOULDER, Endurance::TRUNK, Endurance::ELBOW] {
        assert_relative_eq!(row.share_held(row.hold_time_s(0.4)), 0.4, max_relative = 1e-12);
    }
    assert_eq!(Endurance::GRIP.share_held(5.0), 1.0);
}

#[test]
fn the_grip_needed_at_the_twist_limit_is_the_grip_there_is() {
    let (grip_n, diameter_m, friction) = (400.0, 0.036, 0.6);
    let couple_n_m = twist_limit_n_m(grip_n, diameter_m, friction);
    assert_relative_eq!(couple_n_m, 8.64, max_relative = 1e-12);
    let needed_n = grip_needed_n(0.0, couple_n_m, 0.5 * diameter_m, friction);
    assert_relative_eq!(needed_n, grip_n, max_relative = 1e-12);
    assert!(grip_needed_n(50.0, couple_n_m, 0.018, friction) > grip_n);
    let pull_n = traction_n(grip_n, friction);
    assert_relative_eq!(grip_needed_n(pull_n, 0.0, 0.018, friction), grip_n, max_relative = 1e-12);
    assert!(twist_limit_n_m(grip_n, 0.040, friction) > couple_n_m, "a thicker handle holds more");
}

proptest! {
    #[test]
    fn torque_falls_steadily_with_speed_and_its_slope_is_its_derivative(w in -3.0..1.3_f64) {
        let hill = HillCurve::JOINT;
        let h = 1e-6;
        let (before, after) = (hill.at(w - h).value, hill.at(w + h).value);
        prop_assert!(after <= before && after >= 0.0);
        // Central difference; the slope itself bends by at most 2·3·3 per unit.
        prop_assert!(((after - before) / (2.0 * h) - hill.at(w).slope).abs() < 1e-4);
    }
}

#[test]
fn the_slope_does_not_jump_at_rest_nor_where_the_foot_begins() {
    let hill = HillCurve::JOINT;
    for w in [0.0, HillCurve::FOOT] {
        let (below, above) = (hill.at(w - 1e-9), hill.at(w + 1e-9));
        assert_relative_eq!(below.slope, above.slope, epsilon = 1e-6);
        assert_relative_eq!(below.value, above.value, epsilon = 1e-6);
    }
}

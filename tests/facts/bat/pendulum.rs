use approx::assert_relative_eq;
use backlift::bat::parallel_axis::tensor_about_point;
use backlift::bat::pendulum::{pivot_moment_kg_m2, swing_moment, time_for_swings_s};
use backlift::frames::{DMat3, DVec3};

use super::ten_swings;

/// A thin rod of length L hung by one end swings like a simple pendulum of 2L/3.
#[test]
fn a_rod_hung_by_its_end_gives_m_l_squared_over_three() {
    let (mass_kg, length_m, g): (f64, f64, f64) = (0.5, 0.9, 9.81);
    let period_s = 2.0 * std::f64::consts::PI * (2.0 * length_m / (3.0 * g)).sqrt();
    let moment = pivot_moment_kg_m2(mass_kg, g, 0.5 * length_m, period_s);
    assert_relative_eq!(moment, mass_kg * length_m * length_m / 3.0, max_relative = 1e-14);
}

#[test]
fn where_the_bat_is_hung_does_not_change_its_swing_moment() {
    let (mass_kg, balance_m, swing_kg_m2) = (1.18, 0.527, 0.22);
    for pivot_m in [0.02, 0.1, 0.1524, 0.2] {
        let time_s = time_for_swings_s(mass_kg, balance_m, swing_kg_m2, 10, pivot_m, 0.2).unwrap();
        let mut reading = ten_swings(time_s);
        reading.pivot_from_top_m = pivot_m;
        reading.amplitude_rad = 0.2;
        let found = swing_moment(mass_kg, balance_m, &reading).value_kg_m2;
        assert_relative_eq!(found, swing_kg_m2, max_relative = 1e-13);
    }
    assert_eq!(time_for_swings_s(mass_kg, balance_m, swing_kg_m2, 10, 0.6, 0.2), None);
}

#[test]
fn the_stated_slopes_of_the_swing_moment_are_those_of_its_formula() {
    let mut reading = ten_swings(16.2);
    reading.pivot_from_top_m = 0.08;
    let at = |mass_kg, balance_m| swing_moment(mass_kg, balance_m, &reading).value_kg_m2;
    let slopes = swing_moment(1.18, 0.527, &reading);
    let by_mass = (at(1.181, 0.527) - at(1.179, 0.527)) / 0.002;
    let by_balance = (at(1.18, 0.528) - at(1.18, 0.526)) / 0.002;
    assert_relative_eq!(slopes.per_mass_m2, by_mass, max_relative = 1e-9);
    assert_relative_eq!(slopes.per_balance_kg_m, by_balance, max_relative = 1e-9);
}

/// Two points of 0.3 kg, one of 0.6 kg: the tensor about any point is the sum of m(|r|² 1 − r rᵀ).
#[test]
fn the_tensor_moved_to_another_point_is_that_of_the_points_seen_from_there() {
    let points = [
        (0.3, DVec3::new(0.1, 0.02, -0.03)),
        (0.3, DVec3::new(0.7, -0.05, 0.04)),
        (0.6, DVec3::new(0.5, 0.01, 0.02)),
    ];
    let about = |from: DVec3| {
        points.iter().fold(DMat3::ZERO, |sum, (m, r)| {
            let r = *r - from;
            let outer = DMat3::from_cols(r * r.x, r * r.y, r * r.z);
            sum + (DMat3::IDENTITY * r.length_squared() - outer) * *m
        })
    };
    let com = points.iter().fold(DVec3::ZERO, |sum, (m, r)| sum + *r * *m) / 1.2;
    let elsewhere = DVec3::new(0.2, -0.3, 0.6);
    let moved = tensor_about_point(about(com), 1.2, com - elsewhere);
    assert!((moved - about(elsewhere)).to_cols_array().iter().all(|it| it.abs() < 1e-15));
}

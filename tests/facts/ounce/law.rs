//! The algebra: a mass put on, the law through three stations, the axis.

use approx::assert_relative_eq;
use backlift::bat::Bat;
use backlift::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use backlift::ounce::axis::CostAxis;
use backlift::ounce::cost::{Cost, OUNCE_KG, STATIONS, StrokeOunce};
use backlift::ounce::moments::TopMoments;

use super::exponents::Exponents;
use crate::swing::players::adult_bat;

fn cost(from_top_m: f64, speed_change_m_s_per_kg: f64) -> Cost {
    Cost { from_top_m, speed_change_m_s_per_kg }
}

#[test]
fn an_ounce_is_a_sixteenth_of_a_pound() {
    assert_relative_eq!(OUNCE_KG, backlift::units::POUND_KG / 16.0, max_relative = 1e-12);
}

#[test]
fn a_mass_on_the_long_axis_adds_its_mass_times_the_square_of_its_distance() {
    let bat = adult_bat();
    for (added_kg, at_m) in [(0.03, 0.0), (0.03, 0.5), (0.1, 0.85), (-0.03, 0.7)] {
        let it = bat.with_added_mass(added_kg, at_m).unwrap();
        let (was, is) = (TopMoments::of_bat(&bat), TopMoments::of_bat(&it));
        assert_relative_eq!(is.mass_kg - was.mass_kg, added_kg, max_relative = 1e-9);
        assert_relative_eq!(is.first_kg_m - was.first_kg_m, added_kg * at_m, epsilon = 1e-12);
        let second = is.second_kg_m2 - was.second_kg_m2;
        assert_relative_eq!(second, added_kg * at_m * at_m, epsilon = 1e-12);
        let lever_m = at_m - PICKUP_AXIS_FROM_TOP_M;
        let swing = it.swing_moment_kg_m2() - bat.swing_moment_kg_m2();
        assert_relative_eq!(swing, added_kg * lever_m * lever_m, epsilon = 1e-12);
        let back = it.with_added_mass(-added_kg, at_m).unwrap();
        assert_relative_eq!(back.mass_kg(), bat.mass_kg(), max_relative = 1e-12);
        for (a, b) in back.I_Com_B().to_cols_array().into_iter().zip(bat.I_Com_B().to_cols_array())
        {
            assert_relative_eq!(a, b, epsilon = 1e-12);
        }
    }
    assert!(bat.with_added_mass(-2.0, 0.5).is_err(), "more cannot be taken off than there is");
    assert!(bat.with_added_mass(f64::NAN, 0.5).is_err());
}

#[test]
fn a_quadratic_is_given_back_by_three_of_its_points() {
    let law = [-0.7, -3.1, -9.4];
    let at = |x: f64| law[0] + law[1] * x + law[2] * x * x;
    let it = StrokeOunce::through("pull", 17.0, 0.85, [0.02, 0.4, 0.85].map(|x| cost(x, at(x))));
    for (a, b) in it.law.into_iter().zip(law) {
        assert_relative_eq!(a, b, epsilon = 1e-10);
    }
    let curve = it.curve();
    assert_eq!(curve.len(), STATIONS as usize);
    assert_eq!((curve[0].from_top_m, curve[curve.len() - 1].from_top_m), (0.0, 0.85));
    for point in curve {
        assert_relative_eq!(point.speed_change_m_s_per_kg, at(point.from_top_m), epsilon = 1e-10);
    }
    let by = TopMoments { mass_kg: 0.02, first_kg_m: 0.02 * 0.3, second_kg_m2: 0.02 * 0.3 * 0.3 };
    assert_relative_eq!(it.change_m_s(by), 0.02 * at(0.3), epsilon = 1e-12);
}

#[test]
fn a_square_about_an_axis_gives_the_axis_back_and_leaves_nothing() {
    for axis_m in [-0.2, 0.0, 0.16, 0.30, 1.0] {
        let costs: Vec<(f64, f64)> = (0..11)
            .map(|n| 0.085 * f64::from(n))
            .map(|x| (x, -6.0 * (x + axis_m) * (x + axis_m)))
            .collect();
        let it = CostAxis::of(&costs);
        assert!((it.above_top_m - axis_m).abs() < 1e-5, "{axis_m}: {it:?}");
        assert!((it.per_square_m_s_per_kg_m2 + 6.0).abs() < 1e-3, "{axis_m}: {it:?}");
        assert!(it.residual_share < 1e-6, "{axis_m}: {it:?}");
    }
}

/// A cost that is the same everywhere is no axis: most of it would have to be far away.
#[test]
fn a_cost_that_no_axis_fits_says_so() {
    let even: Vec<(f64, f64)> = (0..11).map(|n| (0.085 * f64::from(n), -1.0)).collect();
    let it = CostAxis::of(&even);
    assert!(it.residual_share > 0.05, "{it:?}");
    let rising: Vec<(f64, f64)> =
        (0..11).map(|n| (0.085 * f64::from(n), 1.0 - 0.2 * f64::from(n))).collect();
    assert!(CostAxis::of(&rising).residual_share > 0.2);
}

/// For closed forms of what is a derivative, kg. (An ounce at the toe leaves 0.16 % of third order,
/// `5/8 (m r²/I)²`.)
const SMALL_KG: f64 = 0.001;

/// A bat turned about a fixed axis by given work: `v ∝ I^(−1/2)`, so a small mass m costs `v m r² / 2 I`.
#[test]
fn a_bat_turned_about_a_fixed_axis_by_given_work_has_that_axis() {
    let bat = adult_bat();
    for axis_m in [0.0, 0.16, 0.3] {
        let moment = |bat: &Bat| {
            let it = TopMoments::of_bat(bat);
            it.second_kg_m2 + 2.0 * axis_m * it.first_kg_m + axis_m * axis_m * it.mass_kg
        };
        let speed = |bat: &Bat| 10.0 / libm::sqrt(moment(bat));
        let at = |x: f64| {
            let with = |added_kg: f64| speed(&bat.with_added_mass(added_kg, x).unwrap());
            cost(x, (with(SMALL_KG) - with(-SMALL_KG)) / (2.0 * SMALL_KG))
        };
        let it = StrokeOunce::through("turn", speed(&bat), 0.85, [0.0, 0.425, 0.85].map(at));
        let axis = it.axis();
        assert!((axis.above_top_m - axis_m).abs() < 1e-3, "{axis_m}: {axis:?}");
        let wanted = -0.5 * speed(&bat) / moment(&bat);
        assert_relative_eq!(axis.per_square_m_s_per_kg_m2, wanted, max_relative = 2e-3);
    }
}

/// `v = I^p m^q` gives back p and q.
#[test]
fn exponents_are_those_of_a_power_law() {
    let bat = adult_bat();
    let (p, q, v) = (-0.2, -0.1, 15.0);
    let (mass, swing) = (bat.mass_kg(), bat.swing_moment_kg_m2());
    let a = PICKUP_AXIS_FROM_TOP_M;
    // dv/dm (x) = v (p (x − a)² / I + q / m).
    let at = |x: f64| cost(x, v * (p * (x - a) * (x - a) / swing + q / mass));
    let it = StrokeOunce::through("law", v, 0.85, [0.0, 0.4, 0.85].map(at));
    let found = Exponents::of(&it, &bat);
    assert_relative_eq!(found.swing_moment_at_fixed_mass, p, epsilon = 1e-9);
    assert_relative_eq!(found.mass_at_fixed_swing_moment, q, epsilon = 1e-9);
}

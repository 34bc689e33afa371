//! All readings of a bat together.

use approx::assert_relative_eq;
use backlift::uncertain::Uncertain;
use backlift::workshop::combined::{Between, Reading, combined};
use backlift::workshop::pickup_moments::PickupMoments;

fn reading(mass_kg: f64, balance_m: f64, swing_moment_kg_m2: f64) -> Reading {
    Reading {
        mass_kg: Uncertain::measured(mass_kg, 0.005),
        balance_m: Uncertain::measured(balance_m, 0.002),
        swing_moment_kg_m2: Uncertain::measured(swing_moment_kg_m2, 0.0017),
    }
}

#[test]
fn one_reading_says_what_it_says() {
    let it = reading(1.02, 0.51, 0.165);
    let (all, apart) = combined(&[it], &[], 0.1).unwrap();
    assert_relative_eq!(all.mass_kg.value, 1.02, max_relative = 1e-12);
    assert_relative_eq!(all.balance_m.value, 0.51, max_relative = 1e-12);
    assert_relative_eq!(all.mass_kg.sd, 0.005, max_relative = 1e-12);
    assert_relative_eq!(all.balance_m.sd, 0.002, max_relative = 1e-9);
    assert_relative_eq!(all.swing_moment_kg_m2.sd, 0.0017, max_relative = 1e-12);
    assert!(apart.is_none());
}

/// The mean of equal readings, its error by the root of their number; a gram of drift is allowed for.
#[test]
fn four_readings_of_one_bat_halve_its_doubt() {
    let all = [1.018, 1.022, 1.026, 1.014].map(|it| reading(it, 0.51, 0.165));
    let (all, _) = combined(&all, &[Between::Nothing; 3], 0.1).unwrap();
    assert_relative_eq!(all.mass_kg.value, 1.02, epsilon = 5e-4);
    assert_relative_eq!(all.mass_kg.sd, 0.0025, max_relative = 0.1);
    assert_relative_eq!(all.swing_moment_kg_m2.sd, 0.00085, max_relative = 0.1);
}

/// Off the toe by what the plan asked: the readings before tell the weight after, within a tenth of the pass.
#[test]
fn a_pass_of_a_known_amount_carries_what_was_read_before_it() {
    let per_kg = PickupMoments { mass_kg: 1.0, first_kg_m: 0.6, second_kg_m2: 0.36 };
    let planed = |asked_kg| Between::Planed { per_kg, asked_kg };
    let readings = [reading(1.02, 0.51, 0.165), reading(1.000, 0.505, 0.1578)];
    let (known, apart) = combined(&readings, &[planed(Some(0.020))], 0.1).unwrap();
    let (unknown, _) = combined(&readings, &[planed(None)], 0.1).unwrap();
    assert_relative_eq!(known.mass_kg.sd, 0.005 / 2f64.sqrt(), max_relative = 0.06);
    // Of an unknown amount the swing moment tells something, and less.
    assert!(unknown.mass_kg.sd > 1.1 * known.mass_kg.sd, "{}", unknown.mass_kg.sd);
    assert!(apart.unwrap().abs() < 0.1);
    // What was put on or done unseen breaks the chain.
    let (other, _) = combined(&readings, &[Between::Other], 0.1).unwrap();
    assert_relative_eq!(other.mass_kg.sd, 0.005, max_relative = 1e-12);
}

#[test]
fn a_reading_that_cannot_be_of_this_bat_stands_out() {
    let readings = [reading(1.02, 0.51, 0.165), reading(1.05, 0.51, 0.165)];
    let (_, apart) = combined(&readings, &[Between::Nothing], 0.1).unwrap();
    // 30 g against the square root of 2 x 5 g squared and 1 g squared.
    assert_relative_eq!(apart.unwrap(), 0.030 / 51e-6f64.sqrt(), max_relative = 1e-9);
}

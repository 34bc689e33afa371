use approx::assert_relative_eq;
use backlift::bat::family::Family;
use backlift::bat::laws::{GaugedSize, Verdict, check_size};
use backlift::bat::makeable::{MadeBat, NotMakeable, Wanted};
use backlift::bat::sizes::{named, nearest};

use super::{limits, size, sizes};

fn wanted(mass_kg: f64, balance_m: f64) -> Wanted {
    Wanted { mass_kg, balance_m, swell_from_toe_m: None }
}

fn make(name: &str, wanted: Wanted) -> Result<MadeBat, NotMakeable> {
    Family::of(&size(name)).make("invented", &wanted, &limits())
}

/// Common practice, no source: an adult short handle weighs about 2 lb 8 oz to 2 lb 11 oz and balances
/// near 0.53 m from the top; the smallest bats weigh about 1 lb 8 oz.
#[test]
fn reference_bats_weigh_and_balance_as_the_trade_is_used_to() {
    let bats: Vec<_> =
        sizes().iter().map(|it| it.reference.bat(it.name.as_str()).unwrap()).collect();
    for pair in bats.windows(2) {
        assert!(pair[0].mass_kg() < pair[1].mass_kg(), "{} is too heavy", pair[0].label());
        assert!(pair[0].swing_moment_kg_m2() < pair[1].swing_moment_kg_m2());
    }
    let short_handle = size("short handle").reference.bat("short handle").unwrap();
    assert!((1.13..1.22).contains(&short_handle.mass_kg()));
    assert!((0.515..0.54).contains(&short_handle.balance_m()));
    assert!((0.65..0.75).contains(&bats[0].mass_kg()));
}

/// Charts of the trade (common practice, no source): bat lengths in centimetres.
#[test]
fn published_size_chart_lengths_are_the_lengths_of_the_sizes() {
    let chart = [64.1, 70.5, 73.0, 75.6, 78.1, 80.6, 83.2, 85.1, 87.3];
    let sizes = sizes();
    assert_eq!(sizes.len(), chart.len());
    for (size, cm) in sizes.iter().zip(chart) {
        assert_relative_eq!(100.0 * size.length_m(), cm, max_relative = 1e-12);
    }
}

#[test]
fn every_stature_from_a_toddler_to_a_giant_has_exactly_one_size() {
    let sizes = sizes();
    for cm in 90..=220 {
        let stature_m = f64::from(cm) / 100.0;
        assert_eq!(sizes.iter().filter(|it| it.suits_stature_m(stature_m)).count(), 1, "{cm} cm");
    }
}

#[test]
fn a_size_is_known_by_the_names_people_use() {
    let sizes = sizes();
    for (said, meant) in [
        ("SH", "short handle"),
        ("Short  Handle", "short handle"),
        ("lh", "long handle"),
        ("HARROW", "Harrow"),
        ("size 5", "5"),
    ] {
        assert_eq!(named(&sizes, said).unwrap().name, meant);
    }
    assert!(named(&sizes, "7").is_none());
    assert_eq!(nearest(&sizes, |it| it.length_m() - 0.80).unwrap().name, "6");
}

#[test]
fn a_made_bat_weighs_and_balances_exactly_what_was_asked_and_its_shape_says_so_too() {
    for (mass_kg, balance_m) in [(1.10, 0.520), (1.171, 0.525), (1.25, 0.535)] {
        let made = make("short handle", wanted(mass_kg, balance_m)).unwrap();
        assert!((made.bat.mass_kg() - mass_kg).abs() < 1e-11);
        assert!((made.bat.balance_m() - balance_m).abs() < 1e-11);
        let again = made.shape.mass_moments();
        assert!((again.mass_kg - mass_kg).abs() < 1e-11);
        let blade = &made.shape.blade;
        let check = check_size(
            &GaugedSize {
                length_m: Some(made.shape.length_m()),
                width_m: Some(blade.width_m()),
                depth_m: blade.deepest().map(|it| it.depth_m),
                edge_m: Some(blade.thickest_edge_m()),
            },
            &limits(),
        );
        assert_eq!(check.verdict, Verdict::Yes);
        let own = made.bat.swing_moment_kg_m2();
        let [low, high] = made.swing_moment_range_kg_m2;
        assert!(low < own && own < high);
    }
}

#[test]
fn the_reference_is_its_own_bat() {
    for size in sizes() {
        let reference = size.reference.bat("invented").unwrap();
        let made = Family::of(&size)
            .make("invented", &wanted(reference.mass_kg(), reference.balance_m()), &limits())
            .unwrap();
        assert_relative_eq!(
            made.bat.swing_moment_kg_m2(),
            reference.swing_moment_kg_m2(),
            max_relative = 1e-9
        );
    }
}

/// Second differences of a function without kinks shrink with the square of the step; at a kink they
/// stay of the order of the step.
#[test]
fn the_swing_moment_is_smooth_in_weight_and_balance() {
    let size = size("short handle");
    let family = Family::of(&size);
    let limits = limits();
    let swing = |mass_kg: f64, balance_m: f64| {
        family.make("", &wanted(mass_kg, balance_m), &limits).unwrap().bat.swing_moment_kg_m2()
    };
    for k in 0..40 {
        let mass_kg = 1.08 + 0.004 * f64::from(k);
        let along = |h: f64| {
            swing(mass_kg + h, 0.525) - 2.0 * swing(mass_kg, 0.525) + swing(mass_kg - h, 0.525)
        };
        assert!((along(1e-3) - 4.0 * along(5e-4)).abs() < 1e-9, "{mass_kg} kg");
        let balance_m = 0.515 + 0.0005 * f64::from(k);
        let along = |h: f64| {
            swing(1.17, balance_m + h) - 2.0 * swing(1.17, balance_m) + swing(1.17, balance_m - h)
        };
        assert!((along(1e-3) - 4.0 * along(5e-4)).abs() < 1e-8, "{balance_m} m");
    }
}

#[test]
fn more_weight_or_a_lower_balance_always_means_more_swing_moment() {
    let step = |mass_kg, balance_m| {
        make("6", wanted(mass_kg, balance_m)).unwrap().bat.swing_moment_kg_m2()
    };
    for k in 0..20 {
        let mass_kg = 0.95 + 0.005 * f64::from(k);
        assert!(step(mass_kg + 0.001, 0.497) > step(mass_kg, 0.497));
        assert!(step(mass_kg, 0.498) > step(mass_kg, 0.497));
    }
}

#[test]
fn the_swell_sits_where_it_was_asked_and_weight_and_balance_stay() {
    for swell_from_toe_m in [0.18, 0.20, 0.22] {
        let made = make(
            "short handle",
            Wanted { mass_kg: 1.17, balance_m: 0.525, swell_from_toe_m: Some(swell_from_toe_m) },
        )
        .unwrap();
        // The deepest station may be a neighbour once the blade tapers: within half their distance.
        assert!((made.shape.swell_from_toe_m() - swell_from_toe_m).abs() < 0.035);
        assert!((made.bat.balance_m() - 0.525).abs() < 1e-11);
    }
}

#[test]
fn what_cannot_be_made_says_why() {
    use NotMakeable as No;
    let adult = |mass_kg, balance_m| make("short handle", wanted(mass_kg, balance_m)).unwrap_err();
    assert!(matches!(adult(0.90, 0.525), No::Density { needed_kg_m3, .. } if needed_kg_m3 < 400.0));
    assert!(matches!(adult(1.60, 0.525), No::Density { needed_kg_m3, .. } if needed_kg_m3 > 500.0));
    assert!(matches!(adult(1.17, 0.500), No::Balance { taper, .. } if taper < 0.0));
    assert!(matches!(adult(1.17, 0.550), No::Balance { taper, .. } if taper > 0.0));
    assert!(matches!(adult(1.34, 0.535), No::TooDeep { depth_m, .. } if depth_m > 0.067));
    assert!(matches!(adult(1.17, 0.800), No::OutOfReach { .. }));
    assert!(matches!(adult(f64::NAN, 0.525), No::OutOfReach { .. }));
    let low = Wanted { mass_kg: 1.17, balance_m: 0.525, swell_from_toe_m: Some(0.05) };
    assert!(matches!(make("short handle", low).unwrap_err(), No::Swell { .. }));
}

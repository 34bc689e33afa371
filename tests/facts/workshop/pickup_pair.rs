//! The pairs that show what pickup is.

use approx::assert_relative_eq;
use backlift::bat::family::Family;
use backlift::bat::shaped::shaped;
use backlift::files::assets;
use backlift::files::fault::Source;
use backlift::files::shape::load_text;
use backlift::files::shape_text::of_shape;
use backlift::workshop::pickup_pair::{pairs, to_make};

#[test]
fn one_pair_weighs_the_same_and_swings_apart_the_other_swings_the_same_and_weighs_apart() {
    let limits = assets::limits().unwrap();
    for size in assets::sizes().unwrap() {
        let mass_kg = size.reference.mass_moments().mass_kg;
        let it = pairs(&Family::of(&size), &limits, mass_kg).unwrap();
        let [near, far] = &it.same_scale;
        assert_relative_eq!(near.bat.mass_kg(), far.bat.mass_kg(), max_relative = 1e-9);
        assert!(
            far.bat.swing_moment_kg_m2() > 1.03 * near.bat.swing_moment_kg_m2(),
            "{}",
            size.name
        );
        let [light, heavy] = &it.same_hand;
        let (a, b) = (light.bat.swing_moment_kg_m2(), heavy.bat.swing_moment_kg_m2());
        assert_relative_eq!(a, b, max_relative = 1e-5);
        assert!(heavy.bat.mass_kg() > 1.03 * light.bat.mass_kg(), "{}", size.name);
    }
}

#[test]
fn both_bats_of_one_weight_are_shapes_that_a_maker_reads_back_with_their_figures() {
    let limits = assets::limits().unwrap();
    for size in assets::sizes().unwrap() {
        let mass_kg = size.reference.mass_moments().mass_kg;
        let family = Family::of(&size);
        for it in pairs(&family, &limits, mass_kg).unwrap().same_scale {
            let shape = to_make(&it, &family, &size, &limits)
                .unwrap_or_else(|why| panic!("{}: {why}", size.name));
            let text = of_shape("One", true, &size, &shape).unwrap();
            let sizes = assets::sizes().unwrap();
            let read = load_text(Source::new("one.ron", &text), &[], &sizes)
                .unwrap_or_else(|fault| panic!("{}: {fault}", size.name));
            assert!(read.invented);
            let bat = shaped("", &read.described, &read.size, &limits).unwrap();
            // The file is written to the micrometre.
            assert_relative_eq!(bat.bat.mass_kg(), it.bat.mass_kg(), epsilon = 5e-5);
            assert_relative_eq!(bat.bat.balance_m(), it.bat.balance_m(), epsilon = 2e-5);
            assert_relative_eq!(
                bat.bat.swing_moment_kg_m2(),
                it.bat.swing_moment_kg_m2(),
                max_relative = 1e-4
            );
            assert!(bat.law.breaches.is_empty(), "{}", size.name);
            assert!(family.has_makers_swell(&shape), "{}: {}", size.name, shape.swell_from_toe_m());
        }
    }
}

#[test]
fn a_weight_that_no_bat_of_the_size_has_gives_no_pair() {
    let limits = assets::limits().unwrap();
    let sizes = assets::sizes().unwrap();
    assert!(pairs(&Family::of(&sizes[0]), &limits, 2.5).is_none());
}

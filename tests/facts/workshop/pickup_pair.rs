//! The pairs that show what pickup is.

use approx::assert_relative_eq;
use backlift::bat::family::Family;
use backlift::files::assets;
use backlift::workshop::pickup_pair::pairs;

#[test]
fn one_pair_weighs_the_same_and_swings_apart_the_other_swings_the_same_and_weighs_apart() {
    let limits = assets::limits().unwrap();
    for size in assets::sizes().unwrap() {
        let mass_kg = size.reference.mass_moments().mass_kg;
        let it = pairs(&Family::of(&size), &limits, mass_kg).unwrap();
        let [near, far] = &it.same_scale.bats;
        assert_relative_eq!(near.bat.mass_kg(), far.bat.mass_kg(), max_relative = 1e-9);
        assert!(
            far.bat.swing_moment_kg_m2() > 1.03 * near.bat.swing_moment_kg_m2(),
            "{}",
            size.name
        );
        let [light, heavy] = &it.same_hand.bats;
        let (a, b) = (light.bat.swing_moment_kg_m2(), heavy.bat.swing_moment_kg_m2());
        assert_relative_eq!(a, b, max_relative = 1e-5);
        assert!(heavy.bat.mass_kg() > 1.03 * light.bat.mass_kg(), "{}", size.name);
    }
}

#[test]
fn a_weight_that_no_bat_of_the_size_has_gives_no_pair() {
    let limits = assets::limits().unwrap();
    let sizes = assets::sizes().unwrap();
    assert!(pairs(&Family::of(&sizes[0]), &limits, 2.5).is_none());
}

//! What is put on a bat weighs what it weighs: oil, labels, the toe guard, and how the guard moves the ring.

use approx::assert_relative_eq;
use backlift::bat::beam::{Tip, free_modes};
use backlift::bat::described::{Described, DescribedExtras};
use backlift::bat::shape::BatShape;
use backlift::bat::shaped::gauged;
use backlift::bat::stiffness::Moduli;
use backlift::bat::willow::{CANE_MODULUS_PA, MODULUS_PA};

use super::{size, sizes};

const MODULI: Moduli = Moduli { willow_pa: MODULUS_PA.value, cane_pa: CANE_MODULUS_PA.value };

fn with(reference: &BatShape, extras: DescribedExtras) -> BatShape {
    Described { extras, ..Described::default() }.shape(reference).unwrap()
}

fn mass_kg(shape: &BatShape) -> f64 {
    shape.mass_moments().mass_kg
}

#[test]
fn oil_and_labels_make_a_bat_heavier_by_just_their_weight() {
    for size in sizes() {
        let dry = |labels_kg, oil_kg| {
            let extras = DescribedExtras { labels_kg, oil_kg, ..DescribedExtras::default() };
            mass_kg(&with(&size.reference, extras))
        };
        let bare_kg = dry(Some(0.0), Some(0.0));
        assert_relative_eq!(dry(Some(0.0), Some(0.012)) - bare_kg, 0.012, max_relative = 1e-9);
        assert_relative_eq!(dry(Some(0.008), Some(0.0)) - bare_kg, 0.008, max_relative = 1e-9);
    }
}

/// The guard lies under the wood: it takes nothing from it, and its middle is half its thickness below the toe.
#[test]
fn a_toe_guard_lies_under_the_wood_and_takes_no_wood_away() {
    let reference = size("short handle").reference;
    let guarded = |toe_guard_m: f64| {
        let extras =
            DescribedExtras { toe_guard_m: Some(toe_guard_m), ..DescribedExtras::default() };
        with(&reference, extras)
    };
    let (bare, thick) = (guarded(0.0), guarded(0.004));
    let toe = bare.blade.stations.last().unwrap();
    let area_m2 = toe.section(1.0, bare.blade.face_m).mass;
    let guard_kg = area_m2 * 0.004 * bare.blade.toe_guard_kg_m3;
    assert_relative_eq!(mass_kg(&thick) - mass_kg(&bare), guard_kg, max_relative = 1e-9);
    let first_kg_m = |it: &BatShape| mass_kg(it) * it.mass_moments().com_B().x;
    let lever_m = bare.length_m() + 0.002;
    let gained_kg_m = first_kg_m(&thick) - first_kg_m(&bare);
    assert_relative_eq!(gained_kg_m, guard_kg * lever_m, max_relative = 1e-9);
    // The Laws take the sizes without it.
    assert_eq!(gauged(&thick).length_m, gauged(&bare).length_m);
}

fn node_m(reference: &BatShape, toe_guard_m: f64) -> f64 {
    let mut shape = reference.clone();
    shape.blade.toe_guard_m = toe_guard_m;
    *shape.bending_modes(MODULI, 1)[0].nodes_m.last().unwrap()
}

/// The same in so many elements in the handle and in the blade.
fn node_in_m(shape: &BatShape, toe_guard_m: f64, [handle, blade]: [usize; 2]) -> f64 {
    let (shoulder_m, length_m) = (shape.handle.length_m, shape.length_m());
    let even = |from_m: f64, to_m: f64, elements: usize| {
        (0..elements).map(move |n| from_m + (to_m - from_m) * n as f64 / elements as f64)
    };
    let ends_m = even(0.0, shoulder_m, handle).chain(even(shoulder_m, length_m, blade));
    let at_m: Vec<f64> = ends_m.chain([length_m]).collect();
    let (blade, toe) = (&shape.blade, shape.blade.stations.last().unwrap());
    let kg_m = toe.section(blade.toe_guard_kg_m3, blade.face_m).mass;
    let tip = Tip { mass_kg: kg_m * toe_guard_m, length_m: toe_guard_m };
    let modes = free_modes(&at_m, &|x| shape.beam_section(x, MODULI), tip, 1);
    *modes[0].nodes_m.last().unwrap()
}

/// A quarter of a millimetre more never moves the node by more than twice what the quarter before did.
#[test]
fn the_node_moves_to_the_toe_evenly_as_the_toe_guard_thickens() {
    let reference = size("short handle").reference;
    let nodes: Vec<f64> = (0..=24).map(|n| node_m(&reference, 0.25e-3 * f64::from(n))).collect();
    println!("{nodes:?}");
    let steps: Vec<f64> = nodes.windows(2).map(|it| it[1] - it[0]).collect();
    assert!(steps.iter().all(|it| *it > 0.0), "{steps:?}");
    for pair in steps.windows(2) {
        assert!(pair[1] < 2.0 * pair[0] && pair[0] < 2.0 * pair[1], "{steps:?}");
    }
}

/// Half a millimetre is far less than the doubt by the stiffness of the woods.
#[test]
fn the_node_with_a_toe_guard_hardly_depends_on_how_many_elements_there_are() {
    let reference = size("short handle").reference;
    for thickness_m in [0.0, 0.001, 0.0015, 0.006] {
        let usual = node_m(&reference, thickness_m);
        let fine = node_in_m(&reference, thickness_m, [48, 120]);
        println!("{thickness_m} {usual} {fine}");
        assert!((usual - fine).abs() < 5e-4, "{thickness_m}: {usual} {fine}");
    }
}

//! The bow of a blade against closed forms.

use approx::assert_relative_eq;
use backlift::bat::blade::{Blade, Station};
use backlift::bat::described::{Described, DescribedBlade};
use backlift::bat::lofted_solid::MassMoments;
use backlift::bat::mesh::shells;
use backlift::bat::shaped::shaped;

use super::{is_closed, limits, size};

/// A bar of 500 by 20 by 20 mm of 500 kg/m³, its face 10 mm over the axis.
fn bar(bow_m: f64) -> Blade {
    let station = |n: u32| Station {
        from_shoulder: f64::from(n) / 20.0,
        width_m: 0.02,
        edge_m: 0.02,
        depth_m: 0.02,
        hollow: 0.0,
        camber_m: 0.0,
    };
    Blade {
        length_m: 0.5,
        face_m: 0.01,
        bow_m,
        density_kg_m3: 500.0,
        stations: (0..=20).map(station).collect(),
        face_cover_kg_m2: 0.0,
        toe_guard_m: 0.0,
        toe_guard_kg_m3: 0.0,
    }
}

fn moments(blade: &Blade) -> MassMoments {
    let mut out = MassMoments::default();
    blade.add_to(&mut out, 0.0);
    out
}

/// Sagitta of an arc: s = R − √(R² − c²/4), so R = c²/(8 s) + s/2. Source: geometry.
#[test]
fn the_face_of_a_bowed_blade_lies_on_the_circle_of_its_chord_and_sagitta() {
    let (bow_m, chord_m) = (0.012, 0.5);
    let blade = bar(bow_m);
    let radius_m = chord_m * chord_m / (8.0 * bow_m) + 0.5 * bow_m;
    let centre_m = [0.5 * chord_m, blade.face_m - bow_m + radius_m];
    for n in 0..=50 {
        let share = f64::from(n) / 50.0;
        let (x, z) = (share * chord_m - centre_m[0], blade.face_at_m(share) - centre_m[1]);
        assert_relative_eq!((x * x + z * z).sqrt(), radius_m, max_relative = 1e-12);
    }
    assert_relative_eq!(blade.face_at_m(0.0), blade.face_m, epsilon = 1e-12);
    assert_relative_eq!(blade.face_at_m(1.0), blade.face_m, epsilon = 1e-12);
    assert_relative_eq!(blade.face_at_m(0.5), blade.face_m - bow_m, epsilon = 1e-12);
}

/// A slender even bar bent to a shallow arc of sagitta s lies 2 s/3 below its chord in the mean, 8 s²/15 in the mean
/// square: its moment about the transverse axis through its centre grows by m s² (8/15 − 4/9) = 4 m s²/45. Source:
/// geometry. Accepted before: a thousandth of each, s/c being 1/100 and the next term its square.
#[test]
fn a_bent_bar_sinks_and_grows_in_inertia_as_a_shallow_arc_says() {
    let bow_m = 0.005;
    let (straight, bent) = (moments(&bar(0.0)), moments(&bar(bow_m)));
    assert_relative_eq!(bent.mass_kg, straight.mass_kg, max_relative = 1e-12);
    let sunk_m = straight.com_B().z - bent.com_B().z;
    assert_relative_eq!(sunk_m, 2.0 / 3.0 * bow_m, max_relative = 1e-3);
    let grown = bent.I_Com_B().y_axis.y - straight.I_Com_B().y_axis.y;
    assert_relative_eq!(grown, 4.0 / 45.0 * bent.mass_kg * bow_m * bow_m, max_relative = 1e-3);
    assert_relative_eq!(bent.I_Com_B().z_axis.z, straight.I_Com_B().z_axis.z, max_relative = 1e-9);
}

#[test]
fn a_bow_bends_the_solid_and_leaves_weight_spine_and_edges() {
    let size = size("short handle");
    let with = |bow_m| {
        let blade = DescribedBlade { bow_m, ..DescribedBlade::default() };
        shaped("", &Described { blade, ..Described::default() }, &size, &limits()).unwrap()
    };
    let (straight, none, bowed) = (with(None), with(Some(0.0)), with(Some(0.010)));
    assert_eq!(straight.bat, none.bat);
    assert_relative_eq!(bowed.bat.mass_kg(), straight.bat.mass_kg(), max_relative = 1e-9);
    assert_relative_eq!(bowed.bat.balance_m(), straight.bat.balance_m(), max_relative = 1e-9);
    assert_eq!(bowed.shape.blade.deepest(), straight.shape.blade.deepest());
    let [solid, _] = shells(&bowed.shape);
    assert!(is_closed(&solid));
    assert_relative_eq!(
        solid.volume_m3(),
        shells(&straight.shape)[0].volume_m3(),
        max_relative = 1e-6
    );
    // The lowest point of the back goes down by all but the whole bow.
    let lowest = |it: &backlift::bat::shaped::ShapedBat| {
        shells(&it.shape)[0].points_B.iter().map(|it| it.z).fold(f64::MAX, f64::min)
    };
    let sunk_m = lowest(&straight) - lowest(&bowed);
    assert!((0.008..=0.010).contains(&sunk_m), "{sunk_m}");
}

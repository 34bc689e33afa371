//! Described bats: over the reference, refused where they are no bat, their surface and their ring.

use approx::assert_relative_eq;
use backlift::bat::blade::Station;
use backlift::bat::described::{
    Cleft, Described, DescribedBlade, DescribedExtras, DescribedHandle,
};
use backlift::bat::gauge;
use backlift::bat::handle::HandleShape;
use backlift::bat::measured::MeasuredStation;
use backlift::bat::mesh::shells;
use backlift::bat::shape_fault::ShapeFault;
use backlift::bat::shaped::{ShapedBat, shaped};
use backlift::uncertain::Uncertain;
use proptest::prelude::*;

use super::{is_closed, limits, size};
use crate::validation::agrees;

fn of(described: &Described) -> Result<ShapedBat, Vec<ShapeFault>> {
    shaped("invented", described, &size("short handle"), &limits())
}

fn blade(blade: DescribedBlade) -> Described {
    Described { blade, ..Described::default() }
}

#[test]
fn reference_bars_wedges_and_bats_ring_as_closed_forms_and_differences_say() {
    agrees("bending");
}

#[test]
fn what_is_said_of_a_bat_comes_out_and_what_is_not_is_the_sizes() {
    let said = DescribedBlade {
        edge_m: Some(0.036),
        depth_m: Some(0.060),
        swell_from_toe_m: Some(0.210),
        hollow: Some(0.3),
        camber_m: Some(0.001),
        shoulder_width_m: Some(0.045),
        toe_depth_m: Some(0.030),
        ..DescribedBlade::default()
    };
    let bat = of(&blade(said)).unwrap();
    let made = &bat.shape.blade;
    let reference = &size("short handle").reference.blade;
    assert_relative_eq!(made.thickest_edge_m(), 0.036, max_relative = 0.02);
    assert_relative_eq!(made.deepest().unwrap().depth_m, 0.060, max_relative = 1e-9);
    assert_relative_eq!(bat.shape.swell_from_toe_m(), 0.210, max_relative = 1e-9);
    assert_relative_eq!(made.deepest().unwrap().hollow, 0.3, max_relative = 1e-9);
    assert_relative_eq!(made.stations[0].width_m, 0.045, max_relative = 1e-9);
    assert_relative_eq!(made.stations.last().unwrap().depth_m, 0.030, max_relative = 1e-9);
    assert_eq!(made.length_m, reference.length_m);
    assert_eq!(made.width_m(), reference.width_m());
}

#[test]
fn what_no_bat_has_is_refused_at_its_field_before_a_bat_is_made_of_it() {
    let extras = |extras| Described { extras, ..Described::default() };
    let handle = |handle| Described { handle, ..Described::default() };
    for (field, described) in [
        (
            "extras.oil",
            extras(DescribedExtras { oil_kg: Some(12.0), ..DescribedExtras::default() }),
        ),
        (
            "handle.cane",
            handle(DescribedHandle { cane_kg_m3: Some(1e6), ..DescribedHandle::default() }),
        ),
        (
            "handle.length",
            handle(DescribedHandle { length_m: Some(29.2), ..DescribedHandle::default() }),
        ),
        ("blade.width", blade(DescribedBlade { width_m: Some(10.8), ..DescribedBlade::default() })),
    ] {
        let faults = of(&described).unwrap_err();
        let fields: Vec<_> = faults.iter().map(ShapeFault::field).collect();
        assert_eq!(fields, [field], "{faults:?}");
        assert!(matches!(faults[0], ShapeFault::Impossible { .. }), "{faults:?}");
    }
}

#[test]
fn a_semi_oval_handle_is_oval_at_the_top_and_round_at_the_shoulder() {
    let handle = DescribedHandle {
        section: Some(HandleShape::SemiOval),
        diameter_m: Some(0.0345),
        ..DescribedHandle::default()
    };
    let bat = of(&Described { handle, ..Described::default() }).unwrap();
    let made = &bat.shape.handle;
    assert!(made.half_z_m(0.0) < 0.95 * made.half_y_m(0.0));
    assert_relative_eq!(made.half_z_m(made.length_m), made.half_y_m(made.length_m));
    let over_grip_m = made.diameter_over_grip_m(made.bottom_hand_m());
    assert_relative_eq!(over_grip_m, 0.0345, max_relative = 1e-12);
}

#[test]
fn the_surface_is_watertight_and_holds_the_volume_that_was_integrated() {
    for size in super::sizes() {
        let bat = shaped("", &Described::default(), &size, &limits()).unwrap();
        let [blade, handle] = shells(&bat.shape);
        assert!(is_closed(&blade) && is_closed(&handle), "{}", size.name);
        let volume_m3 = blade.volume_m3() + handle.volume_m3();
        assert_relative_eq!(volume_m3, bat.volume_m3, max_relative = 1e-3);
    }
}

#[test]
fn a_block_has_the_area_and_volume_of_a_block() {
    let block = |from_shoulder| Station {
        from_shoulder,
        width_m: 0.1,
        edge_m: 0.04,
        depth_m: 0.04,
        hollow: 0.0,
        camber_m: 0.0,
    };
    let mut shape = size("short handle").reference;
    shape.blade.stations = vec![block(0.0), block(1.0)];
    let [blade, _] = shells(&shape);
    let length_m = shape.blade.length_m;
    assert_relative_eq!(blade.volume_m3(), 0.1 * 0.04 * length_m, max_relative = 1e-9);
    let area_m2 = 2.0 * (0.1 * 0.04 + 0.1 * length_m + 0.04 * length_m);
    assert_relative_eq!(blade.area_m2(), area_m2, max_relative = 1e-9);
}

#[test]
fn a_cleft_gives_the_density_by_its_weight_and_the_water_in_it() {
    let wet =
        Cleft { mass_kg: 2.5, length_m: 0.7, width_m: 0.115, depth_m: 0.07, moisture: Some(0.18) };
    let density = wet.density_kg_m3();
    assert_relative_eq!(
        density.value,
        2.5 / (0.7 * 0.115 * 0.07) * 1.12 / 1.18,
        max_relative = 1e-12
    );
    let bat = of(&Described { cleft: Some(wet), ..Described::default() }).unwrap();
    assert!(bat.mass_kg.sd > 0.02 * bat.mass_kg.value, "a cleft's volume is in doubt");
}

#[test]
fn figures_that_make_no_bat_are_refused_with_the_nearest_that_does() {
    let heavy = Uncertain::measured(1200.0, 10.0);
    let faults = of(&Described { willow_kg_m3: Some(heavy), ..Described::default() }).unwrap_err();
    assert!(matches!(faults[..], [ShapeFault::Density { nearest_kg_m3: 650.0, .. }]), "{faults:?}");
    let faults = of(&blade(DescribedBlade { edge_m: Some(0.075), ..DescribedBlade::default() }))
        .unwrap_err();
    assert!(matches!(faults[0], ShapeFault::EdgeOverSpine { .. }), "{faults:?}");
    let thin = DescribedBlade {
        edge_m: Some(0.001),
        hollow: Some(1.5),
        camber_m: Some(0.0),
        ..DescribedBlade::default()
    };
    let faults = of(&blade(thin)).unwrap_err();
    assert!(
        matches!(faults[0], ShapeFault::BackThroughFace { nearest_hollow, .. } if nearest_hollow < 1.5),
        "{faults:?}"
    );
    let faults =
        of(&blade(DescribedBlade { swell_from_toe_m: Some(0.5), ..DescribedBlade::default() }))
            .unwrap_err();
    assert!(matches!(faults[..], [ShapeFault::Swell { .. }]), "{faults:?}");
    let small =
        Cleft { mass_kg: 1.9, length_m: 0.55, width_m: 0.115, depth_m: 0.07, moisture: None };
    let faults = of(&Described { cleft: Some(small), ..Described::default() }).unwrap_err();
    assert!(matches!(faults[..], [ShapeFault::Cleft { what: "length", .. }]), "{faults:?}");
}

#[test]
fn a_bat_at_the_limits_of_the_laws_with_a_cambered_face_passes_the_gauge_and_a_full_back_sticks() {
    let at_limits = DescribedBlade {
        edge_m: Some(0.039),
        depth_m: Some(0.065),
        camber_m: Some(0.004),
        ..DescribedBlade::default()
    };
    assert!(of(&blade(at_limits.clone())).unwrap().gauge.passes());
    let full = DescribedBlade { hollow: Some(-0.9), ..at_limits };
    assert!(!of(&blade(full)).unwrap().gauge.passes());
}

#[test]
fn the_gauges_opening_is_as_wide_and_deep_as_the_gauge() {
    let opening = gauge::opening_m();
    let most = |k: usize| opening.iter().map(|it| it[k]).fold(f64::MIN, f64::max);
    assert_relative_eq!(2.0 * most(0), gauge::WIDTH_M);
    assert_relative_eq!(most(1), gauge::DEPTH_M);
}

#[test]
fn a_denser_willow_is_heavier_by_its_blade_alone() {
    let at = |density: f64| {
        let willow_kg_m3 = Some(Uncertain::measured(density, 0.0));
        of(&Described { willow_kg_m3, ..Described::default() }).unwrap().bat.mass_kg()
    };
    let blade_m3 = {
        let bat = of(&Described::default()).unwrap();
        let [blade, _] = shells(&bat.shape);
        blade.volume_m3()
    };
    let by_density = (at(460.0) - at(440.0)) / 20.0;
    // The splice takes a little of the willow's place.
    assert!(by_density < blade_m3 && by_density > 0.95 * blade_m3, "{by_density} {blade_m3}");
}

proptest! {
    #[test]
    fn any_description_is_a_sound_bat_or_is_refused_and_never_a_panic(
        edge in 0.002..0.08f64,
        depth in 0.01..0.12f64,
        swell in -0.1..0.7f64,
        hollow in -1.0..1.5f64,
        camber in 0.0..0.02f64,
        toe in 0.002..0.09f64,
        shoulder in 0.02..0.12f64,
        density in 100.0..1500.0f64,
    ) {
        let described = Described {
            willow_kg_m3: Some(Uncertain::measured(density, 5.0)),
            ..blade(DescribedBlade {
                edge_m: Some(edge),
                depth_m: Some(depth),
                swell_from_toe_m: Some(swell),
                hollow: Some(hollow),
                camber_m: Some(camber),
                toe_depth_m: Some(toe),
                shoulder_width_m: Some(shoulder),
                ..DescribedBlade::default()
            })
        };
        match of(&described) {
            Ok(bat) => {
                prop_assert!(bat.bat.mass_kg().is_finite() && bat.volume_m3 > 0.0);
                let [blade, _] = shells(&bat.shape);
                prop_assert!(is_closed(&blade) && blade.volume_m3() > 0.0);
                prop_assert!(bat.bending_hz.is_some_and(|it| it.value > 10.0), "{:?}", bat.bending_hz);
            }
            Err(faults) => prop_assert!(!faults.is_empty()),
        }
    }
}

#[test]
fn a_shape_put_into_words_and_read_again_is_the_same_shape() {
    let reference = size("short handle").reference;
    let said = Described {
        blade: DescribedBlade {
            edge_m: Some(0.036),
            depth_m: Some(0.060),
            hollow: Some(0.35),
            shoulder_length_m: Some(0.06),
            ..DescribedBlade::default()
        },
        handle: DescribedHandle {
            length_m: Some(0.300),
            diameter_m: Some(0.036),
            shoulder_diameter_m: Some(0.0275),
            section: Some(HandleShape::SemiOval),
            rubber_share: Some(0.07),
            grips: Some(2),
            ..DescribedHandle::default()
        },
        ..Described::default()
    };
    let first = said.shape(&reference).unwrap();
    let again = Described::of(&first, &reference, said.density_kg_m3()).shape(&reference).unwrap();
    assert_eq!(again.blade.stations.len(), first.blade.stations.len());
    let (a, b) = (first.mass_moments(), again.mass_moments());
    assert_relative_eq!(a.mass_kg, b.mass_kg, max_relative = 1e-12);
    assert_relative_eq!(a.com_B().x, b.com_B().x, max_relative = 1e-12);
    assert!(a.I_Com_B().abs_diff_eq(b.I_Com_B(), 1e-12));
    assert_eq!(again.handle.oval, first.handle.oval);
    assert_relative_eq!(
        again.handle.shoulder_diameter_m,
        first.handle.shoulder_diameter_m,
        max_relative = 1e-12
    );
}

#[test]
fn figures_given_beside_measured_stations_are_carved_out_of_them() {
    let station = |from_toe_m: f64| MeasuredStation {
        from_toe_m,
        edge_m: 0.034 - 0.02 * from_toe_m,
        depth_m: 0.050 + 0.02 * from_toe_m,
        width_m: Some(0.106),
        hollow: Some(0.2),
        camber_m: Some(0.0015),
    };
    let measured = DescribedBlade {
        stations: (0..=10).map(|n| station(0.0559 * f64::from(10 - n))).collect(),
        ..DescribedBlade::default()
    };
    let thinner = DescribedBlade { edge_m: Some(0.030), camber_m: Some(0.002), ..measured.clone() };
    let (as_measured, thinner) = (of(&blade(measured)).unwrap(), of(&blade(thinner)).unwrap());
    assert_relative_eq!(as_measured.shape.blade.thickest_edge_m(), 0.034, max_relative = 1e-12);
    assert_relative_eq!(thinner.shape.blade.thickest_edge_m(), 0.030, max_relative = 1e-12);
    let blade = &thinner.shape.blade;
    assert_relative_eq!(blade.deepest().unwrap().camber_m, 0.002, max_relative = 1e-12);
    assert!(blade.stations.iter().all(|it| it.camber_m <= 0.002 + 1e-12));
    assert!(thinner.mass_kg.value < as_measured.mass_kg.value);
}

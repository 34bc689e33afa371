use backlift::bat::blade::{Blade, Station};
use backlift::bat::handle::Handle;
use backlift::bat::shape::BatShape;
use backlift::files::assets;
use backlift::workshop::pressing::{Pressing, PressingFault};
use proptest::prelude::*;

/// A blade that is a box of this width and depth, half a metre long, face at 20 mm, on a thin handle.
pub fn boxed([width_m, depth_m]: [f64; 2]) -> BatShape {
    let station = |from_shoulder| Station {
        from_shoulder,
        width_m,
        edge_m: depth_m,
        depth_m,
        hollow: 0.0,
        camber_m: 0.0,
    };
    BatShape {
        handle: Handle::bare(0.3, [0.03, 0.03], [1.0; 2], 0.0),
        blade: Blade {
            length_m: 0.5,
            face_m: 0.02,
            bow_m: 0.0,
            density_kg_m3: 450.0,
            stations: vec![station(0.0), station(1.0)],
            face_cover_kg_m2: 0.0,
            toe_guard_m: 0.0,
            toe_guard_kg_m3: 0.0,
        },
    }
}

/// Every thin sheet of the unpressed wood followed to where pressing puts it.
#[test]
fn a_box_pressed_sheet_by_sheet_moves_as_the_closed_form_says() {
    let [width_m, depth_m] = [0.1, 0.04];
    let shape = boxed([width_m, depth_m]);
    let pressing = Pressing { depth_m: 0.002, denser: 0.5 };
    let pressed = pressing.press(&shape).unwrap();
    assert!((pressed.layer_m - 0.008).abs() < 1e-15);
    // A sheet that ends up `behind` the pressed face holds (1 + denser) times its thickness of wood; walk from
    // where the pressing ends up to the face.
    const SHEETS: usize = 100_000;
    let thin_m = pressed.layer_m / SHEETS as f64;
    let (mut wood_m, mut z, mut zz) = (0.0, 0.0, 0.0);
    for n in 0..SHEETS {
        let behind_m = pressed.layer_m - (n as f64 + 0.5) * thin_m;
        let wood = thin_m * (1.0 + pressing.denser * (1.0 - behind_m / pressed.layer_m));
        let after = 0.02 - behind_m;
        let before = 0.02 - pressed.layer_m + wood_m + 0.5 * wood;
        z += wood * (after - before);
        zz += wood * (after * after - before * before);
        wood_m += wood;
    }
    assert!((wood_m - 0.010).abs() < 1e-9, "no wood is lost: {wood_m}");
    let area_m2 = width_m * 0.5;
    let mass_kg = 450.0 * area_m2 * depth_m;
    assert!((pressed.com_change_m - 450.0 * area_m2 * z / mass_kg).abs() < 1e-9);
    assert!((pressed.swing_moment_change_kg_m2 - 450.0 * area_m2 * zz).abs() < 1e-9);
}

#[test]
fn pressing_through_the_edges_is_refused_with_both_thicknesses() {
    let fault = Pressing { depth_m: 0.01, denser: 0.3 }.press(&boxed([0.1, 0.04])).unwrap_err();
    assert!(matches!(fault, PressingFault::ThroughTheEdges { .. }), "{fault}");
    for (depth_m, denser) in
        [(0.0, 0.4), (-1e-3, 0.4), (f64::NAN, 0.4), (1e-3, 0.0), (1e-3, 9.0), (1e-3, f64::NAN)]
    {
        assert!(Pressing { depth_m, denser }.press(&boxed([0.1, 0.04])).is_err());
    }
}

proptest! {
    /// The claim of the command: nearly nothing, for every size and every press that can be.
    #[test]
    fn no_press_moves_the_swing_moment_by_a_thousandth(
        size in 0usize..9, depth_mm in 0.2..3.0, denser in 0.2..0.9
    ) {
        let shape = assets::sizes().unwrap()[size].reference.clone();
        let swing = shape.bat("").unwrap().swing_moment_kg_m2();
        if let Ok(it) = (Pressing { depth_m: 1e-3 * depth_mm, denser }).press(&shape) {
            prop_assert!(it.swing_moment_change_kg_m2.abs() < 1e-3 * swing);
            prop_assert!(it.com_change_m < 0.0 && it.com_change_m > -1e-3);
        }
    }
}

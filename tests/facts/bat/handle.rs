//! Handles of several pieces of cane, and their grips.

use approx::assert_relative_eq;
use backlift::bat::described::{Described, DescribedHandle};
use backlift::bat::handle::Handle;
use backlift::bat::shape_fault::ShapeFault;
use backlift::bat::shaped::{ShapedBat, shaped};

use super::{limits, size};

fn of(handle: DescribedHandle) -> Result<ShapedBat, Vec<ShapeFault>> {
    shaped("", &Described { handle, ..Described::default() }, &size("short handle"), &limits())
}

/// A strip through the middle of a round handle is a band of a disc: 2 (h √(r² − h²) + r² asin(h/r)) of π r², h half
/// its thickness. Source: geometry.
#[test]
fn rubber_strips_take_the_share_of_the_section_that_they_cover() {
    let handle = Handle::bare(0.3, [0.03, 0.03], [1.0, 1.0], 540.0);
    let (r, h): (f64, f64) = (0.015, 0.001);
    let band = 2.0 * (h * (r * r - h * h).sqrt() + r * r * (h / r).asin());
    let exact = band / (std::f64::consts::PI * r * r);
    assert_relative_eq!(handle.rubber_share(2, 0.002).unwrap(), exact, max_relative = 1e-12);
    assert_eq!(handle.rubber_share(1, 0.002).unwrap(), 0.0);
    // Nineteen strips so thin that each is its chord, 2 r √(1 − (z/r)²), times its thickness.
    let chords = (1..20).map(|k| (1.0 - (f64::from(k) / 10.0 - 1.0).powi(2)).sqrt());
    let thin = chords.sum::<f64>() * 2.0 * 1e-5 / (std::f64::consts::PI * r);
    assert_relative_eq!(handle.rubber_share(20, 1e-5).unwrap(), thin, max_relative = 1e-4);
    let full = handle.rubber_share(4, 0.012).unwrap_err();
    assert!(matches!(full, ShapeFault::Strips { strips: 3, .. }), "{full}");
}

#[test]
fn more_strips_make_a_heavier_handle_and_its_cane_is_as_before() {
    let with = |pieces| {
        let handle = DescribedHandle { pieces, ..DescribedHandle::default() };
        of(handle).unwrap().shape.handle
    };
    let (one, three, five) =
        (with(Some((1, 0.0))), with(Some((3, 0.0015))), with(Some((5, 0.0015))));
    assert_relative_eq!(one.density_kg_m3, 470.0, max_relative = 1e-12);
    assert!(one.density_kg_m3 < three.density_kg_m3 && three.density_kg_m3 < five.density_kg_m3);
    assert_eq!(one.top_diameter_m, five.top_diameter_m);
}

#[test]
fn none_one_two_or_three_grips_each_weigh_a_sleeve_more() {
    let with = |grips| {
        let handle = DescribedHandle { grips: Some(grips), ..DescribedHandle::default() };
        of(handle).unwrap().bat.mass_kg()
    };
    let kg: Vec<f64> = (0..=3).map(with).collect();
    let more: Vec<f64> = kg.windows(2).map(|it| it[1] - it[0]).collect();
    // Each lies over the one before: a little more rubber.
    assert!(more[0] > 0.03 && more[0] < more[1] && more[1] < more[2], "{more:?}");
    assert!(more[2] < 1.3 * more[0], "{more:?}");
}

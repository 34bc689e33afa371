//! A shape put into its maker's words again, so that it can be kept and carved on.

use super::blade::Blade;
use super::built::{USUAL_RUBBER_KG_M3, USUAL_RUBBER_SHARE};
use super::described::{Described, DescribedBlade, DescribedExtras, DescribedHandle};
use super::handle::{Handle, HandleShape};
use super::measured::MeasuredStation;
use super::shape::BatShape;
use crate::uncertain::Uncertain;

/// Figures nearer than this to the reference bat's are its own, as a share.
const SAME: f64 = 1e-12;

impl Described {
    /// What has to be said over `reference` to get `shape`, its willow as played being so dense. Oil is
    /// counted in the willow.
    pub fn of(shape: &BatShape, reference: &BatShape, density_kg_m3: Uncertain) -> Self {
        Self {
            blade: blade(&shape.blade, &reference.blade),
            handle: handle(&shape.handle, &reference.handle),
            extras: DescribedExtras {
                labels_kg: Some(shape.blade.face_cover_kg_m2 * shape.blade.face_m2()),
                toe_guard_m: other(shape.blade.toe_guard_m, reference.blade.toe_guard_m),
                ..DescribedExtras::default()
            },
            willow_kg_m3: Some(Uncertain { value: shape.blade.density_kg_m3, ..density_kg_m3 }),
            ..Self::default()
        }
    }
}

/// The figure, unless the reference bat has it too.
fn other(it: f64, reference: f64) -> Option<f64> {
    ((it - reference).abs() > SAME * reference.abs()).then_some(it)
}

fn blade(it: &Blade, reference: &Blade) -> DescribedBlade {
    let stations = match it.stations == reference.stations {
        true => Vec::new(),
        false => it.stations.iter().map(|at| MeasuredStation::of(it.from_toe_m(at), at)).collect(),
    };
    DescribedBlade {
        length_m: other(it.length_m, reference.length_m),
        stations,
        bow_m: other(it.bow_m, reference.bow_m),
        ..DescribedBlade::default()
    }
}

fn handle(it: &Handle, reference: &Handle) -> DescribedHandle {
    // As it is read: both diameters go with the one over the grip, then the shoulder's is put right.
    let ratio = it.top_diameter_m / reference.top_diameter_m;
    let mut scaled = *reference;
    scaled.length_m = it.length_m;
    scaled.shoulder_diameter_m *= ratio;
    scaled.top_diameter_m *= ratio;
    let (cover_m, at_m) = (it.cover_m(), scaled.bottom_hand_m());
    let over_grip_m = 2.0 * (scaled.half_y_m(at_m) + cover_m);
    let cane =
        (it.density_kg_m3 - USUAL_RUBBER_SHARE * USUAL_RUBBER_KG_M3) / (1.0 - USUAL_RUBBER_SHARE);
    let grip_length_m = reference.grip_length_m * it.length_m / reference.length_m;
    let section = HandleShape::ALL.into_iter().find(|section| section.oval() == it.oval);
    DescribedHandle {
        length_m: other(it.length_m, reference.length_m),
        diameter_m: Some(over_grip_m),
        shoulder_diameter_m: other(it.shoulder_diameter_m, scaled.shoulder_diameter_m),
        section: section.filter(|_| it.oval != reference.oval),
        cane_kg_m3: other(it.density_kg_m3, reference.density_kg_m3).map(|_| cane),
        splice_m: other(it.splice_m, reference.splice_m),
        twine_m: other(it.twine_m, reference.twine_m),
        grips: (it.grips != reference.grips).then_some(it.grips),
        grip_m: other(it.grip_m, reference.grip_m),
        grip_length_m: other(it.grip_length_m, grip_length_m),
        grip_kg_m3: other(it.grip_kg_m3, reference.grip_kg_m3),
        ..DescribedHandle::default()
    }
}

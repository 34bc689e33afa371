//! A described bat as a shape: what its maker said, put over the reference bat of its size; refused where no bat is so.

use super::blade::{Blade, Station};
use super::described::Described;
use super::handle::Handle;
use super::measured::completed;
use super::possible::impossible;
use super::shape::BatShape;
use super::shape_fault::ShapeFault;
use super::sound::sound;
use super::willow::POSSIBLE_KG_M3;

impl Described {
    /// The described bat over the reference bat of its size; every reason why it is none.
    pub fn shape(&self, reference: &BatShape) -> Result<BatShape, Vec<ShapeFault>> {
        let faults = impossible(self);
        if !faults.is_empty() {
            return Err(faults);
        }
        let (shape, mut faults) = self.built(reference, &|it| it);
        faults.extend(sound(&shape));
        if let Some(Err(fault)) = self.cleft.as_ref().map(|it| it.holds(&shape.blade)) {
            faults.push(fault);
        }
        if faults.is_empty() { Ok(shape) } else { Err(faults) }
    }

    /// The same whether or not it is sound, with what cannot be met; `off` may put off each section of a measured
    /// blade.
    pub(super) fn built(
        &self,
        reference: &BatShape,
        off: &dyn Fn(Station) -> Station,
    ) -> (BatShape, Vec<ShapeFault>) {
        let mut faults = Vec::new();
        let mut shape = reference.clone();
        self.put_handle(&mut shape.handle).unwrap_or_else(|it| faults.push(it));
        self.put_blade(&mut shape.blade, off).unwrap_or_else(|it| faults.push(it));
        let density_kg_m3 = self.density_kg_m3().value;
        let [lightest, heaviest] = POSSIBLE_KG_M3;
        if !(lightest..=heaviest).contains(&density_kg_m3) {
            faults.push(ShapeFault::Density {
                density_kg_m3,
                limits_kg_m3: POSSIBLE_KG_M3,
                nearest_kg_m3: density_kg_m3.clamp(lightest, heaviest),
            });
        }
        shape.blade.density_kg_m3 = density_kg_m3;
        self.put_extras(&mut shape);
        (shape, faults)
    }

    fn put_handle(&self, handle: &mut Handle) -> Result<(), ShapeFault> {
        let it = &self.handle;
        if let Some(length_m) = it.length_m {
            handle.grip_length_m *= length_m / handle.length_m;
            handle.length_m = length_m;
        }
        handle.grips = it.grips.unwrap_or(handle.grips);
        handle.grip_m = it.grip_m.unwrap_or(handle.grip_m);
        handle.twine_m = it.twine_m.unwrap_or(handle.twine_m);
        handle.grip_kg_m3 = it.grip_kg_m3.unwrap_or(handle.grip_kg_m3);
        handle.grip_length_m =
            it.grip_length_m.unwrap_or(handle.grip_length_m).min(handle.length_m);
        handle.splice_m = it.splice_m.unwrap_or(handle.splice_m);
        if let Some(section) = it.section {
            handle.oval = section.oval();
        }
        let fitted = it.diameter_m.map_or(Ok(()), |diameter_m| handle.fit_over_grip_m(diameter_m));
        handle.shoulder_diameter_m = it.shoulder_diameter_m.unwrap_or(handle.shoulder_diameter_m);
        let of_strips = it.pieces.map(|(pieces, strip_m)| handle.rubber_share(pieces, strip_m));
        let rubber_share = of_strips.transpose()?.or(it.rubber_share);
        if it.cane_kg_m3.is_some() || it.rubber_kg_m3.is_some() || rubber_share.is_some() {
            let share = rubber_share.unwrap_or(USUAL_RUBBER_SHARE);
            handle.density_kg_m3 = (1.0 - share) * it.cane_kg_m3.unwrap_or(USUAL_CANE_KG_M3)
                + share * it.rubber_kg_m3.unwrap_or(USUAL_RUBBER_KG_M3);
        }
        fitted
    }

    fn put_blade(
        &self,
        blade: &mut Blade,
        off: &dyn Fn(Station) -> Station,
    ) -> Result<(), ShapeFault> {
        let it = &self.blade;
        blade.length_m = it.length_m.unwrap_or(blade.length_m);
        blade.bow_m = it.bow_m.unwrap_or(blade.bow_m);
        if !it.stations.is_empty() {
            blade.stations = completed(&it.stations, blade, blade.length_m, off)?;
        }
        if let Some(width_m) = it.width_m {
            blade.widen(width_m);
        }
        if let Some(edge_m) = it.edge_m {
            let ratio = edge_m / blade.thickest_edge_m();
            blade.stations.iter_mut().for_each(|it| it.edge_m *= ratio);
        }
        if let (Some(depth_m), Some(deepest_m)) = (it.depth_m, blade.deepest().map(|it| it.depth_m))
        {
            blade.stations.iter_mut().for_each(|it| it.depth_m *= depth_m / deepest_m);
        }
        if let Some(from_toe_m) = it.swell_from_toe_m {
            blade.move_swell(from_toe_m)?;
        }
        let swell = blade.deepest().copied();
        if let (Some(hollow), Some(at_swell)) = (it.hollow, swell.map(|it| it.hollow)) {
            blade.stations.iter_mut().for_each(|it| it.hollow += hollow - at_swell);
        }
        if let (Some(camber_m), Some(at_swell_m)) = (it.camber_m, swell.map(|it| it.camber_m)) {
            let cambered = |it_m: f64| match at_swell_m > 0.0 {
                true => it_m * camber_m / at_swell_m,
                false => camber_m,
            };
            blade.stations.iter_mut().for_each(|it| it.camber_m = cambered(it.camber_m));
        }
        if it.shoulder_width_m.is_some() || it.shoulder_length_m.is_some() {
            blade.cut_shoulders(it.shoulder_width_m, it.shoulder_length_m);
        }
        if let Some(depth_m) = it.toe_depth_m {
            blade.trim_toe(depth_m);
        }
        Ok(())
    }

    fn put_extras(&self, shape: &mut BatShape) {
        let it = &self.extras;
        let willow_m3 = shape.willow_m3();
        let blade = &mut shape.blade;
        blade.toe_guard_m = it.toe_guard_m.unwrap_or(blade.toe_guard_m);
        if it.labels_kg.is_some() || it.face_sheet_kg.is_some() {
            let kg = it.labels_kg.unwrap_or(0.0) + it.face_sheet_kg.unwrap_or(0.0);
            blade.face_cover_kg_m2 = kg / blade.face_m2();
        }
        if let Some(oil_kg) = it.oil_kg {
            blade.density_kg_m3 += oil_kg / willow_m3;
        }
    }
}

/// Share of a handle that is rubber strips: the reference bats' own, assumption.
pub(super) const USUAL_RUBBER_SHARE: f64 = 0.10;
/// Density of handle cane, kg/m³ (from memory, low).
pub(super) const USUAL_CANE_KG_M3: f64 = 470.0;
/// Density of the rubber strips, kg/m³ (from memory, low).
pub(super) const USUAL_RUBBER_KG_M3: f64 = 1150.0;

//! A bat as its maker describes it: what is given stands over the reference bat of its size.

use super::blade::{Blade, Station};
use super::handle::{Handle, HandleShape};
use super::laws::BatType;
use super::measured::{MeasuredStation, completed};
use super::possible::impossible;
use super::shape::BatShape;
use super::shape_fault::ShapeFault;
pub use super::sound::sound;
use super::willow::{POSSIBLE_KG_M3, USUAL_DENSITY_KG_M3};
use crate::uncertain::Uncertain;

/// What a maker says of the blade; nothing said is as in the size's reference bat. Metres.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DescribedBlade {
    /// From shoulder to toe.
    pub length_m: Option<f64>,
    /// Greatest width.
    pub width_m: Option<f64>,
    /// Greatest thickness of the edges.
    pub edge_m: Option<f64>,
    /// Spine height: greatest depth from face to spine.
    pub depth_m: Option<f64>,
    /// Height of the swell over the toe.
    pub swell_from_toe_m: Option<f64>,
    /// Hollowing of the back at the swell, 0 straight, 1 as hollow as a parabola that leaves the edge level.
    pub hollow: Option<f64>,
    /// Height of the middle of the face over its edges.
    pub camber_m: Option<f64>,
    /// Width where the handle goes in.
    pub shoulder_width_m: Option<f64>,
    /// From there to where the blade is first at its full width.
    pub shoulder_length_m: Option<f64>,
    /// Depth at the toe.
    pub toe_depth_m: Option<f64>,
    /// Heights at which it was measured, from the shoulder to the toe; between and beyond them it is completed
    /// by the size's lines. What else is given above is carved out of that.
    pub stations: Vec<MeasuredStation>,
    /// Height of the face's arc along the blade, shoulder to toe.
    pub bow_m: Option<f64>,
}

/// What a maker says of the handle.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct DescribedHandle {
    /// From the top to the shoulder, m.
    pub length_m: Option<f64>,
    /// Over the grip across, at the bottom hand, as on a card, m.
    pub diameter_m: Option<f64>,
    /// Bare, across, where it goes into the blade, m.
    pub shoulder_diameter_m: Option<f64>,
    /// Section.
    pub section: Option<HandleShape>,
    /// Density of the cane, kg/m³.
    pub cane_kg_m3: Option<f64>,
    /// Density of the rubber strips, kg/m³.
    pub rubber_kg_m3: Option<f64>,
    /// Share of the handle that is rubber.
    pub rubber_share: Option<f64>,
    /// Pieces of cane with rubber strips between them, and the strips' thickness, m: in place of the share.
    pub pieces: Option<(u32, f64)>,
    /// Length of the splice in the blade, m.
    pub splice_m: Option<f64>,
    /// Thickness of the twine, m.
    pub twine_m: Option<f64>,
    /// Number of grips.
    pub grips: Option<u32>,
    /// Thickness of one grip, m.
    pub grip_m: Option<f64>,
    /// Length of the grips, m.
    pub grip_length_m: Option<f64>,
    /// Density of the grips, kg/m³.
    pub grip_kg_m3: Option<f64>,
}

/// What is put on the blade.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct DescribedExtras {
    /// Labels and their glue, kg.
    pub labels_kg: Option<f64>,
    /// Face sheet, kg.
    pub face_sheet_kg: Option<f64>,
    /// Thickness of the toe guard, m; 0 without.
    pub toe_guard_m: Option<f64>,
    /// Oil in the wood, kg; counted evenly through the willow.
    pub oil_kg: Option<f64>,
}

/// A block of willow as sawn, weighed and measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cleft {
    /// Weight, kg.
    pub mass_kg: f64,
    /// Along the grain, m.
    pub length_m: f64,
    /// Across, m.
    pub width_m: f64,
    /// From face to back, m; of a wedge, the mean.
    pub depth_m: f64,
    /// Water at the time of weighing, kg for each kg of dry wood.
    pub moisture: Option<f64>,
}

/// One standard deviation of a cleft's volume as a share: 2 mm on each side that is not straight
/// (assumption).
const CLEFT_VOLUME_SD: f64 = 0.03;
/// Moisture to which a blade is dried, kg of water for each kg of dry wood: assumption, what 20 °C and
/// 65 % give.
pub const SEASONED: f64 = 0.12;

impl Cleft {
    /// Density of the blade to be made of it, seasoned to [`SEASONED`] where its own moisture is known,
    /// kg/m³; shrinkage is left out.
    pub fn density_kg_m3(&self) -> Uncertain {
        let volume_m3 = self.length_m * self.width_m * self.depth_m;
        let dried = self.moisture.map_or(1.0, |it| (1.0 + SEASONED) / (1.0 + it));
        let value = self.mass_kg / volume_m3 * dried;
        Uncertain::computed(value, CLEFT_VOLUME_SD * value)
    }

    /// Whether the blade can be sawn out of it.
    pub fn holds(&self, blade: &Blade) -> Result<(), ShapeFault> {
        let depth_m = blade.deepest().map_or(0.0, |it| it.depth_m);
        for (what, have_m, need_m) in [
            ("length", self.length_m, blade.length_m),
            ("width", self.width_m, blade.width_m()),
            ("depth", self.depth_m, depth_m),
        ] {
            if have_m < need_m {
                return Err(ShapeFault::Cleft { what, have_m, need_m });
            }
        }
        Ok(())
    }
}

/// A whole described bat.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Described {
    /// Blade.
    pub blade: DescribedBlade,
    /// Handle.
    pub handle: DescribedHandle,
    /// On the blade.
    pub extras: DescribedExtras,
    /// Density of the willow where it is known, kg/m³.
    pub willow_kg_m3: Option<Uncertain>,
    /// The cleft it is made of.
    pub cleft: Option<Cleft>,
    /// Its type under the Laws; not said, it is held to what the usual type may have.
    pub law_type: Option<BatType>,
}

impl Described {
    /// Density of the willow: given, of the cleft, or assumed, kg/m³.
    pub fn density_kg_m3(&self) -> Uncertain {
        let cleft = self.cleft.as_ref().map(Cleft::density_kg_m3);
        self.willow_kg_m3.or(cleft).unwrap_or(USUAL_DENSITY_KG_M3)
    }

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

    /// Share of a handle that is rubber, where its maker said so or counted its pieces.
    pub fn rubber_share(&self, handle: &Handle) -> Option<f64> {
        let of_strips = |(pieces, strip_m)| handle.rubber_share(pieces, strip_m).ok();
        self.handle.pieces.and_then(of_strips).or(self.handle.rubber_share)
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
            let ratio = width_m / blade.width_m();
            blade.stations.iter_mut().for_each(|it| it.width_m *= ratio);
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

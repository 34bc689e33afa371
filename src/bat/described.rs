//! A bat as its maker describes it: what is given stands over the reference bat of its size.

use super::blade::Blade;
use super::handle::{Handle, HandleShape};
use super::laws::BatType;
use super::measured::MeasuredStation;
use super::shape_fault::ShapeFault;
use super::willow::USUAL_DENSITY_KG_M3;
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

    /// Share of a handle that is rubber, where its maker said so or counted its pieces.
    pub fn rubber_share(&self, handle: &Handle) -> Option<f64> {
        let of_strips = |(pieces, strip_m)| handle.rubber_share(pieces, strip_m).ok();
        self.handle.pieces.and_then(of_strips).or(self.handle.rubber_share)
    }
}

//! A described bat with every figure that follows from its shape.

use super::Bat;
use super::described::Described;
use super::gauge::{self, GaugeCheck};
use super::handle::Handle;
use super::laws::{BatType, GaugedSize, LawCheck, Limits, Verdict, check_size};
use super::lofted_solid::MassMoments;
use super::mesh::{Shell, shells};
use super::pickup_weight::pickup_weight_kg;
use super::shape::BatShape;
use super::shape_fault::ShapeFault;
use super::sizes::Size;
use super::stiffness::Moduli;
use super::willow::{CANE_MODULUS_PA, MODULUS_PA};
use crate::uncertain::{Uncertain, independent_sd};

/// A bat whose shape is known.
#[derive(Clone, Debug, PartialEq)]
pub struct ShapedBat {
    /// Its shape.
    pub shape: BatShape,
    /// Its mass properties.
    pub bat: Bat,
    /// Density of its willow, kg/m³.
    pub density_kg_m3: Uncertain,
    /// Dead weight, kg; its doubt is that of the density, and of what was completed of the shape.
    pub mass_kg: Uncertain,
    /// Balance point from the top of the handle, m.
    pub balance_m: Uncertain,
    /// Swing moment, kg m².
    pub swing_moment_kg_m2: Uncertain,
    /// Pickup weight, kg.
    pub pickup_weight_kg: Uncertain,
    /// Centre of percussion for the pickup axis, m from the top of the handle.
    pub percussion_m: Uncertain,
    /// Lowest bending frequency of the free bat, Hz.
    pub bending_hz: Option<Uncertain>,
    /// Node of that bending in the blade, m from the top of the handle.
    pub bending_node_m: Option<Uncertain>,
    /// Volume, grips included, m³.
    pub volume_m3: f64,
    /// Surface, m².
    pub area_m2: f64,
    /// Limits of the Laws.
    pub law: LawCheck,
    /// Share of the length that is handle, against its limit.
    pub handle_share_allowed: bool,
    /// Share of the handle that is rubber, where its maker said it.
    pub rubber_share: Option<f64>,
    /// Its type under the Laws, where its maker said it.
    pub law_type: Option<BatType>,
    /// Most of the handle that may be rubber in a bat of its type, or of the usual one.
    pub rubber_share_limit: f64,
    /// Whether it is within its limit.
    pub rubber_share_allowed: bool,
    /// The printed gauge.
    pub gauge: GaugeCheck,
}

/// Step of the density for the slopes, kg/m³: the figures are all but straight in it.
const STEP_KG_M3: f64 = 1.0;

/// Every figure of a described bat, or everything wrong with it.
pub fn shaped(
    label: &str,
    described: &Described,
    size: &Size,
    limits: &Limits,
) -> Result<ShapedBat, Vec<ShapeFault>> {
    let shape = described.shape(&size.reference)?;
    let others = described.shapes_in_doubt(&size.reference);
    let density_kg_m3 = described.density_kg_m3();
    let rubber_share = described.rubber_share(&shape.handle);
    let bat = in_doubt(label, shape, &others, density_kg_m3, size, limits);
    let bat = bat.map_err(|it| vec![it])?;
    Ok(bat.with_rubber(rubber_share, described.law_type, limits))
}

impl ShapedBat {
    /// The same with so much rubber in its handle, and of a type, if its maker said how much and of which.
    pub fn with_rubber(
        self,
        rubber_share: Option<f64>,
        law_type: Option<BatType>,
        limits: &Limits,
    ) -> Self {
        let rubber_share_limit = limits.rubber_share_of(law_type.unwrap_or_default());
        let rubber_share_allowed = rubber_share.is_none_or(|it| it <= rubber_share_limit);
        Self { rubber_share, law_type, rubber_share_limit, rubber_share_allowed, ..self }
    }

    /// Within every limit of the Laws that can be read off a described bat.
    pub fn is_legal(&self) -> bool {
        self.law.verdict == Verdict::Yes && self.handle_share_allowed && self.rubber_share_allowed
    }
}

/// The same of a shape at hand, its willow's density known so well.
pub fn figures(
    label: &str,
    shape: BatShape,
    density_kg_m3: Uncertain,
    size: &Size,
    limits: &Limits,
) -> Result<ShapedBat, ShapeFault> {
    in_doubt(label, shape, &[], density_kg_m3, size, limits)
}

/// The same of a shape that may as well be one of `others`, each a standard deviation off by a reason of its own.
fn in_doubt(
    label: &str,
    shape: BatShape,
    others: &[BatShape],
    density_kg_m3: Uncertain,
    size: &Size,
    limits: &Limits,
) -> Result<ShapedBat, ShapeFault> {
    let bat = shape.bat(label)?;
    let mut denser = shape.clone();
    denser.blade.density_kg_m3 += STEP_KG_M3;
    let denser = denser.bat(label)?;
    let other_bats: Vec<Bat> = others.iter().filter_map(|it| it.bat(label).ok()).collect();
    let with_doubt = |of: fn(&Bat) -> f64| {
        let by_density = (of(&denser) - of(&bat)) / STEP_KG_M3 * density_kg_m3.sd;
        let by_shape = other_bats.iter().map(|it| of(it) - of(&bat));
        let all: Vec<f64> = by_shape.chain([by_density]).collect();
        Uncertain::computed(of(&bat), independent_sd(&all))
    };
    let swing_moment_kg_m2 = with_doubt(Bat::swing_moment_kg_m2);
    let reference = size.reference.bat(size.name.as_str())?;
    let pickup = |it: f64| pickup_weight_kg(&reference, it);
    let bending = bending(&shape, others);
    let [blade, handle] = shells(&shape);
    Ok(ShapedBat {
        density_kg_m3,
        mass_kg: with_doubt(Bat::mass_kg),
        balance_m: with_doubt(Bat::balance_m),
        swing_moment_kg_m2,
        pickup_weight_kg: Uncertain::computed(
            pickup(swing_moment_kg_m2.value),
            pickup(swing_moment_kg_m2.sd),
        ),
        percussion_m: with_doubt(Bat::percussion_m),
        bending_hz: bending.map(|it| it[0]),
        bending_node_m: bending.map(|it| it[1]),
        volume_m3: volume_m3(&shape),
        area_m2: area_m2(&blade, &handle),
        law: check_size(&gauged(&shape), limits),
        handle_share_allowed: shape.handle.length_m <= limits.handle_share * shape.length_m(),
        rubber_share: None,
        law_type: None,
        rubber_share_limit: limits.rubber_share_of(BatType::default()),
        rubber_share_allowed: true,
        gauge: gauge::pass(&shape.blade),
        bat,
        shape,
    })
}

/// The outside's area: the two shells less the two lids on which they touch.
fn area_m2(blade: &Shell, handle: &Shell) -> f64 {
    let shoulder_m = handle.points_B.iter().map(|it| it.x).fold(0.0, f64::max);
    let lids: f64 = handle
        .corners()
        .filter(|it| it.iter().all(|p| (p.x - shoulder_m).abs() < 1e-12))
        .map(|[a, b, c]| 0.5 * (b - a).cross(c - a).x.abs())
        .sum();
    blade.area_m2() + handle.area_m2() - 2.0 * lids
}

/// Volume, grips included, m³: the handle in a stuff of one kilogram for each cubic metre, and the blade.
fn volume_m3(shape: &BatShape) -> f64 {
    let handle = Handle { density_kg_m3: 1.0, twine_kg_m3: 1.0, grip_kg_m3: 1.0, ..shape.handle };
    let mut moments = MassMoments::default();
    handle.add_down_to_shoulder(&mut moments);
    moments.mass_kg + shape.blade.volume_m3()
}

/// Frequency and node of the first bending, with what the stiffness of willow and cane, and the shape, leave open.
fn bending(shape: &BatShape, others: &[BatShape]) -> Option<[Uncertain; 2]> {
    let at = |shape: &BatShape, willow: f64, cane: f64| {
        let moduli = Moduli {
            willow_pa: MODULUS_PA.value + willow * MODULUS_PA.sd,
            cane_pa: CANE_MODULUS_PA.value + cane * CANE_MODULUS_PA.sd,
        };
        let mode = shape.bending_modes(moduli, 1).into_iter().next()?;
        Some([mode.frequency_hz, *mode.nodes_m.last()?])
    };
    let best = at(shape, 0.0, 0.0)?;
    let mut off = vec![at(shape, 1.0, 0.0)?, at(shape, 0.0, 1.0)?];
    off.extend(others.iter().filter_map(|it| at(it, 0.0, 0.0)));
    Some(core::array::from_fn(|k| {
        let all: Vec<f64> = off.iter().map(|it| it[k] - best[k]).collect();
        Uncertain::computed(best[k], independent_sd(&all))
    }))
}

/// The sizes that the Laws limit, read off the solid.
pub fn gauged(shape: &BatShape) -> GaugedSize {
    GaugedSize {
        length_m: Some(shape.length_m()),
        width_m: Some(shape.blade.width_m()),
        depth_m: shape.blade.deepest().map(|it| it.depth_m),
        edge_m: Some(shape.blade.thickest_edge_m()),
    }
}

//! A bat's shape with more or less water in its wood.

use crate::bat::shape::BatShape;

/// Share of a dry handle's weight that is cane and takes water; the rest is rubber strips. From the densities
/// assumed for the reference bats: nine tenths of cane at 470 in a handle of 540 kg/m³ (assumption).
pub const CANE_SHARE: f64 = 0.78;

/// How much the water in cane moves for that in wood. Assumption: cane holds as much as wood in the same
/// air; no table of rattan was seen.
pub const CANE_RESPONSE: f64 = 1.0;
/// One standard deviation of [`CANE_RESPONSE`]. Assumption.
pub const CANE_RESPONSE_SD: f64 = 0.2;

/// The shape after its wood has gone from one moisture to another, kg of water for each kg of dry wood.
///
/// Willow's weight goes with `(1 + M)` at the same dry weight, that of the handle with `(1 + k M)`, k the
/// share that is cane times `cane_response`: there and back is the same bat. Swelling is neglected here: across the
/// grain it moves no weight along the bat (see [`super::swelling`] for its size).
pub fn wetted(shape: &BatShape, from: f64, to: f64, cane_response: f64) -> BatShape {
    let heavier = |takes: f64| (1.0 + takes * to) / (1.0 + takes * from);
    let mut wet = shape.clone();
    wet.blade.density_kg_m3 *= heavier(1.0);
    wet.handle.density_kg_m3 *= heavier(CANE_SHARE * cane_response);
    wet
}

/// Weight of the willow and of the handle's cane with its rubber strips in a shape, kg.
pub fn willow_and_handle_kg(shape: &BatShape) -> [f64; 2] {
    let mass_kg = |shape: &BatShape| shape.mass_moments().mass_kg;
    let without = |change: &dyn Fn(&mut BatShape)| {
        let mut less = shape.clone();
        change(&mut less);
        mass_kg(shape) - mass_kg(&less)
    };
    [without(&|it| it.blade.density_kg_m3 = 0.0), without(&|it| it.handle.density_kg_m3 = 0.0)]
}

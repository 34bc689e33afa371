//! What the wood is taken to be where it was not weighed.

use crate::uncertain::{Origin, Uncertain};

/// Density of a pressed blade at the bench when no cleft was weighed, kg/m³: middle and spread of what
/// makers find. No primary source for cricket-bat willow was seen.
pub const USUAL_DENSITY_KG_M3: Uncertain =
    Uncertain { value: 440.0, sd: 25.0, origin: Origin::Assumed };

/// Lightest and heaviest that any willow can be, kg/m³: wide on purpose. Dried willows on data pages have
/// 400 to 437; a blade outside these limits is a slip of the tape or of the scale.
pub const POSSIBLE_KG_M3: [f64; 2] = [280.0, 650.0];

/// Stiffness of willow along the grain, Pa: between black willow at 12 % moisture, 6.96 GPa, and white
/// willow, 7.76 GPa (from memory, low). Source: Salix nigra at 12 % moisture on a supplier's data page that quotes standard
/// data (read second-hand); Salix alba from memory.
pub const MODULUS_PA: Uncertain = Uncertain { value: 7.2e9, sd: 0.8e9, origin: Origin::Estimated };

/// Least and greatest stiffness of handle cane along the grain, Pa: order of magnitude (from memory, low).
pub const CANE_MODULUS_RANGE_PA: [f64; 2] = [1.0e9, 4.0e9];

/// Stiffness of the handle's cane with its rubber strips, Pa: the middle of [`CANE_MODULUS_RANGE_PA`]. The strips lie
/// across the blow and take the cane's place, not its stiffness.
pub const CANE_MODULUS_PA: Uncertain = Uncertain {
    value: 0.5 * (CANE_MODULUS_RANGE_PA[0] + CANE_MODULUS_RANGE_PA[1]),
    sd: 0.8e9,
    origin: Origin::Assumed,
};

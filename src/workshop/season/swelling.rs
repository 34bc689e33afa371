//! How much wider and deeper a blade gets in damp air.
//!
//! Source: Wood Handbook, FPL-GTR-190 (2010), ch. 4, Table 4-3, willow, black, read second-hand: it stands in for white,
//! which has no row.

/// Shrinkage along the radius of the tree from green to dry, a share.
pub const RADIAL: f64 = 0.033;
/// Shrinkage along the growth rings from green to dry, a share.
pub const TANGENTIAL: f64 = 0.087;
/// Moisture above which wood no longer swells. Source: the same chapter (from memory, high).
pub const FIBRE_SATURATION: f64 = 0.30;

/// Share by which a length of the green shrinkage `shrinkage` grows when the moisture goes from one value to
/// another; straight between dry and [`FIBRE_SATURATION`] (Wood Handbook, the same chapter, from memory).
pub fn swelling(shrinkage: f64, from: f64, to: f64) -> f64 {
    let size = |moisture: f64| {
        1.0 - shrinkage * (FIBRE_SATURATION - moisture.min(FIBRE_SATURATION)) / FIBRE_SATURATION
    };
    size(to) / size(from) - 1.0
}

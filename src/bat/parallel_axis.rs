//! A moment of inertia moved between parallel axes (Huygens–Steiner).

use crate::frames::{DMat3, DVec3};
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;

/// Swing moment, kg m²: about the transverse axis (along y of B) through the pickup axis, from mass, centre of
/// mass and the tensor about it.
pub fn swing_moment_kg_m2(mass_kg: f64, com_B: DVec3, I_Com_B: &DMat3) -> f64 {
    let d = com_B.x - PICKUP_AXIS_FROM_TOP_M;
    I_Com_B.y_axis.y + mass_kg * (d * d + com_B.z * com_B.z)
}

/// Tensor of inertia about the point P, from that about the centre of mass; `p_PCom_B` runs from P to
/// the centre of mass: `I_P = I_Com + m (|p|² 1 − p pᵀ)`.
pub fn tensor_about_point(I_Com_B: DMat3, mass_kg: f64, p_PCom_B: DVec3) -> DMat3 {
    let p = p_PCom_B;
    let outer = DMat3::from_cols(p * p.x, p * p.y, p * p.z);
    I_Com_B + (DMat3::from_diagonal(DVec3::splat(p.length_squared())) - outer) * mass_kg
}

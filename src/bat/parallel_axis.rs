//! A moment of inertia moved between parallel axes (Huygens–Steiner).

use crate::frames::{DMat3, DVec3};

/// Moment of inertia about an axis `distance_m` from the parallel one through the centre of mass:
/// `I = I_com + m d²`, kg m².
pub fn moment_about_parallel_axis_kg_m2(
    com_moment_kg_m2: f64,
    mass_kg: f64,
    distance_m: f64,
) -> f64 {
    com_moment_kg_m2 + mass_kg * distance_m * distance_m
}

/// The way back: `I_com = I − m d²`, kg m². Negative for figures that no body can have.
pub fn moment_about_com_kg_m2(moment_kg_m2: f64, mass_kg: f64, distance_m: f64) -> f64 {
    moment_kg_m2 - mass_kg * distance_m * distance_m
}

/// Tensor of inertia about the point P, from that about the centre of mass; `p_PCom_B` runs from P to
/// the centre of mass: `I_P = I_Com + m (|p|² 1 − p pᵀ)`.
pub fn tensor_about_point(I_Com_B: DMat3, mass_kg: f64, p_PCom_B: DVec3) -> DMat3 {
    let p = p_PCom_B;
    let outer = DMat3::from_cols(p * p.x, p * p.y, p * p.z);
    I_Com_B + (DMat3::from_diagonal(DVec3::splat(p.length_squared())) - outer) * mass_kg
}

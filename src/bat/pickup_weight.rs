//! Pickup weight: a bat "picks up like 2 lb 7 oz" although it weighs 2 lb 9 oz.

use super::Bat;

/// Scale weight of the reference bat of the same size that has this swing moment, kg:
/// `m_ref · I / I_ref`, the reference shape scaled in mass.
///
/// The reference is a parametric blade of ours, not a measured bat (no measured moment of inertia of a
/// cricket bat could be read): an assumption, the same for every bat of a size. Across sizes compare
/// swing moments only.
pub fn pickup_weight_kg(reference: &Bat, swing_moment_kg_m2: f64) -> f64 {
    reference.mass_kg() * swing_moment_kg_m2 / reference.swing_moment_kg_m2()
}

//! A high and a low middle at one dead weight: what the place of the swell costs in pickup.

use crate::bat::laws::Limits;
use crate::bat::shape::BatShape;
use crate::bat::shaped::{ShapedBat, figures};
use crate::bat::sizes::Size;
use crate::uncertain::Uncertain;

/// How far the swell is moved either way, m (about an inch and a quarter).
pub const MOVE_M: f64 = 0.03;

/// The bat with its swell high, as it is, and low, the wood made thicker or thinner all over so that the
/// dead weight stays. Those whose swell would leave the blade are left out.
pub fn middles(
    shape: &BatShape,
    density_kg_m3: Uncertain,
    size: &Size,
    limits: &Limits,
) -> Vec<(&'static str, ShapedBat)> {
    let swell_m = shape.swell_from_toe_m();
    let mass_kg = shape.mass_moments().mass_kg;
    [("high middle", MOVE_M), ("as it is", 0.0), ("low middle", -MOVE_M)]
        .into_iter()
        .filter_map(|(name, move_m)| {
            let mut moved = shape.clone();
            if move_m != 0.0 {
                moved.blade.move_swell(swell_m + move_m).ok()?;
                weigh_again(&mut moved, mass_kg)?;
            }
            Some((name, figures(name, moved, density_kg_m3, size, limits).ok()?))
        })
        .collect()
}

/// Thins or thickens the whole blade until the bat weighs so much; the weight is straight in the thickness.
fn weigh_again(shape: &mut BatShape, mass_kg: f64) -> Option<()> {
    for _ in 0..3 {
        let at = |factor: f64| {
            let mut it = shape.clone();
            it.blade.thicken(factor);
            it.mass_moments().mass_kg
        };
        let (now, more) = (at(1.0), at(1.01));
        let factor = 1.0 + 0.01 * (mass_kg - now) / (more - now);
        if !(factor.is_finite() && factor > 0.1) {
            return None;
        }
        shape.blade.thicken(factor);
    }
    Some(())
}

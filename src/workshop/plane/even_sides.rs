//! A pass shared out between the two sides of a blade that balances to one of them, so that it comes to balance on its
//! middle.

use super::bench::Bench;
use super::pass::Pass;
use super::thinner::lever_m;
use crate::bat::shape::BatShape;

/// Least that either side gives of a pass that evens the sides, as a share of it: assumption.
const LEAST_OF_A_SIDE: f64 = 0.2;

/// Takes more off the side to which the blade balances, until its middle is in the middle.
pub(super) fn evened(passes: &mut [Pass], bench: &Bench<'_>) {
    let mut heavy_kg_m = bench.reading.mass_kg.value * bench.left_m;
    let mut before = bench.shape.clone();
    for it in passes {
        let of_pass = shared(heavy_kg_m, it.off_kg, &before, &it.shape);
        if let (Some(sides_kg), Some(shared)) = (&mut it.sides_kg, of_pass) {
            (*sides_kg, heavy_kg_m) = (shared.sides_kg, shared.heavy_kg_m);
        }
        before = it.shape.clone();
    }
}

/// What a pass takes off the left side and off the right.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shared {
    /// kg, left and right.
    pub sides_kg: [f64; 2],
    /// What is still heavier on the left after it, kg m about the middle.
    pub heavy_kg_m: f64,
}

/// Shares out a pass that takes so much (kg) from one shape to the other, off a blade so much heavier on its left, kg m
/// about the middle: as much more off the heavy side as evens it, or as much as a pass may. None where no wood of a
/// side comes off.
pub fn shared(heavy_kg_m: f64, off_kg: f64, before: &BatShape, after: &BatShape) -> Option<Shared> {
    let lever_m = lever_m(before, after)?;
    let most_kg = (0.5 - LEAST_OF_A_SIDE) * off_kg;
    let more_kg = (0.5 * heavy_kg_m / lever_m).clamp(-most_kg, most_kg);
    Some(Shared {
        sides_kg: [0.5 * off_kg + more_kg, 0.5 * off_kg - more_kg],
        heavy_kg_m: heavy_kg_m - 2.0 * more_kg * lever_m,
    })
}

//! A blade that balances to one side of its middle, evened by the passes it gets anyway.

use super::bench::Bench;
use super::pass::Pass;
use super::thinner::lever_m;

/// Least that either side gives of a pass that evens the sides, as a share of it: assumption.
const LEAST_OF_A_SIDE: f64 = 0.2;

/// Takes more off the side to which the blade balances, until its middle is in the middle.
pub(super) fn evened(passes: &mut [Pass], bench: &Bench<'_>) {
    let mut heavy_kg_m = bench.mass_kg.value * bench.left_m;
    let mut before = bench.shape.clone();
    for it in passes {
        if let (Some(sides_kg), Some(lever_m)) = (&mut it.sides_kg, lever_m(&before, &it.shape)) {
            let most_kg = (0.5 - LEAST_OF_A_SIDE) * it.off_kg;
            let more_kg = (0.5 * heavy_kg_m / lever_m).clamp(-most_kg, most_kg);
            *sides_kg = [0.5 * it.off_kg + more_kg, 0.5 * it.off_kg - more_kg];
            heavy_kg_m -= 2.0 * more_kg * lever_m;
        }
        before = it.shape.clone();
    }
}

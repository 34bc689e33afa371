//! Where a pass takes its wood: how much thinner the blade is there after it.

use crate::bat::blade::Blade;
use crate::bat::shape::BatShape;

/// How much thinner `after` is than `before`, m, at a share of the way from shoulder to toe and `u` of the way
/// from an edge (0) to the middle (1); nought where either has no wood to tell of.
pub fn thinner_m(before: &Blade, after: &Blade, from_shoulder: f64, u: f64) -> f64 {
    let thick_m = |blade: &Blade| {
        let (face_m, back_m) = blade.at(from_shoulder)?.face_and_back_m(0.0, u);
        Some(face_m - back_m)
    };
    match (thick_m(before), thick_m(after)) {
        (Some(before_m), Some(after_m)) => before_m - after_m,
        _ => 0.0,
    }
}

/// Steps along and across a blade in which places are looked for.
const STEPS: [u32; 2] = [40, 8];

/// All places that are looked at: share from the shoulder, and share of the way from an edge to the middle.
fn places() -> impl Iterator<Item = [f64; 2]> {
    let [along, across] = STEPS;
    let share = |n: u32, of: u32| f64::from(n) / f64::from(of);
    (0..=along).flat_map(move |a| (0..=across).map(move |c| [share(a, along), share(c, across)]))
}

/// Where wood comes off deepest, and how deep.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Deepest {
    /// Most that the blade gets thinner anywhere, m.
    pub deep_m: f64,
    /// Share of the way from the shoulder to the toe.
    pub from_shoulder: f64,
    /// Share of the way from an edge to the middle.
    pub from_edge: f64,
}

/// Where it comes off deepest from one shape to the other; in the middle where nothing does.
pub fn deepest(before: &BatShape, after: &BatShape) -> Deepest {
    let nowhere = Deepest { deep_m: 0.0, from_shoulder: 0.5, from_edge: 1.0 };
    places().fold(nowhere, |most, [from_shoulder, from_edge]| {
        let deep_m = thinner_m(&before.blade, &after.blade, from_shoulder, from_edge);
        if deep_m > most.deep_m { Deepest { deep_m, from_shoulder, from_edge } } else { most }
    })
}

/// How far from the middle of the blade the wood of one side lies that comes off, m; none where none comes off.
pub fn lever_m(before: &BatShape, after: &BatShape) -> Option<f64> {
    let [mut wood, mut moment] = [0.0; 2];
    for [from_shoulder, from_edge] in places() {
        let Some(station) = before.blade.at(from_shoulder) else { continue };
        let half_m = 0.5 * station.width_m;
        let deep_m = thinner_m(&before.blade, &after.blade, from_shoulder, from_edge).max(0.0);
        wood += deep_m * half_m;
        moment += deep_m * half_m * half_m * (1.0 - from_edge);
    }
    (wood > 0.0).then(|| moment / wood)
}

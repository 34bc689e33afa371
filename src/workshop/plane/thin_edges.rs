//! Edges that a pass leaves thinner than makers of the size leave them.
//!
//! A warning, not a limit: what a place can give ends where edges no longer last
//! ([`Craft::thinnest_edge_m`](crate::bat::sizes::Craft::thinnest_edge_m)). Long before that a blade looks and plays like
//! none that is sold.

use super::Plan;
use crate::bat::blade::Blade;
use crate::bat::shape::BatShape;

/// Makers leave edges no thinner than this share of those of the size's standard bat, at the same place along the blade:
/// common practice, no source (from memory, low: 28 mm where the adult bat's stand at 35).
pub const LEFT_BY_MAKERS: f64 = 0.8;

/// An edge that came out thin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThinEdge {
    /// The edge, m.
    pub edge_m: f64,
    /// The thinnest that makers of the size leave there, m.
    pub makers_m: f64,
    /// Where, as a share of the way from shoulder to toe: where it is thinnest against what makers leave.
    pub from_shoulder: f64,
}

/// Less than this off an edge is no cut of it, m.
const TOUCHED_M: f64 = 1e-5;
/// Places along a blade that are looked at.
const PLACES: u32 = 100;
/// From where to where, as shares of the way from shoulder to toe: shoulders and toe are cut as thin as a maker likes, and
/// no figure of what is usual there is known here.
const ALONG: [f64; 2] = [0.16, 0.88];

/// The edge between shoulders and toe that is thinnest, against what makers of the standard bat's size leave, of those that were cut from one blade
/// to the other; none where all that were cut are as thick.
pub fn thin_edge(before: &Blade, after: &Blade, standard: &Blade) -> Option<ThinEdge> {
    let edge_m = |blade: &Blade, at: f64| blade.at(at).map(|it| it.edge_m);
    let [from, to] = ALONG;
    let places = (0..=PLACES).map(|n| from + (to - from) * f64::from(n) / f64::from(PLACES));
    let thin = places.filter_map(|at| {
        let (was_m, is_m) = (edge_m(before, at)?, edge_m(after, at)?);
        let makers_m = LEFT_BY_MAKERS * edge_m(standard, at)?;
        let found = ThinEdge { edge_m: is_m, makers_m, from_shoulder: at };
        (was_m - is_m > TOUCHED_M && is_m < makers_m).then_some(found)
    });
    let share = |it: &ThinEdge| it.edge_m / it.makers_m;
    thin.min_by(|a, b| share(a).total_cmp(&share(b)))
}

impl Plan {
    /// Of each pass, the edge that it leaves thinner than makers leave it, off a bat that was `shape` before any, of the
    /// size of this standard bat.
    pub fn thin_edges(&self, shape: &BatShape, standard: &BatShape) -> Vec<Option<ThinEdge>> {
        let before = (0..self.passes.len()).map(|n| &self.after(shape, n).blade);
        let passes = self.passes.iter().map(|it| &it.shape.blade);
        before.zip(passes).map(|(a, b)| thin_edge(a, b, &standard.blade)).collect()
    }
}

//! How far off its middle a blade balances now: as it was read last, less what was evened since.
//!
//! A reading holds until the next one. Each pass since on a place with two sides is taken to have evened what the plan
//! asks of such a pass; wood that came off without a place (another stage cut) ends what was read.

use super::history::Now;
use super::plane::cuts::cut;
use super::plane::even_sides::shared;
use super::stages::{Entry, Stage};

/// How far to the left of its middle the bat of these entries balances now, m; nought where nobody looked, or what was
/// read no longer holds.
pub fn left_m(entries: &[Entry], now: &Now) -> f64 {
    let reads = |it: &Entry| it.left_m.map(|left_m| (left_m, it.mass_kg));
    let last = entries.iter().enumerate().rev().find_map(|(n, it)| Some((n, reads(it)?)));
    let Some((at, (left_m, mass_kg))) = last else { return 0.0 };
    let since = entries.get(at + 1..).unwrap_or_default();
    let Some(end) = since.last() else { return left_m };
    if since.iter().any(is_cut_anew) {
        return 0.0;
    }
    let mut heavy_kg_m = mass_kg * left_m;
    let mut before = now.planed.from.clone();
    let planed = entries.iter().enumerate().skip(now.first + 1);
    let planed = planed.filter(|(_, it)| it.planed.is_some());
    for ((n, _), pass) in planed.zip(&now.planed.passes) {
        let after = cut(&before, pass.place, pass.amount);
        if n > at && pass.place.has_two_sides() {
            let off_kg = before.mass_moments().mass_kg - after.mass_moments().mass_kg;
            let evened = shared(heavy_kg_m, off_kg, &before, &after);
            heavy_kg_m = evened.map_or(heavy_kg_m, |it| it.heavy_kg_m);
        }
        before = after;
    }
    heavy_kg_m / end.mass_kg
}

/// The blade was cut into another stage since the entry before: nobody knows from which side.
fn is_cut_anew(it: &Entry) -> bool {
    !it.again && matches!(it.stage, Stage::Roughed | Stage::Shaped)
}

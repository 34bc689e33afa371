//! What stands against a carved shape: craft, the Laws, the cleft, sound wood.

use super::{SLACK, Start};
use crate::bat::blade::{HOLLOW, Station};
use crate::bat::sound::sound;
use crate::workshop::carved::Carved;

/// What craft, the Laws, the cleft or sound wood say against a carved shape, in plain words, with the nearest that will
/// do.
pub(super) fn objection(carved: &Carved, start: &Start<'_>) -> Option<String> {
    let (craft, limits) = (&start.size.craft, start.limits);
    let blade = &carved.shape.blade;
    // What is not in the cleft cannot be carved out of it, whatever else is said.
    if let Some(fault) = start.cleft.as_ref().and_then(|it| it.holds(blade).err()) {
        return Some(fault.to_string());
    }
    let depth_m = blade.deepest().map_or(0.0, |it| it.depth_m);
    let (thick_m, thin_m) = (blade.thickest_edge_m(), blade.thinnest_edge_m());
    let swell_m = carved.shape.swell_from_toe_m();
    let [low_m, high_m] = craft.swell_from_toe.map(|it| it * blade.length_m);
    let swell_is_in = (low_m - SLACK..=high_m + SLACK).contains(&swell_m);
    let mm = |it: f64| 1e3 * it;
    let beyond = [
        (
            depth_m > limits.depth_m,
            format!(
                "it would be {:.1} mm deep; the Laws allow {:.0} mm",
                mm(depth_m),
                mm(limits.depth_m)
            ),
        ),
        (
            thick_m > limits.edge_m,
            format!(
                "its edges would be {:.1} mm thick; the Laws allow {:.0} mm",
                mm(thick_m),
                mm(limits.edge_m)
            ),
        ),
        (
            thin_m < craft.thinnest_edge_m,
            format!(
                "its edges would be {:.1} mm thin; below {:.0} mm they do not last",
                mm(thin_m),
                mm(craft.thinnest_edge_m)
            ),
        ),
        (
            carved.taper.abs() > craft.greatest_taper,
            format!(
                "the blade would taper by {:.2}; makers go to {}",
                carved.taper, craft.greatest_taper
            ),
        ),
        (
            carved.swell_move.abs() > craft.greatest_swell_move,
            format!(
                "the swell would move by {:.2} of the blade; makers go to {}",
                carved.swell_move, craft.greatest_swell_move
            ),
        ),
        (
            start.held.swell_from_toe_m.is_none() && !swell_is_in,
            format!(
                "the swell would lie {:.0} mm from the toe; makers of size {} cut it {:.0} to {:.0} mm from it",
                mm(swell_m),
                start.size.name,
                mm(low_m),
                mm(high_m)
            ),
        ),
        (
            carved.ends.abs() > 1.0,
            format!(
                "the ends of the blade would need {:.1} times the wood that makers shift there",
                carved.ends.abs()
            ),
        ),
    ];
    let first = beyond.into_iter().find_map(|(is, words)| is.then_some(words));
    let [fullest, hollowest] = HOLLOW;
    let odd = |it: &Station| !(fullest..=hollowest).contains(&it.hollow);
    first.or_else(|| sound(&carved.shape).first().map(ToString::to_string)).or_else(|| {
        let words = "its back would be fuller or hollower than can be described".to_owned();
        blade.stations.iter().any(odd).then_some(words)
    })
}

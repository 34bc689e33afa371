//! What stands against a carved shape: craft, the Laws, the cleft, sound wood.

use super::{SLACK, Start};
use crate::bat::blade::{HOLLOW, Station};
use crate::bat::sizes::Craft;
use crate::bat::sound::sound;
use crate::workshop::carved::Carved;

/// Why a carved shape cannot be made, or may not be used.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Objection {
    /// In plain words, with the nearest that will do.
    pub(super) words: String,
}

/// What craft, the Laws, the cleft or sound wood say against a carved shape.
pub(super) fn objection(carved: &Carved, start: &Start<'_>) -> Option<Objection> {
    let craft: &Craft = &start.size.craft;
    let (blade, limits) = (&carved.shape.blade, start.limits);
    let over = |is: bool, words: String| is.then_some(Objection { words });
    let depth_m = blade.deepest().map_or(0.0, |it| it.depth_m);
    let (thick_m, thin_m) = (blade.thickest_edge_m(), blade.thinnest_edge_m());
    let mm = |it: f64| 1e3 * it;
    // What is not in the cleft cannot be carved out of it, whatever else is said.
    let held = start.cleft.as_ref().and_then(|it| it.holds(blade).err());
    held.map(|it| Objection { words: it.to_string() })
    .or_else(|| {
    over(
        depth_m > limits.depth_m,
        format!(
            "it would be {:.1} mm deep; the Laws allow {:.0} mm",
            mm(depth_m),
            mm(limits.depth_m)
        ),
    )
    })
    .or_else(|| {
        over(
            thick_m > limits.edge_m,
            format!(
                "its edges would be {:.1} mm thick; the Laws allow {:.0} mm",
                mm(thick_m),
                mm(limits.edge_m)
            ),
        )
    })
    .or_else(|| {
        over(
            thin_m < craft.thinnest_edge_m,
            format!(
                "its edges would be {:.1} mm thin; below {:.0} mm they do not last",
                mm(thin_m),
                mm(craft.thinnest_edge_m)
            ),
        )
    })
    .or_else(|| {
        let most = craft.greatest_taper;
        let words = format!("the blade would taper by {:.2}; makers go to {most}", carved.taper);
        over(carved.taper.abs() > most, words)
    })
    .or_else(|| {
        let most = craft.greatest_swell_move;
        let words = format!(
            "the swell would move by {:.2} of the blade; makers go to {most}",
            carved.swell_move
        );
        over(carved.swell_move.abs() > most, words)
    })
    .or_else(|| {
        let [low_m, high_m] = craft.swell_from_toe.map(|it| it * blade.length_m);
        let swell_m = carved.shape.swell_from_toe_m();
        let is_in = (low_m - SLACK..=high_m + SLACK).contains(&swell_m);
        let words = format!(
            "the swell would lie {:.0} mm from the toe; makers of size {} cut it {:.0} to {:.0} mm from it",
            mm(swell_m),
            start.size.name,
            mm(low_m),
            mm(high_m)
        );
        over(start.held.swell_from_toe_m.is_none() && !is_in, words)
    })
    .or_else(|| {
        let words = format!(
            "the ends of the blade would need {:.1} times the wood that makers shift there",
            carved.ends.abs()
        );
        over(carved.ends.abs() > 1.0, words)
    })
    .or_else(|| {
        sound(&carved.shape).into_iter().next().map(|it| Objection { words: it.to_string() })
    })
    .or_else(|| {
        let [fullest, hollowest] = HOLLOW;
        let odd = |it: &Station| !(fullest..=hollowest).contains(&it.hollow);
        let words = "its back would be fuller or hollower than can be described".to_owned();
        over(blade.stations.iter().any(odd), words)
    })
}

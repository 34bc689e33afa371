//! Two strips to be cut out: the line of the spine and the line of the edges, seen from the side.

use super::INSIDE;
use super::palette::PRINT;
use super::picture::{Picture, Stroke};
use super::profile_tile::{Tile, behind_m, ends, foot};
use super::type_setting::{Anchor, Lettering, Size};
use super::words::number;
use crate::bat::blade::{Blade, Station};
use crate::units::INCH_M;

/// Least width of a strip, m.
const LEAST_M: f64 = 0.018;
/// Room for the places left of a strip, px.
const PLACES: f64 = 62.0;
/// Room to the right of a strip, px.
const AFTER: f64 = 60.0;

/// Both strips on their page.
pub(super) fn draw(picture: &mut Picture, tile: &Tile, blade: &Blade) {
    ends(picture, tile);
    let right = strip(picture, tile, blade, "spine", INSIDE.x, |it| it.depth_m);
    strip(picture, tile, blade, "edges", right + AFTER, |it| it.edge_m);
    let words = "Cut along the thick line; the straight side lies along the face. Figures in mm from the face";
    foot(picture, Size::Quiet.line_px(), words);
}

/// One strip from `left`; returns where it ends.
fn strip(
    picture: &mut Picture,
    tile: &Tile,
    blade: &Blade,
    name: &str,
    left: f64,
    of_m: impl Fn(&Station) -> f64,
) -> f64 {
    let quiet = Lettering::new(Size::Quiet, PRINT.ink);
    let (bold, text) = (quiet.bold(), quiet.anchored(Anchor::End));
    let line_m = |it: &Station| behind_m(blade, it) + of_m(it);
    let all = || blade.stations.iter().map(line_m);
    let (least_m, most_m) = (all().fold(f64::INFINITY, f64::min), all().fold(0.0, f64::max));
    // The straight side is cut so far behind the face that a narrow strip is left.
    let cut_m = (least_m - LEAST_M).max(0.0);
    let base = left + PLACES;
    let at = |it: &Station| line_m(it) - cut_m;
    let curve = tile.line(blade, base, at);
    let right = base + (most_m - cut_m) * tile.px_per_m;
    let (Some(first), Some(last)) = (curve.first().copied(), curve.last().copied()) else {
        return right;
    };
    let hair = Stroke::solid(PRINT.hairline, 0.6);
    for inch in tile.inches().filter(|it| f64::from(*it) * INCH_M <= blade.length_m) {
        let from_toe_m = f64::from(inch) * INCH_M;
        let Some(station) = blade.at(1.0 - from_toe_m / blade.length_m) else { continue };
        let (x, y) = (base + at(&station) * tile.px_per_m, tile.y(from_toe_m));
        picture.line([base, y], [x, y], hair);
        picture.line([x - 8.0, y], [x, y], Stroke::solid(PRINT.ink, 0.8));
        picture.text(left, y + 5.0, bold, &format!("{inch} in"));
        picture.text(x - 12.0, y - 3.0, text, &number(1e3 * of_m(&station), 1));
    }
    picture.line([base, first[1]], [base, last[1]], Stroke::solid(PRINT.ink, 1.0));
    picture.polyline(&curve, Stroke::solid(PRINT.ink, 1.8));
    if tile.number == 1 {
        picture.line([base, first[1]], first, Stroke::solid(PRINT.ink, 1.8));
    }
    if tile.number == tile.all {
        picture.line([base, last[1]], last, Stroke::solid(PRINT.ink, 1.8));
    }
    let head = match cut_m > 0.0 {
        true => format!("{name}; straight side {} mm behind the face", number(1e3 * cut_m, 1)),
        false => format!("{name}; straight side along the face"),
    };
    picture.text(left, tile.top - 16.0, bold, &head);
    right
}

//! The bat to scale, handle up, with stations marked. An outline to find them by, not a pattern to cut.

use super::PX_PER_MM;
use super::area::Area;
use super::chart::spread;
use super::picture::{Picture, Stroke};
use super::type_setting::{Lettering, Size};
use super::words::{joined, millimetres};
use crate::card::{Card, Figure};

/// The bat's scale, one to this: the longest bat of the trade still fits beside the figures.
pub(super) const ONE_TO: f64 = 7.0;
/// Blade's width as a share of the bat's length, for the picture. Source: assumption; 108 mm, the most that
/// Law 5 allows, on a bat of 864 mm.
const WIDTH_SHARE: f64 = 0.125;
/// Handle and shoulders as shares of the length, for the picture. Source: assumption.
const HANDLE_SHARE: f64 = 0.33;
const SHOULDER_SHARE: f64 = 0.37;

/// The outline seen on the face, closed: m from the top of the handle, and m across.
pub fn outline(length_m: f64, handle_diameter_m: f64) -> Vec<[f64; 2]> {
    let half_width = 0.5 * WIDTH_SHARE * length_m;
    let half_handle = 0.5 * handle_diameter_m;
    let (handle_end, shoulder, toe) =
        (HANDLE_SHARE * length_m, SHOULDER_SHARE * length_m, length_m);
    let round = 0.5 * half_width;
    let right_side = [
        [0.0, half_handle],
        [handle_end, half_handle],
        [handle_end + 0.25 * (shoulder - handle_end), 0.75 * half_width],
        [shoulder, half_width],
        [toe - round, half_width],
        [toe - 0.5 * round, 0.9 * half_width],
        [toe - 0.1 * round, 0.6 * half_width],
        [toe, 0.0],
    ];
    let left_side = right_side.iter().rev().map(|[along, across]| [*along, -across]);
    right_side.iter().copied().chain(left_side).chain([[0.0, half_handle]]).collect()
}

/// Draws the card's bat at the left of an area, from its top, with the stations' names to the right.
pub(super) fn draw(picture: &mut Picture, area: Area, card: &Card) {
    let theme = picture.theme;
    let (length_m, handle_diameter_m) = (card.length_m, card.handle_diameter_m());
    let px_per_m = 1e3 * PX_PER_MM / ONE_TO;
    let half_width = 0.5 * WIDTH_SHARE * length_m * px_per_m;
    let half_handle = 0.5 * handle_diameter_m * px_per_m;
    let middle = area.x + half_width + 8.0;
    let at = |from_top_m: f64| area.y + px_per_m * from_top_m;
    let outline: Vec<[f64; 2]> = outline(length_m, handle_diameter_m)
        .iter()
        .map(|[from_top_m, across_m]| [middle + px_per_m * across_m, at(*from_top_m)])
        .collect();
    picture.polygons([outline.as_slice()], theme.panel, 1.0);
    let ink = Stroke::solid(theme.ink, 1.5);
    picture.polyline(&outline, ink);
    // The splice, a V from the shoulders down the middle of the face.
    let splice = Stroke::solid(theme.hairline, 1.0);
    let (handle_end, shoulder) = (at(HANDLE_SHARE * length_m), at(SHOULDER_SHARE * length_m));
    let point = [middle, shoulder + 1.4 * half_width];
    picture.line([middle - half_handle, handle_end], point, splice);
    picture.line([middle + half_handle, handle_end], point, splice);

    let name = Lettering::new(Size::Quiet, theme.ink).bold();
    let quiet = Lettering::new(Size::Quiet, theme.ink);
    let line_px = Size::Quiet.line_px();
    let mut marks = [
        ("pendulum rods", card.pendulum_pivot_m),
        ("balance point", card.balance_m()),
        ("sweet spot", length_m - card.asked(Figure::SweetSpot).target),
    ];
    marks.sort_by(|a, b| a.1.total_cmp(&b.1));
    let wanted = marks.map(|it| at(it.1));
    let text_x = middle + half_width + 22.0;
    for ((what, from_top_m), y) in marks.into_iter().zip(spread(&wanted, 3.0 * line_px + 6.0)) {
        let station_y = at(from_top_m);
        let [left, right] = [middle - half_width - 4.0, middle + half_width + 4.0];
        picture.line([left, station_y], [right, station_y], Stroke::solid(theme.ink, 2.0));
        picture.line([right, station_y], [text_x - 4.0, y], Stroke::solid(theme.ink, 1.0));
        picture.text(text_x, y + 4.5, name, what);
        let ends = [(length_m - from_top_m, "toe"), (from_top_m, "top")];
        for (k, (at_m, end)) in ends.into_iter().enumerate() {
            let line = format!("{} from the {end}", joined(&millimetres(at_m)));
            picture.text(text_x, y + 4.5 + line_px * (k + 1) as f64, quiet, &line);
        }
    }
}

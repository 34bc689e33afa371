//! The bat to scale, handle up, with stations marked. An outline to find them by, not a pattern to cut.

use super::area::Area;
use super::chart::spread;
use super::palette::Theme;
use super::picture::{PX_PER_MM, Picture, Stroke};
use super::type_setting::{Lettering, Size};

/// A station to mark.
#[derive(Clone, Debug, PartialEq)]
pub struct BatMark {
    /// Where, m from the top of the handle.
    pub from_top_m: f64,
    /// What it is.
    pub name: String,
    /// Where it is, in words, a line each.
    pub lines: Vec<String>,
}

/// What the drawing shows.
#[derive(Clone, Debug, PartialEq)]
pub struct BatDrawing {
    /// Overall length, m.
    pub length_m: f64,
    /// Handle diameter, m.
    pub handle_diameter_m: f64,
    /// Stations.
    pub marks: Vec<BatMark>,
    /// Scale: one to this many.
    pub one_to: f64,
}

/// Blade's width as a share of the bat's length, for the picture. Source: assumption; 108 mm, the most that
/// Law 5 allows, on a bat of 864 mm.
const WIDTH_SHARE: f64 = 0.125;
/// Handle and shoulders as shares of the length, for the picture. Source: assumption.
const HANDLE_SHARE: f64 = 0.33;
const SHOULDER_SHARE: f64 = 0.37;

/// The bat as an SVG of so many px.
pub fn svg(bat: &BatDrawing, theme: &Theme, width: f64, height: f64) -> String {
    let mut picture = Picture::new(width, height, theme);
    draw(&mut picture, Area::new(16.0, 16.0, width - 32.0, height - 32.0), bat, theme);
    picture.finish()
}

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

/// Draws the bat at the left of an area, from its top, with the stations' names to the right.
pub fn draw(picture: &mut Picture, area: Area, bat: &BatDrawing, theme: &Theme) {
    let px_per_m = 1e3 * PX_PER_MM / bat.one_to;
    let half_width = 0.5 * WIDTH_SHARE * bat.length_m * px_per_m;
    let half_handle = 0.5 * bat.handle_diameter_m * px_per_m;
    let middle = area.x + half_width + 8.0;
    let at = |from_top_m: f64| area.y + px_per_m * from_top_m;
    let outline: Vec<[f64; 2]> = outline(bat.length_m, bat.handle_diameter_m)
        .iter()
        .map(|[from_top_m, across_m]| [middle + px_per_m * across_m, at(*from_top_m)])
        .collect();
    picture.polygons([outline.as_slice()], theme.panel, 1.0);
    let ink = Stroke::solid(theme.ink, 1.5);
    picture.polyline(&outline, ink);
    // The splice, a V from the shoulders down the middle of the face.
    let splice = Stroke::solid(theme.hairline, 1.0);
    let (handle_end, shoulder) =
        (at(HANDLE_SHARE * bat.length_m), at(SHOULDER_SHARE * bat.length_m));
    let point = [middle, shoulder + 1.4 * half_width];
    picture.line([middle - half_handle, handle_end], point, splice);
    picture.line([middle + half_handle, handle_end], point, splice);

    let name = Lettering::new(Size::Quiet, theme.ink).bold();
    let quiet = Lettering::new(Size::Quiet, theme.ink);
    let line_px = Size::Quiet.line_px();
    let mut marks: Vec<&BatMark> = bat.marks.iter().collect();
    marks.sort_by(|a, b| a.from_top_m.total_cmp(&b.from_top_m));
    let tallest = marks.iter().map(|it| it.lines.len() + 1).max().unwrap_or(1);
    let block = line_px * tallest as f64 + 6.0;
    let wanted: Vec<f64> = marks.iter().map(|it| at(it.from_top_m)).collect();
    let text_x = middle + half_width + 22.0;
    for (mark, y) in marks.iter().zip(spread(&wanted, block)) {
        let station_y = at(mark.from_top_m);
        let arm = Stroke::solid(theme.ink, 2.0);
        picture.line(
            [middle - half_width - 4.0, station_y],
            [middle + half_width + 4.0, station_y],
            arm,
        );
        picture.line(
            [middle + half_width + 4.0, station_y],
            [text_x - 4.0, y],
            Stroke::solid(theme.ink, 1.0),
        );
        picture.text(text_x, y + 4.5, name, &mark.name);
        for (k, line) in mark.lines.iter().enumerate() {
            picture.text(text_x, y + 4.5 + line_px * (k + 1) as f64, quiet, line);
        }
    }
}

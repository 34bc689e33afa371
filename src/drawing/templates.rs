//! Sections of a blade at their true size, to be printed and held against the wood.

use super::area::Area;
use super::palette::PRINT;
use super::picture::{Picture, Stroke};
use super::type_setting::{Lettering, Size};
use super::words::number;
use super::{INSIDE, PX_PER_MM};
use crate::bat::blade::{Blade, Station};
use crate::bat::gauge;
use crate::bat::mesh::{ACROSS, outline};
use crate::units::INCH_M;

/// Places of the sections, m from the toe, beside the swell.
const FROM_TOE_M: [f64; 6] = [0.010, 0.100, 0.300, 0.380, 0.460, 0.520];
/// Sections nearer than this to another are left out, m.
const APART_M: f64 = 0.03;
/// Sections on a page.
const ON_A_PAGE: usize = 3;
/// Length of the bar by which the print is checked, mm.
pub const BAR_MM: f64 = 150.0;

/// Under everything that is held against the wood.
pub(super) const TAKE_CARE: &str =
    "Willow dust harms the lungs: wear a mask. Keep both hands behind the blade";

/// Under the sections.
const FOOT: [&str; 2] = [
    "Dashed: the printed gauge of the Laws as remembered, the section placed where it has most room",
    TAKE_CARE,
];

/// Pages of A4, the toe's section first. `title` names the bat.
pub fn pages(blade: &Blade, title: &str) -> Vec<String> {
    let places = places(blade);
    let all = places.len().div_ceil(ON_A_PAGE);
    places.chunks(ON_A_PAGE).enumerate().map(|(n, it)| page(blade, title, n + 1, all, it)).collect()
}

/// Places of the sections, m from the toe.
fn places(blade: &Blade) -> Vec<f64> {
    let swell_m = blade.deepest().map_or(0.0, |it| blade.from_toe_m(it));
    let mut places: Vec<f64> = FROM_TOE_M
        .into_iter()
        .filter(|it| *it < blade.length_m - APART_M && (it - swell_m).abs() > APART_M)
        .chain([swell_m])
        .collect();
    places.sort_by(f64::total_cmp);
    places
}

fn page(blade: &Blade, title: &str, number_of: usize, all: usize, places: &[f64]) -> String {
    let mut picture = Picture::page();
    let quiet = Lettering::new(Size::Quiet, PRINT.quiet);
    let words = format!(
        "Sections at their true size, page {number_of} of {all}. Print at 100 %: the bar must measure {BAR_MM:.0} mm"
    );
    heading(&mut picture, title, &words);
    let top = INSIDE.y + 104.0;
    let row = (INSIDE.bottom() - 40.0 - top) / ON_A_PAGE as f64;
    for (n, from_toe_m) in places.iter().enumerate() {
        let Some(station) = blade.at(1.0 - from_toe_m / blade.length_m) else { continue };
        let area = Area::new(INSIDE.x, top + n as f64 * row, INSIDE.width, row);
        section(&mut picture, area, blade, &station);
    }
    for (n, line) in FOOT.iter().enumerate() {
        let up = (FOOT.len() - 1 - n) as f64 * Size::Quiet.line_px();
        picture.text(INSIDE.x, INSIDE.bottom() - up, quiet, line);
    }
    picture.finish()
}

/// The head of a page to be printed at 100 %: the bat in two lines at most, what is on the page, and the bar.
pub(super) fn heading(picture: &mut Picture, title: &str, words: &str) {
    let Area { x, y, width: room, .. } = INSIDE;
    let text = Lettering::new(Size::Text, PRINT.ink);
    let lines = text.bold().first_lines(text.bold().wrapped(title, room), 2, room, "…");
    for (n, line) in lines.iter().rev().enumerate() {
        picture.text(x, y + 34.0 - n as f64 * Size::Text.line_px(), text.bold(), line);
    }
    picture.text(x, y + 54.0, text, words);
    bar(picture, [x, y + 74.0]);
}

/// The bar by which the print is checked, a tick each centimetre.
fn bar(picture: &mut Picture, [x, y]: [f64; 2]) {
    let ink = Stroke::solid(PRINT.ink, 1.0);
    picture.line([x, y], [x + BAR_MM * PX_PER_MM, y], ink);
    let ticks = (BAR_MM / 10.0) as usize;
    for n in 0..=ticks {
        let at = x + 10.0 * n as f64 * PX_PER_MM;
        let long = if n % 5 == 0 { 8.0 } else { 4.0 };
        picture.line([at, y - long], [at, y], ink);
    }
    let quiet = Lettering::new(Size::Quiet, PRINT.ink);
    picture.text(x + BAR_MM * PX_PER_MM + 8.0, y + 4.0, quiet, &format!("{BAR_MM:.0} mm"));
}

/// One section, face up, with its figures beside it.
fn section(picture: &mut Picture, area: Area, blade: &Blade, station: &Station) {
    let px_per_m = 1e3 * PX_PER_MM;
    let middle = area.x + 0.5 * gauge::WIDTH_M * px_per_m + 4.0;
    let (_, face_m) = gauge::placed(station);
    let top = area.y + 16.0;
    // Depth runs down the page from the lowest point of the gauge's base.
    let at = |[y, depth_m]: [f64; 2]| [middle + y * px_per_m, top + depth_m * px_per_m];
    let mut opening: Vec<[f64; 2]> = gauge::opening_m().into_iter().map(at).collect();
    opening.extend(opening.first().copied());
    picture.polyline(&opening, Stroke { colour: PRINT.quiet, width: 0.8, dash: "4 3" });
    let around = outline(blade, 0.0, station, ACROSS).concat();
    let own_m = blade.face_at_m(station.from_shoulder);
    let mut around: Vec<[f64; 2]> =
        around.into_iter().map(|it| at([it.y, face_m - (it.z - own_m)])).collect();
    around.extend(around.first().copied());
    picture.polyline(&around, Stroke::solid(PRINT.ink, 1.0));
    let hair = Stroke::solid(PRINT.hairline, 0.6);
    let [_, spine] = at([0.0, face_m + station.depth_m]);
    picture.line([middle, top - 6.0], [middle, spine + 8.0], hair);

    let text = Lettering::new(Size::Text, PRINT.ink);
    let x = area.x + gauge::WIDTH_M * px_per_m + 28.0;
    let mm = |value_m: f64| format!("{} mm", number(1e3 * value_m, 1));
    let from_toe_m = blade.from_toe_m(station);
    let inches = number(from_toe_m / INCH_M, 2);
    let lines = [
        (text.bold(), format!("{} ({inches} in) from the toe", mm(from_toe_m))),
        (text, format!("width {}", mm(station.width_m))),
        (text, format!("edges {}", mm(station.edge_m))),
        (text, format!("depth {}", mm(station.depth_m))),
        (text, format!("hollow of the back {} %", number(100.0 * station.hollow, 0))),
        (text, format!("camber of the face {}", mm(station.camber_m))),
    ];
    for (n, (lettering, line)) in lines.iter().enumerate() {
        picture.text(x, top + 24.0 + n as f64 * Size::Text.line_px(), *lettering, line);
    }
}

//! The face of the blade to scale, lying with the toe to the left, and the ball speed off it wherever it is met.

use super::DrawingFault;
use super::axis::{Axis, Plot};
use super::contour::Field;
use super::map::{BLACK, decimals, draw_named, levels};
use super::palette::{Theme, cividis};
use super::picture::{Area, Picture, Stroke};
use super::type_setting::{Lettering, Size};
use super::words::number;

/// What the map shows.
#[derive(Clone, Debug, PartialEq)]
pub struct FacePicture {
    /// What it says, in one sentence.
    pub sentence: String,
    /// What the value is, with its unit.
    pub value_label: String,
    /// Columns: from the toe, m, all rising or all falling.
    pub from_toe_m: Vec<f64>,
    /// Rows: off the middle, m, rising.
    pub across_m: Vec<f64>,
    /// Row by row; none beside the blade.
    pub value: Vec<Option<f64>>,
    /// Outline of one half: from the toe and half width, m, in order.
    pub outline_m: Vec<[f64; 2]>,
    /// The place hit: from the toe, off the middle, m.
    pub hit_m: [f64; 2],
}

/// Scale of the blade, px to the metre.
const PX_PER_M: f64 = 1500.0;
/// Room left and right of the blade, and beside it, m.
const ROOM_M: f64 = 0.012;

/// The map as an SVG.
pub fn svg(face: &FacePicture, theme: &Theme) -> Result<String, DrawingFault> {
    if face.value.len() != face.from_toe_m.len() * face.across_m.len() {
        let what = format!(
            "the map has {} × {} places but {} values",
            face.from_toe_m.len(),
            face.across_m.len(),
            face.value.len()
        );
        return Err(DrawingFault::Refused { format: "a picture", what });
    }
    let reach = |all: &mut dyn Iterator<Item = f64>| all.fold(0.0, f64::max);
    let length_m = reach(&mut face.outline_m.iter().map(|it| it[0]));
    let half_m = reach(&mut face.outline_m.iter().map(|it| it[1]));
    let [long, wide] = [length_m + 2.0 * ROOM_M, 2.0 * (half_m + ROOM_M)].map(|it| PX_PER_M * it);
    let width = long + 82.0;
    let sentence = Lettering::new(Size::Sentence, theme.ink);
    let quiet = Lettering::new(Size::Quiet, theme.quiet);
    let lines = sentence.wrapped(&face.sentence, width - 32.0);
    let key = format!(
        "Shades and lines: {}. The blade lies to scale, toe to the left. Ringed: the place hit",
        face.value_label
    );
    let keys = quiet.wrapped(&key, width - 32.0);
    let head = 16.0
        + Size::Sentence.line_px() * lines.len() as f64
        + Size::Quiet.line_px() * keys.len() as f64;
    let mut picture = Picture::new(width, head + 34.0 + wide + 56.0, theme);
    let mut top = 16.0;
    for line in &lines {
        top += Size::Sentence.line_px();
        picture.text(16.0, top - 8.0, sentence, line);
    }
    for line in &keys {
        top += Size::Quiet.line_px();
        picture.text(16.0, top - 4.0, quiet, line);
    }
    let mm = |m: f64| 1e3 * m;
    let plot = Plot {
        area: Area::new(58.0, head + 34.0, long, wide),
        x: Axis {
            label: "from the toe, mm".to_owned(),
            range: [-mm(ROOM_M), mm(length_m + ROOM_M)],
        },
        y: Axis {
            label: "off the middle, mm".to_owned(),
            range: [-mm(half_m + ROOM_M), mm(half_m + ROOM_M)],
        },
    };
    plot.draw_ground(&mut picture, theme);
    let on_page = |line: &[[f64; 2]]| -> Vec<[f64; 2]> {
        line.iter().map(|[x, y]| plot.at(mm(*x), mm(*y))).collect()
    };
    let field = Field { x: &face.from_toe_m, y: &face.across_m, value: &face.value };
    let levels = levels(&face.value, 9.0);
    for (k, band) in levels.windows(2).enumerate() {
        if let [low, high] = band {
            let polygons: Vec<_> = field.band(*low, *high).iter().map(|it| on_page(it)).collect();
            // The lower end of the scale is left out: black marks must show on it.
            let share = 0.3 + 0.7 * k as f64 / levels.len().saturating_sub(2).max(1) as f64;
            picture.polygons(polygons.iter().map(Vec::as_slice), cividis(share), 1.0);
        }
    }
    let mut names = Vec::new();
    let digits = decimals(&levels);
    for level in levels.iter().skip(1).take(levels.len().saturating_sub(2)) {
        let lines: Vec<_> = field.lines(*level).iter().map(|it| on_page(it)).collect();
        names.extend(draw_named(
            &mut picture,
            lines,
            Stroke::solid(BLACK, 1.2),
            number(*level, digits),
        ));
    }
    let outline: Vec<[f64; 2]> = face
        .outline_m
        .iter()
        .copied()
        .chain(face.outline_m.iter().rev().map(|[x, y]| [*x, -y]))
        .chain(face.outline_m.first().copied())
        .collect();
    picture.polyline(&on_page(&outline), Stroke::solid(theme.ink, 2.0));
    let [x, y] = face.hit_m;
    let at = plot.at(mm(x), mm(y));
    picture.disc(at, 7.0, theme.panel, Stroke::solid(theme.ink, 3.0));
    let mut taken = vec![Area::new(at[0] - 12.0, at[1] - 12.0, 24.0, 24.0)];
    for name in &names {
        name.draw(&mut picture, &plot, &mut taken, theme);
    }
    Ok(picture.finish())
}

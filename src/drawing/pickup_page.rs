//! One page on pickup: two pairs of bats, seen from the side, with what the scale, the hand and the late pull
//! say.

use super::palette::{PRINT, Theme};
use super::picture::{Area, PX_PER_MM, Picture, Stroke};
use super::sheet::{MARGIN_MM, PAGE_MM};
use super::type_setting::{Lettering, Size};
use super::{DrawingFault, cautions_box};
use crate::bat::shape::BatShape;

/// One bat of the page.
#[derive(Clone, Debug)]
pub struct ShownBat {
    /// Its shape, drawn from the side.
    pub shape: BatShape,
    /// Balance point, m from the top of the handle.
    pub balance_m: f64,
    /// Lines under it: name, then figures.
    pub lines: Vec<String>,
}

/// A pair with what it shows.
#[derive(Clone, Debug)]
pub struct ShownPair {
    /// "The same on the scale, unlike in the hand".
    pub title: String,
    /// One or two sentences.
    pub words: String,
    /// The bats.
    pub bats: [ShownBat; 2],
}

/// The whole page.
#[derive(Clone, Debug)]
pub struct PickupPage {
    /// Over everything.
    pub title: String,
    /// For whom.
    pub whom: String,
    /// The pairs.
    pub pairs: [ShownPair; 2],
    /// What must be known beside it.
    pub notes: Vec<String>,
    /// What the player must be told, in a box of its own; none for a grown player.
    pub cautions: Vec<String>,
}

/// Bats are drawn one to this.
const ONE_TO: f64 = 4.7;
/// Points along the blade.
const POINTS: usize = 60;
/// Between the notes and the box under them, px.
const OVER_CAUTIONS: f64 = 10.0;

/// The page as SVG, A4.
///
/// # Errors
/// If its texts leave the page.
pub fn svg(page: &PickupPage) -> Result<String, DrawingFault> {
    let theme = &PRINT;
    let [width, height] = PAGE_MM.map(|it| it * PX_PER_MM);
    let margin = MARGIN_MM * PX_PER_MM;
    let inner = width - 2.0 * margin;
    let mut picture = Picture::new(width, height, theme);
    let head = Lettering::new(Size::Sentence, theme.ink).bold();
    let text = Lettering::new(Size::Text, theme.ink);
    let bold = text.bold();
    let quiet = Lettering::new(Size::Quiet, theme.quiet);
    let mut y = margin + 20.0;
    picture.text(margin, y, head, &page.title);
    y += 22.0;
    picture.text(margin, y, quiet, &page.whom);
    y += 14.0;
    for pair in &page.pairs {
        picture.line([margin, y], [margin + inner, y], Stroke::solid(theme.hairline, 1.0));
        y += 26.0;
        picture.text(margin, y, bold, &pair.title);
        for line in text.wrapped(&pair.words, inner) {
            y += Size::Text.line_px();
            picture.text(margin, y, text, &line);
        }
        y += 18.0;
        for (n, bat) in pair.bats.iter().enumerate() {
            let area = Area::new(margin, y, inner, 110.0);
            side(&mut picture, area, bat, n, theme);
            y += 132.0;
        }
    }
    y += 4.0;
    for line in page.notes.iter().flat_map(|it| quiet.wrapped(it, inner)) {
        picture.text(margin, y, quiet, &line);
        y += Size::Quiet.line_px();
    }
    if !page.cautions.is_empty() {
        let area = Area::new(margin, y + OVER_CAUTIONS - Size::Quiet.px(), inner, 0.0);
        y = area.y + cautions_box::draw(&mut picture, area, &page.cautions, theme);
    }
    let needed = y - (height - margin);
    if needed > 0.0 {
        return Err(DrawingFault::PageTooLong { needed_mm: needed / PX_PER_MM });
    }
    Ok(picture.finish())
}

/// A bat from the side, the toe to the right, face down, its balance point on a knife edge; figures beside it.
fn side(picture: &mut Picture, area: Area, bat: &ShownBat, n: usize, theme: &Theme) {
    let px = 1e3 * PX_PER_MM / ONE_TO;
    let shape = &bat.shape;
    let axis = area.y + 34.0;
    let at = |x_m: f64, z_m: f64| [area.x + x_m * px, axis - z_m * px];
    let (handle, blade) = (&shape.handle, &shape.blade);
    let half = |x_m: f64| handle.half_z_m(x_m) + handle.cover_m();
    let shaft = [
        at(0.0, half(0.0)),
        at(handle.length_m, half(handle.length_m)),
        at(handle.length_m, -half(handle.length_m)),
        at(0.0, -half(0.0)),
    ];
    // Seen from the side: from the middle of the face to the spine, the back uppermost.
    let stations = (0..=POINTS).filter_map(|k| {
        let share = k as f64 / POINTS as f64;
        let face_m = blade.face_at_m(share);
        Some((handle.length_m + share * blade.length_m, face_m, blade.at(share)?.depth_m))
    });
    let along: Vec<(f64, f64, f64)> = stations.collect();
    let back = along.iter().map(|(x, face, depth)| at(*x, depth - face));
    let face = along.iter().rev().map(|(x, face, _)| at(*x, -face));
    let outline: Vec<[f64; 2]> = back.chain(face).collect();
    let ink = Stroke::solid(theme.bats[n], 1.4);
    picture.polygons([outline.as_slice(), shaft.as_slice()], theme.bats[n], 0.16);
    for line in [&outline[..], &shaft[..]] {
        let closed: Vec<[f64; 2]> = line.iter().chain(line.first()).copied().collect();
        picture.polyline(&closed, ink);
    }
    let [x, y] = at(bat.balance_m, -blade.face_m);
    picture.polygons(
        [[[x, y + 2.0], [x - 7.0, y + 15.0], [x + 7.0, y + 15.0]].as_slice()],
        theme.ink,
        1.0,
    );
    let bold = Lettering::new(Size::Text, theme.ink).bold();
    let text = Lettering::new(Size::Quiet, theme.ink);
    let mut line_y = area.y + 88.0;
    for (k, line) in bat.lines.iter().enumerate() {
        picture.text(area.x, line_y, if k == 0 { bold } else { text }, line);
        line_y += Size::Quiet.line_px();
    }
}

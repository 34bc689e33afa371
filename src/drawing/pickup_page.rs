//! One page on pickup, to be read in a minute: two bats of one weight upright side by side, what to feel, and what an
//! ounce costs at four places of a bat.

use super::area::Area;
use super::palette::PRINT;
use super::picture::{Picture, Stroke};
use super::type_setting::{Anchor, Lettering, Size};
use super::{DrawingFault, INSIDE, PX_PER_MM, cautions_box};
use crate::bat::shape::BatShape;

/// One bat of the page.
#[derive(Clone, Debug)]
pub struct ShownBat {
    /// Its shape, drawn from the side.
    pub shape: BatShape,
    /// Balance point, m from the top of the handle.
    pub balance_m: f64,
    /// What it is called: large.
    pub name: String,
    /// Lines beside it.
    pub lines: Vec<String>,
}

/// An ounce somewhere on a bat.
#[derive(Clone, Debug, PartialEq)]
pub struct OunceAt {
    /// Where, m from the top of the handle.
    pub from_top_m: f64,
    /// The same in a word or two.
    pub place: String,
    /// What it costs, in any unit: its stem is as high.
    pub cost: f64,
    /// The same in words.
    pub words: String,
}

/// The bat with the ounce on it.
#[derive(Clone, Debug)]
pub struct OuncePlaces {
    /// Over it: large.
    pub heading: String,
    /// Its shape.
    pub shape: BatShape,
    /// The places, from the top of the handle on.
    pub places: Vec<OunceAt>,
}

/// The whole page.
#[derive(Clone, Debug)]
pub struct PickupPage {
    /// Over everything, in the largest letters.
    pub title: String,
    /// What it comes to.
    pub sentence: String,
    /// For whom.
    pub whom: String,
    /// The bats: one weight, the second slower to swing.
    pub bats: [ShownBat; 2],
    /// What to feel with them.
    pub feel: String,
    /// What an ounce costs where.
    pub ounce: OuncePlaces,
    /// What must be known beside it.
    pub notes: Vec<String>,
    /// What the player must be told, in a box of its own; none for a grown player.
    pub cautions: Vec<String>,
}

/// The two bats are drawn one to this, the bat with the ounce one to that.
const BATS_ONE_TO: f64 = 7.0;
/// The same of the two where there are cautions under them.
const OVER_CAUTIONS_ONE_TO: f64 = 8.6;
const OUNCE_ONE_TO: f64 = 5.2;
/// Points along the blade.
const POINTS: usize = 60;
/// Height of the dearest ounce's stem, px, and radius of the ounce.
const STEM: f64 = 56.0;
const OUNCE: f64 = 8.0;
/// Between the notes and the box under them, px.
const OVER_CAUTIONS: f64 = 10.0;

/// The page as SVG, A4.
///
/// # Errors
/// If its texts leave the page.
pub fn svg(page: &PickupPage) -> Result<String, DrawingFault> {
    let Area { x: left, y: top, width, .. } = INSIDE;
    let mut picture = Picture::page();
    let large = Lettering::new(Size::Sentence, PRINT.ink);
    let quiet = Lettering::new(Size::Quiet, PRINT.quiet);
    picture.text(left, top + 30.0, Lettering::new(Size::Big, PRINT.ink).bold(), &page.title);
    let mut y = picture.paragraph([left, top + 38.0], width, large, &page.sentence);
    y = picture.paragraph([left, y + 2.0], width, quiet, &page.whom);
    let one_to = if page.cautions.is_empty() { BATS_ONE_TO } else { OVER_CAUTIONS_ONE_TO };
    y = side_by_side(&mut picture, Area::new(left, y + 16.0, width, 0.0), &page.bats, one_to);
    y = picture.paragraph([left, y + 4.0], width, large.bold(), &page.feel);
    let rule_y = y + 14.0;
    picture.line([left, rule_y], [left + width, rule_y], Stroke::solid(PRINT.hairline, 1.0));
    y = picture.paragraph([left, y + 18.0], width, large, &page.ounce.heading);
    y = with_ounces(&mut picture, Area::new(left, y + 8.0, width, 0.0), &page.ounce);
    y += 4.0;
    for note in &page.notes {
        y = picture.paragraph([left, y], width, quiet, note);
    }
    if !page.cautions.is_empty() {
        let area = Area::new(left, y + OVER_CAUTIONS, width, 0.0);
        y = area.y + cautions_box::draw(&mut picture, area, &page.cautions);
    }
    let needed = y - INSIDE.bottom();
    if needed > 0.0 {
        return Err(DrawingFault::PageTooLong { needed_mm: needed / PX_PER_MM });
    }
    Ok(picture.finish())
}

/// The two bats upright, each with its words at its right; returns the height under them.
fn side_by_side(picture: &mut Picture, area: Area, bats: &[ShownBat; 2], one_to: f64) -> f64 {
    let px = 1e3 * PX_PER_MM / one_to;
    let mut bottom = area.y;
    for (n, bat) in bats.iter().enumerate() {
        let left = area.x + 0.5 * area.width * n as f64;
        let axis = left + 30.0;
        // Face to the left, the back with its spine to the right.
        let at = |x_m: f64, z_m: f64| [axis + z_m * px, area.y + x_m * px];
        profile(picture, &bat.shape, &at, n);
        let [x, y] = at(bat.balance_m, -bat.shape.blade.face_m);
        let mark = [[x - 2.0, y], [x - 15.0, y - 7.0], [x - 15.0, y + 7.0]];
        picture.polygons([mark.as_slice()], PRINT.ink, 1.0);
        let words = left + 92.0;
        let room = 0.5 * area.width - 100.0;
        let name = Lettering::new(Size::Sentence, PRINT.bats[n]).bold();
        let mut line_y = picture.paragraph([words, area.y + 60.0], room, name, &bat.name);
        let large = Lettering::new(Size::Sentence, PRINT.ink);
        for line in &bat.lines {
            line_y = picture.paragraph([words, line_y + 6.0], room, large, line);
        }
        // Beside the mark, below the words, wherever the balance point is.
        let here = Lettering::new(Size::Text, PRINT.ink);
        picture.text(words, (y + 4.5).max(line_y + 24.0), here, "balances at the mark");
        bottom = bottom.max(area.y + bat.shape.length_m() * px).max(line_y + 30.0);
    }
    bottom
}

/// A bat lying, with an ounce at each place on a stem as high as its cost; returns the height under it.
fn with_ounces(picture: &mut Picture, area: Area, ounce: &OuncePlaces) -> f64 {
    let px = 1e3 * PX_PER_MM / OUNCE_ONE_TO;
    let left = area.x + 0.5 * (area.width - ounce.shape.length_m() * px);
    let axis = area.y + Size::Sentence.line_px() + STEM + 34.0;
    let at = |x_m: f64, z_m: f64| [left + x_m * px, axis - z_m * px];
    profile(picture, &ounce.shape, &at, 0);
    let dearest = ounce.places.iter().map(|it| it.cost).fold(f64::MIN_POSITIVE, f64::max);
    let (handle, blade) = (&ounce.shape.handle, &ounce.shape.blade);
    let half = handle.half_z_m(0.0) + handle.cover_m();
    // On the back, wherever it lies there.
    let over_at = |x_m: f64| {
        let on_blade = blade.at((x_m - handle.length_m) / blade.length_m);
        let on_blade = on_blade.filter(|_| x_m >= handle.length_m);
        axis - on_blade.map_or(half, |it| it.depth_m - blade.face_m) * px - OUNCE
    };
    let below = axis + ounce.shape.blade.face_m.max(half) * px + Size::Quiet.line_px();
    let bold = Lettering::new(Size::Sentence, PRINT.ink).bold();
    let text = Lettering::new(Size::Text, PRINT.ink);
    for it in &ounce.places {
        let x = left + it.from_top_m * px;
        let over = over_at(it.from_top_m);
        let top = over - STEM * (it.cost / dearest).max(0.0);
        picture.line([x, over], [x, top], Stroke::solid(PRINT.bats[1], 5.0));
        picture.disc([x, over], OUNCE, PRINT.bats[1], Stroke::solid(PRINT.ink, 1.2));
        let within = |lettering: Lettering, words: &str| {
            let half = 0.5 * lettering.width(words);
            x.clamp(area.x + half, area.right() - half)
        };
        let middle = |it: Lettering| it.anchored(Anchor::Middle);
        picture.text(within(bold, &it.words), top - 12.0, middle(bold), &it.words);
        picture.text(within(text, &it.place), below, middle(text), &it.place);
    }
    below + 8.0
}

/// A bat from the side; `at` puts a place along it and through it, m, on the page.
fn profile(picture: &mut Picture, shape: &BatShape, at: &dyn Fn(f64, f64) -> [f64; 2], n: usize) {
    let (handle, blade) = (&shape.handle, &shape.blade);
    let half = |x_m: f64| handle.half_z_m(x_m) + handle.cover_m();
    let shaft = [
        at(0.0, half(0.0)),
        at(handle.length_m, half(handle.length_m)),
        at(handle.length_m, -half(handle.length_m)),
        at(0.0, -half(0.0)),
    ];
    // From the middle of the face to the spine.
    let stations = (0..=POINTS).filter_map(|k| {
        let share = k as f64 / POINTS as f64;
        let face_m = blade.face_at_m(share);
        Some((handle.length_m + share * blade.length_m, face_m, blade.at(share)?.depth_m))
    });
    let along: Vec<(f64, f64, f64)> = stations.collect();
    let back = along.iter().map(|(x, face, depth)| at(*x, depth - face));
    let face = along.iter().rev().map(|(x, face, _)| at(*x, -face));
    let outline: Vec<[f64; 2]> = back.chain(face).collect();
    picture.polygons([outline.as_slice(), shaft.as_slice()], PRINT.bats[n], 0.16);
    for line in [&outline[..], &shaft[..]] {
        let closed: Vec<[f64; 2]> = line.iter().chain(line.first()).copied().collect();
        picture.polyline(&closed, Stroke::solid(PRINT.bats[n], 1.4));
    }
}

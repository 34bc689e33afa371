//! The blade from the side at its true size, on pages that are laid end to end, and strips to be cut out and held
//! against its spine and its edges.

use super::palette::PRINT;
use super::picture::{Picture, Stroke};
use super::profile_tile::{Tile, behind_m, ends, foot, tiles};
use super::templates::{BAR_MM, TAKE_CARE, heading};
use super::type_setting::{Lettering, Size};
use super::words::number;
use super::{INSIDE, profile_strips};
use crate::bat::blade::{Blade, Station};
use crate::bat::shape::BatShape;
use crate::units::INCH_M;

/// A deeper blade, its bow counted in, is drawn smaller, m.
const ROOM_M: f64 = 0.095;
/// Room for the places at the left, px.
const PLACES: f64 = 84.0;

/// Pages of A4: the blade from the side, from the toe up, then the strips. With `before` the shape it has now is
/// drawn too, and what has to come off at each inch. `title` names the bat.
pub fn pages(before: Option<&BatShape>, after: &BatShape, title: &str) -> Vec<String> {
    let (before, after) = (before.map(|it| &it.blade), &after.blade);
    let deepest_m = |it: &Blade| it.bow_m.max(0.0) + it.deepest().map_or(0.0, |it| it.depth_m);
    let deepest_m = before.into_iter().chain([after]).map(deepest_m).fold(0.0, f64::max);
    let scale = (ROOM_M / deepest_m).min(1.0);
    let sides = tiles(after.length_m, scale);
    let strips = tiles(after.length_m, 1.0);
    let side = |it: &Tile| {
        page(title, it, scale, "From the side", |picture| {
            draw_side(picture, it, before, after, deepest_m);
        })
    };
    let strip = |it: &Tile| {
        page(title, it, 1.0, "Strips", |picture| {
            profile_strips::draw(picture, it, after);
        })
    };
    sides.iter().map(side).chain(strips.iter().map(strip)).collect()
}

fn page(title: &str, tile: &Tile, scale: f64, what: &str, draw: impl Fn(&mut Picture)) -> String {
    let mut picture = Picture::page();
    let size = match scale < 1.0 {
        true => format!("1 : {}", number(1.0 / scale, 2)),
        false => "true size".to_owned(),
    };
    let words = format!(
        "{what}, {size}, page {} of {}. Print at 100 %: the bar must measure {BAR_MM:.0} mm",
        tile.number, tile.all
    );
    heading(&mut picture, title, &words);
    draw(&mut picture);
    foot(&mut picture, 0.0, TAKE_CARE);
    picture.finish()
}

fn draw_side(
    picture: &mut Picture,
    tile: &Tile,
    before: Option<&Blade>,
    after: &Blade,
    deepest_m: f64,
) {
    let left = INSIDE.x + PLACES;
    let column = left + deepest_m * tile.px_per_m + 26.0;
    rows(picture, tile, before, after, [left, column]);
    ends(picture, tile);
    if let Some(blade) = before {
        let dashed = |width| Stroke { colour: PRINT.ink, width, dash: "5 3" };
        outline(picture, tile, blade, left, [dashed(1.1), dashed(0.7)]);
    }
    let solid = [Stroke::solid(PRINT.ink, 1.5), Stroke::solid(PRINT.ink, 0.7)];
    outline(picture, tile, after, left, solid);
    let key = match before {
        Some(_) => "Outside face and spine, inside the edge; dashed as it is now. Left the face",
        None => "Outside face and spine, inside the edge. Left the face",
    };
    foot(picture, Size::Quiet.line_px(), key);
}

/// Face and spine, closed at toe and shoulder, and both sides of the edge.
fn outline(picture: &mut Picture, tile: &Tile, blade: &Blade, left: f64, [out, edge]: [Stroke; 2]) {
    let line = |across_m: &dyn Fn(&Station) -> f64| tile.line(blade, left, across_m);
    let behind = |it: &Station| behind_m(blade, it);
    let face = line(&behind);
    let spine = line(&|it| behind(it) + it.depth_m);
    picture.polyline(&line(&|it| behind(it) + it.camber_m), edge);
    picture.polyline(&line(&|it| behind(it) + it.camber_m + it.edge_m), edge);
    picture.polyline(&face, out);
    picture.polyline(&spine, out);
    if let (true, Some(a), Some(b)) = (tile.number == 1, face.first(), spine.first()) {
        picture.line(*a, *b, out);
    }
    if let (true, Some(a), Some(b)) = (tile.number == tile.all, face.last(), spine.last()) {
        picture.line(*a, *b, out);
    }
}

/// Each inch from the toe with its figures, and what has to come off there.
fn rows(
    picture: &mut Picture,
    tile: &Tile,
    before: Option<&Blade>,
    after: &Blade,
    [left, column]: [f64; 2],
) {
    let text = Lettering::new(Size::Quiet, PRINT.ink);
    let bold = text.bold();
    let hair = Stroke::solid(PRINT.hairline, 0.6);
    let at = |blade: &Blade, from_toe_m: f64| {
        blade.at(1.0 - from_toe_m / blade.length_m).filter(|_| from_toe_m <= blade.length_m)
    };
    for inch in tile.inches() {
        let from_toe_m = f64::from(inch) * INCH_M;
        let (y, Some(now)) = (tile.y(from_toe_m), at(after, from_toe_m)) else { continue };
        picture.line([left - 26.0, y], [column - 6.0, y], hair);
        let mm = number(1e3 * from_toe_m, 0);
        picture.text(left - PLACES, y + 5.0, bold, &format!("{inch} in"));
        picture.text(left - PLACES, y + 5.0 + Size::Quiet.line_px(), text, &format!("{mm} mm"));
        let was = before.and_then(|it| at(it, from_toe_m));
        let lines = [
            figure("spine", was.map(|it| it.depth_m), now.depth_m),
            figure("edges", was.map(|it| it.edge_m), now.edge_m),
        ];
        for (n, line) in lines.iter().enumerate() {
            let down = 5.0 + n as f64 * Size::Quiet.line_px();
            picture.text(column, y + down, text, line);
        }
    }
    let head = if before.is_some() { "mm: now, then, to come off" } else { "mm" };
    picture.text(column, tile.top - 24.0 + 8.0, bold, head);
}

/// A figure at a place: as it is now and will be, and the difference that comes off.
fn figure(name: &str, was_m: Option<f64>, is_m: f64) -> String {
    let mm = |it: f64| number(1e3 * it, 1);
    match was_m {
        None => format!("{name} {}", mm(is_m)),
        Some(was_m) if was_m - is_m >= LEAST_M => {
            format!("{name} {} to {}, take {}", mm(was_m), mm(is_m), mm(was_m - is_m))
        }
        Some(was_m) if is_m - was_m >= LEAST_M => {
            format!("{name} {}, {} too little", mm(was_m), mm(is_m - was_m))
        }
        Some(_) => format!("{name} {}, stays", mm(is_m)),
    }
}

/// Less than this is nothing to a plane, m.
const LEAST_M: f64 = 5e-5;

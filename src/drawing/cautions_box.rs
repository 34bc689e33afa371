//! Cautions in a ruled box, as they stand on a card and on every page that a player takes away.

use super::area::Area;
use super::palette::PRINT;
use super::picture::{Picture, Stroke};
use super::type_setting::{Lettering, Size};

/// Space between the cautions and their ruled box, px.
const PAD: f64 = 10.0;
/// From the top of the box to the line of its heading, px.
const HEADING: f64 = PAD + 13.0;
/// Between the heading and the first caution, px.
const BELOW_HEADING: f64 = 4.0;
/// Between two cautions, px.
const BETWEEN: f64 = 3.0;
const QUIET: Lettering = Lettering::new(Size::Quiet, PRINT.ink);

/// Height that the cautions need in a box of this width, px.
pub(super) fn height(cautions: &[String], width: f64) -> f64 {
    let lines = |it: &String| QUIET.wrapped(it, width - 2.0 * PAD).len();
    let each = |it: &String| Size::Quiet.line_px() * lines(it) as f64 + BETWEEN;
    let text: f64 = cautions.iter().map(each).sum();
    HEADING + BELOW_HEADING + text - BETWEEN + PAD
}

/// The first of the cautions that need no more than `room` px of height, the last words saying how many more
/// there are and where; all of them where they do.
pub(super) fn first_that_fit(cautions: &[String], width: f64, room: f64) -> Vec<String> {
    let fits = |it: &[String]| height(it, width) <= room;
    if fits(cautions) {
        return cautions.to_vec();
    }
    let kept = |count: usize| {
        let mut some: Vec<String> = cautions.iter().take(count).cloned().collect();
        some.push(format!("And {} more: read them in card.ron.", cautions.len() - count));
        some
    };
    (1..cautions.len()).rev().map(kept).find(|it| fits(it)).unwrap_or_else(|| kept(0))
}

/// The box, as wide as the area and as high as the cautions need; returns that height, px.
pub(super) fn draw(picture: &mut Picture, area: Area, cautions: &[String]) -> f64 {
    let mut y = area.y + HEADING;
    let heading = Lettering::new(Size::Text, PRINT.ink).bold();
    picture.text(area.x + PAD, y, heading, "Cautions");
    y += BELOW_HEADING;
    for caution in cautions {
        y = picture.paragraph([area.x + PAD, y], area.width - 2.0 * PAD, QUIET, caution) + BETWEEN;
    }
    let height = height(cautions, area.width);
    picture.frame(Area::new(area.x, area.y, area.width, height), Stroke::solid(PRINT.ink, 1.5));
    height
}

//! Which of the card's sentences there is room for on its page: a fit must not end on a long text.
//!
//! Cautions come first, then a line of the reason and of how sure it is, then the map, then the rest of both.

use super::palette::PRINT;
use super::type_setting::{Lettering, Size};
use super::{INSIDE, cautions_box};
use crate::card::Card;

/// A narrower map could not be read.
pub(super) const NARROWEST_MAP: f64 = 240.0;
/// Nor a lower one, with its key, px.
pub(super) const LOWEST_MAP: f64 = 215.0;
/// Where a paragraph's text begins, right of its heading, px.
pub(super) const INDENT: f64 = 84.0;
pub(super) const TEXT: Lettering = Lettering::new(Size::Text, PRINT.ink);
/// Space above either paragraph, and between the second and what stands below, px.
const GAPS: f64 = 4.0 + 4.0 + 8.0;
/// How a text that is cut ends.
const CUT: &str = "… (in full in card.ron)";

/// The sentences as they are printed, reason and how sure in lines.
pub(super) struct Texts {
    pub(super) reason: Vec<String>,
    pub(super) how_sure: Vec<String>,
    pub(super) cautions: Vec<String>,
    /// Whether there is room for the map.
    pub(super) with_map: bool,
}

/// The sentences cut to what the page has room for in `room` px of height.
pub(super) fn fitted(card: &Card, has_map: bool, room: f64) -> Texts {
    let width = INSIDE.width;
    let column = width - INDENT;
    let reason = TEXT.wrapped(&card.reason, column);
    let how_sure = TEXT.wrapped(&card.how_sure, column);
    let line_px = Size::Text.line_px();
    let lines_above = |below: f64| ((room - GAPS - below) / line_px).max(0.0) as usize;
    let height = |width: f64| cautions_box::height(&card.cautions, width);
    let beside_map = lines_above(height(width - NARROWEST_MAP).max(LOWEST_MAP));
    let with_map = has_map && beside_map >= 2;
    let most = if with_map { beside_map } else { lines_above(height(width)).max(2) };
    let [for_reason, for_how_sure] = shared([reason.len().max(1), how_sure.len().max(1)], most);

    let left = room - GAPS - line_px * (for_reason + for_how_sure) as f64;
    let box_width = if with_map { width - NARROWEST_MAP } else { width };
    let cautions = cautions_box::first_that_fit(&card.cautions, box_width, left);
    Texts {
        reason: TEXT.first_lines(reason, for_reason, column, CUT),
        how_sure: TEXT.first_lines(how_sure, for_how_sure, column, CUT),
        cautions,
        with_map,
    }
}

/// Lines for two paragraphs of these lengths out of `most`: each what it needs, or half, or what the other leaves.
fn shared([first, second]: [usize; 2], most: usize) -> [usize; 2] {
    if first + second <= most {
        return [first, second];
    }
    let first = first.min((most / 2).max(most.saturating_sub(second)));
    [first, second.min(most - first)]
}

//! Pages of a blade at its true size, laid end to end: what lies on each, where, and where the next is laid on.

use super::palette::PRINT;
use super::picture::{Picture, Stroke};
use super::type_setting::{Anchor, Lettering, Size};
use super::{INSIDE, PX_PER_MM};
use crate::bat::blade::{Blade, Station};
use crate::units::INCH_M;

/// Inches of the blade from one page to the next at its true size: a half over, so that no page ends at a figure.
const STEP_IN: f64 = 8.5;
/// So much of a blade is on two pages, m.
const OVERLAP_M: f64 = 0.010;
/// The last line's baseline over the margin, px.
const FOOT: f64 = 5.0;
const QUIET: Lettering = Lettering::new(Size::Quiet, PRINT.quiet);
/// Points of a line on a page.
const POINTS: usize = 160;

/// Part of a blade that lies on a page: its distances from the toe, and where they come to lie.
#[derive(Clone, Copy, Debug)]
pub(super) struct Tile {
    /// Nearest to the toe, m.
    pub from_m: f64,
    /// Farthest from it, m.
    pub to_m: f64,
    /// Where the nearest lies on the page, px.
    pub top: f64,
    /// Scale.
    pub px_per_m: f64,
    /// Which, from the toe, counted from 1.
    pub number: usize,
    /// Of how many.
    pub all: usize,
}

impl Tile {
    /// A distance from the toe on the page, px.
    pub(super) fn y(&self, from_toe_m: f64) -> f64 {
        self.top + (from_toe_m - self.from_m) * self.px_per_m
    }

    /// Whole inches from the toe that lie on it.
    pub(super) fn inches(&self) -> impl Iterator<Item = u32> {
        let (from, to) = (self.from_m / INCH_M - 1e-6, self.to_m / INCH_M + 1e-6);
        (0..=100).filter(move |n| (from..=to).contains(&f64::from(*n)))
    }

    /// A line of the blade on the page, from a figure of its sections (m to the right of `left`).
    pub(super) fn line(
        &self,
        blade: &Blade,
        left: f64,
        across_m: impl Fn(&Station) -> f64,
    ) -> Vec<[f64; 2]> {
        let to_m = self.to_m.min(blade.length_m);
        let at = |n: usize| {
            let from_toe_m = self.from_m + (to_m - self.from_m) * n as f64 / POINTS as f64;
            let station = blade.at(1.0 - from_toe_m / blade.length_m)?;
            Some([left + across_m(&station) * self.px_per_m, self.y(from_toe_m)])
        };
        if to_m <= self.from_m { Vec::new() } else { (0..=POINTS).filter_map(at).collect() }
    }
}

/// How far the middle of the face lies behind the chord of the bow, m.
pub(super) fn behind_m(blade: &Blade, station: &Station) -> f64 {
    blade.face_m - blade.face_at_m(station.from_shoulder)
}

/// So long a blade on as few pages as it needs.
pub(super) fn tiles(length_m: f64, scale: f64) -> Vec<Tile> {
    let step_m = ((STEP_IN / scale - 0.5).floor() + 0.5) * INCH_M;
    let all = (((length_m - OVERLAP_M) / step_m).ceil() as usize).max(1);
    let top = INSIDE.y + 130.0;
    let px_per_m = 1e3 * PX_PER_MM * scale;
    let tile = |n: usize| {
        let from_m = n as f64 * step_m;
        let to_m = (from_m + step_m + OVERLAP_M).min(length_m);
        Tile { from_m, to_m, top, px_per_m, number: n + 1, all }
    };
    (0..all).map(tile).collect()
}

/// Where a page is laid on the next, or the blade ends.
pub(super) fn ends(picture: &mut Picture, tile: &Tile) {
    let [left, right] = [INSIDE.x, INSIDE.right()];
    let quiet = QUIET.anchored(Anchor::End);
    let dashed = Stroke { colour: PRINT.quiet, width: 0.8, dash: "6 4" };
    if tile.number > 1 {
        let y = tile.y(tile.from_m + OVERLAP_M);
        picture.line([left, y], [right, y], dashed);
        let words = format!("Lay page {} on this one down to the dashed line", tile.number - 1);
        picture.text(right, tile.top - 34.0, quiet, &words);
    }
    if tile.number < tile.all {
        let y = tile.y(tile.to_m);
        picture.line([left, y], [right, y], dashed);
        picture.text(right, y + 14.0, quiet, &format!("page {} goes on", tile.number + 1));
    }
}

/// A line of text at the foot of a page, so far above its last.
pub(super) fn foot(picture: &mut Picture, above_last: f64, words: &str) {
    picture.text(INSIDE.x, INSIDE.bottom() - FOOT - above_last, QUIET, words);
}

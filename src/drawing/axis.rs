//! The ruled ground of a chart: ranges, ticks and where a value lies on the page.

use super::area::Area;
use super::picture::{Picture, Stroke};
use super::type_setting::{Anchor, Lettering, Size};
use super::words::number;

/// What one axis shows.
#[derive(Clone, Debug, PartialEq)]
pub struct Axis {
    /// In words, with the unit.
    pub label: String,
    /// Lowest and highest value shown.
    pub range: [f64; 2],
}

impl Axis {
    /// An axis that shows all of the values, with a little room; never thinner than `least` so that a flat
    /// curve looks flat.
    pub fn around(
        label: impl Into<String>,
        values: impl IntoIterator<Item = f64>,
        least: f64,
    ) -> Self {
        let (low, high) = values
            .into_iter()
            .filter(|it| it.is_finite())
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), it| (a.min(it), b.max(it)));
        let (low, high) = if low <= high { (low, high) } else { (0.0, 1.0) };
        let room = (0.06 * (high - low)).max(0.5 * (least - (high - low))).max(1e-9);
        Self { label: label.into(), range: [low - room, high + room] }
    }

    /// Round values inside the range, about `wanted` of them, with the decimals they need.
    pub fn ticks(&self, wanted: f64) -> (Vec<f64>, usize) {
        let [low, high] = self.range;
        let step = round_step((high - low) / wanted);
        (multiples(step, self.range), decimals(step))
    }
}

/// Multiples of a step within a range, a hundred and one at most.
pub(super) fn multiples(step: f64, [low, high]: [f64; 2]) -> Vec<f64> {
    let [first, last] = [(low / step).ceil() as i64, (high / step).floor() as i64];
    (first..=last.min(first + 100)).map(|k| k as f64 * step).collect()
}

/// Decimals that the multiples of a round step need.
pub(super) fn decimals(step: f64) -> usize {
    (-libm::floor(libm::log10(step) + 1e-9)).max(0.0) as usize
}

/// The one of 1, 2, 5 times a power of ten that is nearest to `rough` in proportion.
pub fn round_step(rough: f64) -> f64 {
    if !(rough.is_finite() && rough > 0.0) {
        return 1.0;
    }
    let decade = libm::pow(10.0, libm::floor(libm::log10(rough)));
    let share = rough / decade;
    // Half way from 1 to 2, 2 to 5 and 5 to 10, in proportion.
    let nearest = [(1.0, 1.415), (2.0, 3.163), (5.0, 7.072)];
    decade * nearest.into_iter().find(|(_, up_to)| share < *up_to).map_or(10.0, |it| it.0)
}

/// A marked value of an axis.
pub(super) struct Tick {
    pub(super) at: f64,
    /// What it says, line by line: one a kind of unit.
    pub(super) words: Vec<String>,
}

/// Between two lines of a tick, px.
pub(super) const TICK_LINE: f64 = 14.0;

/// A plot's area on the page, inside the axes, and the ranges it shows: left to right, bottom to top.
pub(super) struct Plot {
    pub(super) area: Area,
    pub(super) x: Axis,
    pub(super) y: Axis,
}

impl Plot {
    /// Where a pair of values lies, px.
    pub(super) fn at(&self, x: f64, y: f64) -> [f64; 2] {
        let share = |value: f64, [low, high]: [f64; 2]| (value - low) / (high - low);
        [
            self.area.x + self.area.width * share(x, self.x.range),
            self.area.bottom() - self.area.height * share(y, self.y.range),
        ]
    }

    /// Rules, ticks at round values and labels; the y label stands above the axis, to be read without turning the
    /// head.
    pub(super) fn draw_ground(&self, picture: &mut Picture) {
        let round = |axis: &Axis, wanted: f64| -> Vec<Tick> {
            let (ticks, decimals) = axis.ticks(wanted);
            ticks.into_iter().map(|at| Tick { at, words: vec![number(at, decimals)] }).collect()
        };
        let x = round(&self.x, (self.area.width / 50.0).max(2.0));
        let y = round(&self.y, (self.area.height / 55.0).max(2.0));
        self.draw_ruled(picture, &x, &y);
    }

    /// The same with ticks of one's own, in both kinds of unit if need be.
    pub(super) fn draw_ruled(&self, picture: &mut Picture, x: &[Tick], y: &[Tick]) {
        let theme = picture.theme;
        let quiet = Lettering::new(Size::Quiet, theme.quiet);
        let rule = Stroke::solid(theme.hairline, 1.0);
        for tick in y {
            let [_, at] = self.at(self.x.range[0], tick.at);
            picture.line([self.area.x, at], [self.area.right(), at], rule);
            let first = at + 4.5 - 0.5 * TICK_LINE * tick.words.len().saturating_sub(1) as f64;
            for (k, words) in tick.words.iter().enumerate() {
                let line = first + TICK_LINE * k as f64;
                picture.text(self.area.x - 7.0, line, quiet.anchored(Anchor::End), words);
            }
        }
        for tick in x {
            let [at, bottom] = self.at(tick.at, self.y.range[0]);
            picture.line([at, bottom], [at, bottom + 5.0], Stroke::solid(theme.quiet, 1.0));
            for (k, words) in tick.words.iter().enumerate() {
                let line = bottom + 19.0 + TICK_LINE * k as f64;
                picture.text(at, line, quiet.anchored(Anchor::Middle), words);
            }
        }
        let [left, bottom] = [self.area.x, self.area.bottom()];
        picture.line([left, bottom], [self.area.right(), bottom], Stroke::solid(theme.quiet, 1.0));
        let more = x.iter().map(|it| it.words.len().saturating_sub(1)).max().unwrap_or(0);
        let under = bottom + 37.0 + TICK_LINE * more as f64;
        picture.text(self.area.right(), under, quiet.anchored(Anchor::End), &self.x.label);
        picture.text(left, self.area.y - 9.0, quiet, &self.y.label);
    }
}

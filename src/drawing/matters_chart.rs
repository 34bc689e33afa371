//! Which inputs carry the doubt of which figure: a row an input, a column a figure, a bar a share.

use super::palette::{Colour, Theme};
use super::picture::{Picture, Stroke};
use super::type_setting::{Anchor, Lettering, Size};
use super::words::number;

/// One bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bar {
    /// Share by itself.
    pub first: f64,
    /// Share with all it does together with others.
    pub total: f64,
    /// 95 % interval of the total.
    pub interval: [f64; 2],
}

/// One input.
#[derive(Clone, Debug, PartialEq)]
pub struct InputRow {
    /// Its name.
    pub name: String,
    /// How well it is known: "± 5 %".
    pub spread: String,
    /// A bar a column.
    pub bars: Vec<Bar>,
}

/// Inputs that belong together.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// What they have in common.
    pub title: String,
    /// The inputs.
    pub rows: Vec<InputRow>,
    /// Nobody can do anything about them: drawn in grey.
    pub quiet: bool,
}

/// What the chart shows.
#[derive(Clone, Debug, PartialEq)]
pub struct MattersPicture {
    /// What it says, in one sentence.
    pub sentence: String,
    /// Two lines a column: the figure, and its value with its doubt.
    pub columns: Vec<[String; 2]>,
    /// The inputs.
    pub sections: Vec<Section>,
    /// What bars and lines mean.
    pub legend: String,
}

/// Width of the names and spreads, px.
const NAMES: f64 = 250.0;
/// Width of a column, px.
const COLUMN: f64 = 134.0;
/// Least room between the names of two columns, px.
const GAP: f64 = 8.0;
/// Longest bar, px: a share of one.
const LONGEST: f64 = 88.0;
/// Height of a row, px.
const ROW: f64 = 23.0;
/// Share below which no number stands at a bar.
const LEAST_SHOWN: f64 = 0.005;
/// Room at the edges, px.
const EDGE: f64 = 16.0;

/// The chart as an SVG, as large as it needs.
pub fn svg(chart: &MattersPicture, theme: &Theme) -> String {
    let width = NAMES + COLUMN * chart.columns.len() as f64 + 2.0 * EDGE;
    let sentence = Lettering::new(Size::Sentence, theme.ink);
    let quiet = Lettering::new(Size::Quiet, theme.quiet);
    let line_px = Size::Quiet.line_px();
    let said = sentence.wrapped(&chart.sentence, width - 2.0 * EDGE);
    let legend = quiet.wrapped(&chart.legend, width - 2.0 * EDGE);
    let rows: usize = chart.sections.iter().map(|it| 1 + it.rows.len()).sum();
    let gaps = 10.0 * chart.sections.len() as f64;
    let heading = Lettering::new(Size::Quiet, theme.ink).bold();
    let name_lines = |[name, _]: &[String; 2]| heading.wrapped(name, COLUMN - GAP).len();
    let names = line_px * chart.columns.iter().map(name_lines).max().unwrap_or(0) as f64;
    let top = EDGE + Size::Sentence.line_px() * said.len() as f64;
    let below = ROW * rows as f64 + gaps + 20.0 + line_px * legend.len() as f64;
    let mut picture = Picture::new(width, top + names + 45.0 + below, theme);
    let mut y = picture.sentence(picture.whole(), &chart.sentence) + 7.0;
    for (n, [figure, doubt]) in chart.columns.iter().enumerate() {
        picture.paragraph([column_x(n), y], COLUMN - GAP, heading, figure);
        picture.text(column_x(n), y + names + line_px, quiet, doubt);
    }
    y += names + 28.0;
    for section in &chart.sections {
        y += 10.0;
        picture.line([EDGE, y], [width - EDGE, y], Stroke::solid(theme.hairline, 1.0));
        y += ROW;
        picture.text(EDGE, y - 6.0, quiet, &section.title);
        let colour = if section.quiet { theme.quiet } else { theme.bats[0] };
        for row in &section.rows {
            y += ROW;
            let name = Lettering::new(Size::Text, theme.ink);
            picture.text(EDGE, y - 6.0, name, &row.name);
            let right = EDGE + NAMES - 18.0;
            picture.text(right, y - 6.0, quiet.anchored(Anchor::End), &row.spread);
            for (n, it) in row.bars.iter().enumerate() {
                bar(&mut picture, [column_x(n), y], *it, colour);
            }
        }
    }
    picture.paragraph([EDGE, y + 14.0], width - 2.0 * EDGE, quiet, &chart.legend);
    picture.finish()
}

fn column_x(n: usize) -> f64 {
    EDGE + NAMES + COLUMN * n as f64
}

/// A bar with its foot at x, the row's baseline at y: pale the total, dark what it carries by itself, a
/// line the total's interval, and the total as a number.
fn bar(picture: &mut Picture, [x, y]: [f64; 2], it: Bar, colour: Colour) {
    let theme = picture.theme;
    let long = |share: f64| LONGEST * share.clamp(0.0, 1.0);
    let box_of = |share: f64, high: f64| {
        let (left, right) = (x, x + long(share));
        let (top, bottom) = (y - 11.0 - 0.5 * high, y - 11.0 + 0.5 * high);
        [[left, top], [right, top], [right, bottom], [left, bottom]]
    };
    picture.line([x, y - ROW + 4.0], [x, y + 1.0], Stroke::solid(theme.hairline, 1.0));
    if it.total < LEAST_SHOWN {
        return;
    }
    picture.polygons([box_of(it.total, 14.0).as_slice()], colour, 0.35);
    picture.polygons([box_of(it.first.min(it.total), 7.0).as_slice()], colour, 1.0);
    let [low, high] = it.interval.map(|share| x + long(share));
    picture.line([low, y - 11.0], [high, y - 11.0], Stroke::solid(theme.ink, 1.0));
    let text = Lettering::new(Size::Quiet, theme.ink);
    let right = high.max(x + long(it.total));
    picture.text(right + 5.0, y - 6.0, text, &number(100.0 * it.total.min(1.0), 0));
}

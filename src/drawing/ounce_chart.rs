//! What an ounce costs, along the bat: a curve a stroke over the bat laid down, the axis that each curve fits
//! marked where it lies.

use super::area::Area;
use super::axis::{Axis, Plot};
use super::bat_outline::outline;
use super::chart::{EndName, NAME_STEP, name_ends};
use super::palette::{BAT_DASHES, PRINT, Theme};
use super::picture::{Picture, Stroke};
use super::type_setting::{Anchor, Lettering, Size};
use super::{INSIDE, PAGE_MM, PX_PER_MM};

/// One stroke.
#[derive(Clone, Debug, PartialEq)]
pub struct OunceCurve {
    /// Its name.
    pub stroke: String,
    /// Station, m from the top of the handle, and what an ounce there takes, as shown.
    pub points: Vec<[f64; 2]>,
    /// The axis above the top of the handle, m.
    pub axis_above_top_m: f64,
    /// Where the axis is, in words.
    pub axis_words: String,
}

/// A station at which the main stroke's cost is written.
#[derive(Clone, Debug, PartialEq)]
pub struct OunceMark {
    /// Station, m from the top of the handle.
    pub from_top_m: f64,
    /// What an ounce there takes, as shown.
    pub cost: f64,
    /// The same in words.
    pub words: String,
}

/// What the chart shows.
#[derive(Clone, Debug, PartialEq)]
pub struct OuncePicture {
    /// What it says, in one sentence; empty for none.
    pub sentence: String,
    /// Overall length of the bat, m.
    pub length_m: f64,
    /// Diameter of its handle, m.
    pub handle_diameter_m: f64,
    /// Along the bat, in words, and how many of its unit are in a metre.
    pub along: (String, f64),
    /// What an ounce takes, in words with the unit.
    pub cost_label: String,
    /// The strokes; the first in the list stands out.
    pub curves: Vec<OunceCurve>,
    /// Costs of the first stroke written beside its curve.
    pub marks: Vec<OunceMark>,
}

/// Room right of the plot for the names, px, and left of it for the scale.
const RIGHT: f64 = 84.0;
const LEFT: f64 = 60.0;
/// Room beyond the farthest axis and the toe, m.
const BEYOND_M: f64 = 0.03;
/// Under the scale, before the bat, px.
const OVER_BAT: f64 = 58.0;
/// Radius of an axis's mark, px.
const AXIS_PX: f64 = 4.5;

/// The chart as an SVG of so many px.
pub fn svg(chart: &OuncePicture, theme: &Theme, width: f64, height: f64) -> String {
    let mut picture = Picture::new(width, height, theme);
    draw(&mut picture, Area::new(0.0, 0.0, width, height), chart);
    picture.finish()
}

/// The chart on a printed page of its own, A4 on its side.
pub fn page(chart: &OuncePicture) -> String {
    let [height, width] = PAGE_MM.map(|it| it * PX_PER_MM);
    let mut picture = Picture::new(width, height, &PRINT);
    draw(&mut picture, Area::new(INSIDE.y, INSIDE.x, INSIDE.height, INSIDE.width), chart);
    picture.finish()
}

fn draw(picture: &mut Picture, area: Area, chart: &OuncePicture) {
    let theme = picture.theme;
    let top = picture.sentence(area, &chart.sentence) + 28.0;
    let (along, per_m) = &chart.along;
    let farthest = chart.curves.iter().map(|it| it.axis_above_top_m).fold(0.0, f64::max);
    let range_m = [-farthest - BEYOND_M, chart.length_m + BEYOND_M];
    let wide = (area.width - LEFT - RIGHT).max(60.0);
    let px_per_m = wide / (range_m[1] - range_m[0]);
    let names = NAME_STEP * chart.curves.len() as f64;
    let bat = outline(chart.length_m, chart.handle_diameter_m);
    let half = px_per_m * bat.iter().map(|it| it[1]).fold(0.0, f64::max);
    let under = OVER_BAT + 2.0 * half + names + 18.0;
    let costs = || chart.curves.iter().flat_map(|it| &it.points).map(|it| it[1]);
    let plot = Plot {
        area: Area::new(area.x + LEFT, top, wide, (area.bottom() - under - top).max(60.0)),
        x: Axis { label: along.clone(), range: range_m.map(|it| it * per_m) },
        y: Axis {
            label: chart.cost_label.clone(),
            range: [costs().fold(0.0, f64::min), 1.1 * costs().fold(1e-9, f64::max)],
        },
    };
    plot.draw_ground(picture);
    for n in (0..chart.curves.len()).rev() {
        curve(picture, &plot, chart, n);
    }
    named(picture, &plot, chart);
    let middle = plot.area.bottom() + OVER_BAT + half;
    let at = |it: &[f64; 2]| {
        let [x, _] = plot.at(it[0] * per_m, 0.0);
        [x, middle + px_per_m * it[1]]
    };
    let shape: Vec<[f64; 2]> = bat.iter().map(at).collect();
    picture.polygons([shape.as_slice()], theme.panel, 1.0);
    picture.polyline(&shape, Stroke::solid(theme.ink, 1.5));
    axes(picture, &plot, chart, [middle, middle + half]);
    written(picture, &plot, chart);
}

fn look(n: usize, theme: &Theme) -> Stroke {
    let dash = BAT_DASHES.get(n).copied().unwrap_or("");
    match n {
        0 => Stroke::solid(theme.bats[0], 2.5),
        _ => Stroke { colour: theme.quiet, width: 1.5, dash },
    }
}

fn curve(picture: &mut Picture, plot: &Plot, chart: &OuncePicture, n: usize) {
    let points = &chart.curves[n].points;
    let line: Vec<[f64; 2]> =
        points.iter().map(|[x, cost]| plot.at(x * chart.along.1, *cost)).collect();
    picture.polyline(&line, look(n, &picture.theme));
}

/// Each curve's name at its end.
fn named(picture: &mut Picture, plot: &Plot, chart: &OuncePicture) {
    let theme = picture.theme;
    let named = chart.curves.iter().enumerate().filter_map(|(n, it)| {
        let [x, cost] = it.points.last()?;
        let end = plot.at(x * chart.along.1, *cost);
        let is_bold = n == 0;
        Some(EndName { end, colour: look(n, &theme).colour, name: &it.stroke, is_bold })
    });
    name_ends(picture, plot, named.collect());
}

/// The axes on the bat's line produced, the farthest named lowest so that no name crosses a leader.
fn axes(picture: &mut Picture, plot: &Plot, chart: &OuncePicture, [middle, under]: [f64; 2]) {
    let theme = picture.theme;
    let at = |above_m: f64| plot.at(-above_m * chart.along.1, 0.0)[0];
    let mut nearest_first: Vec<usize> = (0..chart.curves.len()).collect();
    let above = |n: &usize| chart.curves[*n].axis_above_top_m;
    nearest_first.sort_by(|a, b| above(a).total_cmp(&above(b)));
    let beyond = nearest_first.last().map_or(0.0, above).max(0.0);
    let produced = Stroke { colour: theme.quiet, width: 1.0, dash: "4 4" };
    picture.line([at(beyond), middle], [at(0.0), middle], produced);
    let text = Lettering::new(Size::Quiet, theme.ink);
    for (row, n) in nearest_first.iter().enumerate() {
        let stroke = look(*n, &theme);
        let (x, y) = (at(above(n)), under + NAME_STEP * (row + 1) as f64);
        picture.line([x, middle], [x, y], Stroke::solid(stroke.colour, 1.0));
        let rim = Stroke::solid(stroke.colour, 2.0);
        picture.disc([x, middle], AXIS_PX, theme.ground, rim);
        let text = if *n == 0 { text.bold() } else { text };
        picture.text(x + 6.0, y + 1.0, text, &chart.curves[*n].axis_words);
    }
}

/// The first stroke's costs beside its curve.
fn written(picture: &mut Picture, plot: &Plot, chart: &OuncePicture) {
    if chart.curves.is_empty() {
        return;
    }
    let theme = picture.theme;
    let text = Lettering::new(Size::Quiet, theme.ink).bold().anchored(Anchor::End);
    for it in &chart.marks {
        let [x, y] = plot.at(it.from_top_m * chart.along.1, it.cost);
        picture.disc([x, y], 3.5, theme.ground, Stroke::solid(theme.bats[0], 2.0));
        picture.text_on_patch(x - 8.0, y - 8.0, text, &it.words, theme.ground);
    }
}

//! Line charts with their doubt as bands and each curve's name at its end.

use super::area::Area;
use super::axis::{Axis, Plot};
use super::palette::{Colour, Theme, bat_look};
use super::picture::{Picture, Stroke};
use super::type_setting::{Lettering, Size};
use crate::measurement::bench::bat_letter;

/// One point of a curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Along the x axis.
    pub x: f64,
    /// Best value.
    pub y: f64,
    /// One standard deviation of it; zero draws no band.
    pub sd: f64,
}

/// One bat's curve.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// The bat's place in the list: gives colour, dashes and letter.
    pub bat: usize,
    /// Its name.
    pub label: String,
    /// From left to right.
    pub points: Vec<Point>,
}

/// A chart.
#[derive(Clone, Debug, PartialEq)]
pub struct Chart {
    /// What it says, in one sentence; empty for none.
    pub sentence: String,
    /// Left to right.
    pub x: Axis,
    /// Bottom to top.
    pub y: Axis,
    /// The curves.
    pub curves: Vec<Curve>,
}

/// Least distance between the baselines of two names, px.
pub(super) const NAME_STEP: f64 = 17.0;

/// The chart as an SVG of so many px.
pub fn svg(chart: &Chart, theme: &Theme, width: f64, height: f64) -> String {
    let mut picture = Picture::new(width, height, theme);
    draw(&mut picture, Area::new(0.0, 0.0, width, height), chart);
    picture.finish()
}

/// Draws the chart into an area.
pub(super) fn draw(picture: &mut Picture, area: Area, chart: &Chart) {
    let theme = picture.theme;
    let top = picture.sentence(area, &chart.sentence) + 28.0;
    // A letter tells curves apart; one alone needs none.
    let named = |it: &Curve| match chart.curves.len() {
        1 => it.label.clone(),
        _ => format!("{}  {}", bat_letter(it.bat), it.label),
    };
    let names: Vec<String> = chart.curves.iter().map(named).collect();
    let naming = Lettering::new(Size::Quiet, theme.ink);
    let widest = names.iter().map(|it| naming.width(it)).fold(0.0, f64::max);
    let plot = Plot {
        area: Area::new(
            area.x + 60.0,
            top,
            (area.width - 60.0 - widest - 34.0).max(60.0),
            (area.bottom() - 48.0 - top).max(40.0),
        ),
        x: chart.x.clone(),
        y: chart.y.clone(),
    };
    plot.draw_ground(picture);
    for curve in &chart.curves {
        let (colour, _) = bat_look(&theme, curve.bat);
        picture.polygons([band(curve, &plot).as_slice()], colour, 0.14);
    }
    let mut ends = Vec::new();
    for (curve, name) in chart.curves.iter().zip(&names) {
        let (colour, dash) = bat_look(&theme, curve.bat);
        let line: Vec<[f64; 2]> = curve.points.iter().map(|it| plot.at(it.x, it.y)).collect();
        picture.polyline(&line, Stroke { colour, width: 2.5, dash });
        if let Some(end) = line.last() {
            ends.push(EndName { end: *end, colour, name, is_bold: false });
        }
    }
    name_ends(picture, &plot, ends);
}

/// A curve's name, to stand right of its end.
pub(super) struct EndName<'a> {
    pub(super) end: [f64; 2],
    pub(super) colour: Colour,
    pub(super) name: &'a str,
    pub(super) is_bold: bool,
}

/// The curves' names right of the plot, none over another.
pub(super) fn name_ends(picture: &mut Picture, plot: &Plot, mut names: Vec<EndName<'_>>) {
    names.sort_by(|a, b| a.end[1].total_cmp(&b.end[1]));
    let wanted: Vec<f64> = names.iter().map(|it| it.end[1]).collect();
    // Colours C and D are too pale for small text: the name is in ink, its leader carries the colour.
    let regular = Lettering::new(Size::Quiet, picture.theme.ink);
    for (it, y) in names.iter().zip(spread(&wanted, NAME_STEP)) {
        let x = plot.area.right() + 20.0;
        picture.line(it.end, [x - 4.0, y], Stroke::solid(it.colour, 1.0));
        let lettering = if it.is_bold { regular.bold() } else { regular };
        picture.text(x, y + 4.5, lettering, it.name);
    }
}

/// One standard deviation to either side, as a polygon; empty when there is no doubt to draw.
fn band(curve: &Curve, plot: &Plot) -> Vec<[f64; 2]> {
    if curve.points.iter().all(|it| it.sd <= 0.0) {
        return Vec::new();
    }
    let above = curve.points.iter().map(|it| plot.at(it.x, it.y + it.sd));
    let below = curve.points.iter().rev().map(|it| plot.at(it.x, it.y - it.sd));
    above.chain(below).collect()
}

/// Positions in rising order, moved apart so that no two are nearer than `step`, about the same middle.
pub(super) fn spread(wanted: &[f64], step: f64) -> Vec<f64> {
    let mut groups: Vec<(f64, usize)> = Vec::new(); // middle, members
    for y in wanted {
        groups.push((*y, 1));
        while let [.., a, b] = groups.as_slice()
            && b.0 - a.0 < 0.5 * step * (a.1 + b.1) as f64
        {
            let members = a.1 + b.1;
            let middle = (a.0 * a.1 as f64 + b.0 * b.1 as f64) / members as f64;
            groups.truncate(groups.len() - 2);
            groups.push((middle, members));
        }
    }
    groups
        .into_iter()
        .flat_map(|(middle, members)| {
            let first = middle - 0.5 * step * (members - 1) as f64;
            (0..members).map(move |k| first + step * k as f64)
        })
        .collect()
}

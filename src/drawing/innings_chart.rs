//! The innings: each stroke's bat speed over the runs, a panel a stroke, one scale for all.

use super::area::Area;
use super::axis::Axis;
use super::chart::{Chart, Curve, draw};
use super::palette::Theme;
use super::picture::Picture;

/// One stroke's curves, x the runs.
#[derive(Clone, Debug, PartialEq)]
pub struct StrokePanel {
    /// "Pull".
    pub stroke: String,
    /// A curve a bat.
    pub curves: Vec<Curve>,
}

/// What the innings chart shows.
#[derive(Clone, Debug, PartialEq)]
pub struct InningsPicture {
    /// What it says, in one sentence.
    pub sentence: String,
    /// What is drawn, with its unit: "bat speed at the contact point, m/s".
    pub figure: String,
    /// Least height of the scale in that unit, so that a flat innings looks flat.
    pub least_span: f64,
    /// The strokes.
    pub panels: Vec<StrokePanel>,
}

/// The innings chart as an SVG of so many px: panels side by side while each keeps 360 px, else below
/// each other.
pub fn svg(innings: &InningsPicture, theme: &Theme, width: f64, height: f64) -> String {
    let mut picture = Picture::new(width, height, theme);
    let top = picture.sentence(picture.whole(), &innings.sentence);
    let points = || innings.panels.iter().flat_map(|it| &it.curves).flat_map(|it| &it.points);
    let y =
        Axis::around("", points().flat_map(|it| [it.y - it.sd, it.y + it.sd]), innings.least_span);
    let runs = Axis::around("runs", points().map(|it| it.x), 1.0);
    let count = innings.panels.len().max(1);
    let columns = ((width / 360.0) as usize).clamp(1, count);
    let rows = count.div_ceil(columns);
    let (wide, high) = (width / columns as f64, (height - top) / rows as f64);
    for (k, panel) in innings.panels.iter().enumerate() {
        let area =
            Area::new(wide * (k % columns) as f64, top + high * (k / columns) as f64, wide, high);
        let label = format!("{}: {}", panel.stroke, innings.figure);
        let chart = Chart {
            sentence: String::new(),
            x: Axis { range: [runs.range[0].max(0.0), runs.range[1]], ..runs.clone() },
            y: Axis { label, range: y.range },
            curves: panel.curves.clone(),
        };
        draw(&mut picture, area, &chart);
    }
    picture.finish()
}

//! Ours against theirs: a line and the outside readings it is held against, with their spread.

use super::area::Area;
use super::axis::{Axis, Plot};
use super::palette::{Theme, bat_look};
use super::picture::{Picture, Stroke};
use super::type_setting::{Lettering, Size};
use crate::validation::{Curve, Reading};

/// Radius of a reading's mark, px.
const MARK_PX: f64 = 4.5;
/// Half the width of the cap of a spread, px.
const CAP_PX: f64 = 4.0;
/// Least height of the scale as a share of the greatest value, so that what is flat looks flat.
const LEAST_SPAN: f64 = 0.02;

/// A curve and its readings as an SVG of so many px.
pub fn svg(curve: &Curve, theme: &Theme, width: f64, height: f64) -> String {
    let mut picture = Picture::new(width, height, theme);
    let title = Lettering::new(Size::Text, theme.ink);
    let title_y = picture.paragraph([16.0, 8.0], width - 32.0, title, &curve.title);
    let top = legend(&mut picture, curve, title_y + 6.0, width) + 34.0;
    let spread = |it: &Reading| it.sd.map_or(0.0, |sd| 2.0 * sd);
    let theirs = || curve.theirs.iter();
    let y = || {
        let readings = theirs().flat_map(move |it| [it.y - spread(it), it.y + spread(it)]);
        curve.ours.iter().map(|it| it.1).chain(readings)
    };
    let x = || curve.ours.iter().map(|it| it.0).chain(theirs().map(|it| it.x));
    let greatest = y().filter(|it| it.is_finite()).fold(0.0_f64, |m, it| m.max(it.abs()));
    let plot = Plot {
        area: Area::new(66.0, top, width - 66.0 - 20.0, (height - 52.0 - top).max(40.0)),
        x: Axis::around(&curve.x_label, x(), 0.0),
        y: Axis::around(&curve.y_label, y(), LEAST_SPAN * greatest),
    };
    plot.draw_ground(&mut picture);
    let (ours, dash) = bat_look(theme, 0);
    let line: Vec<[f64; 2]> =
        curve.ours.iter().filter(|it| it.1.is_finite()).map(|it| plot.at(it.0, it.1)).collect();
    picture.polyline(&line, Stroke { colour: ours, width: 2.5, dash });
    for it in &curve.theirs {
        reading(&mut picture, &plot, it);
    }
    picture.finish()
}

/// What the line and the marks are; returns where it ends, px.
fn legend(picture: &mut Picture, curve: &Curve, top: f64, width: f64) -> f64 {
    let quiet = Lettering::new(Size::Quiet, picture.theme.quiet);
    let (ours, dash) = bat_look(&picture.theme, 0);
    let middle = top + 8.0;
    picture.line([16.0, middle], [40.0, middle], Stroke { colour: ours, width: 2.5, dash });
    picture.text(48.0, middle + 4.5, quiet, "this program");
    let mut y = middle;
    for (n, line) in quiet.wrapped(&curve.source, width - 64.0).iter().enumerate() {
        y += Size::Quiet.line_px();
        if n == 0 && !curve.theirs.is_empty() {
            mark(picture, [28.0, y]);
        }
        picture.text(48.0, y + 4.5, quiet, line);
    }
    y
}

/// A ring, told from the line by its shape and not by its colour alone.
fn mark(picture: &mut Picture, at: [f64; 2]) {
    let (theirs, _) = bat_look(&picture.theme, 1);
    picture.disc(at, MARK_PX, picture.theme.panel, Stroke::solid(theirs, 2.0));
}

/// A reading, with two standard deviations to either side where its spread is published.
fn reading(picture: &mut Picture, plot: &Plot, it: &Reading) {
    let (theirs, _) = bat_look(&picture.theme, 1);
    if let Some(sd) = it.sd {
        let [low, high] = [it.y - 2.0 * sd, it.y + 2.0 * sd].map(|y| plot.at(it.x, y));
        let rule = Stroke::solid(theirs, 1.5);
        picture.line(low, high, rule);
        for [x, y] in [low, high] {
            picture.line([x - CAP_PX, y], [x + CAP_PX, y], rule);
        }
    }
    mark(picture, plot.at(it.x, it.y));
}

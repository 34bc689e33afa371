//! The bat speeds, fresh and at fifty, as a picture.

use backlift::comparison::figure::{Figure, StrokeFigure, When};
use backlift::drawing::chart::{Curve, Point};
use backlift::drawing::innings_chart::{InningsPicture, StrokePanel, svg};
use backlift::drawing::palette::LIGHT;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::innings::played::FIFTY;
use backlift::questions::compared::Shown;
use backlift::units::Units;

use crate::beside::Beside;
use crate::figure::speed_unit;
use crate::sentences::pair::sentence;
use crate::written::add_picture;

/// Size of the picture, px.
const PICTURE: [f64; 2] = [1200.0, 520.0];
/// Least height of the scale, m/s: a difference that matters stands out, a flat innings looks flat.
const LEAST_SPAN_M_S: f64 = 2.0;

/// Adds it to a folder.
pub fn add(folder: &mut Folder, shown: &Shown, beside: &Beside, units: Units) -> Result<(), Fault> {
    let (unit, size) = speed_unit(units);
    let point = |bat: usize, stroke: usize, when: When, runs: f64| {
        let it = shown.value(bat, Figure::Stroke(stroke, when, StrokeFigure::BatSpeed));
        Point { x: runs, y: size * it.value, sd: 0.0 }
    };
    let curve = |bat: usize, stroke: usize| Curve {
        bat,
        label: shown.label(bat).to_owned(),
        points: vec![
            point(bat, stroke, When::Fresh, 0.0),
            point(bat, stroke, When::AtFifty, FIFTY),
        ],
    };
    let panels = shown.strokes.iter().enumerate().map(|(stroke, name)| StrokePanel {
        stroke: name.clone(),
        curves: (0..shown.bats.len()).map(|bat| curve(bat, stroke)).collect(),
    });
    let picture = InningsPicture {
        sentence: beside.sentence(&sentence(shown, units)),
        figure: format!("bat speed, {unit}"),
        least_span: size * LEAST_SPAN_M_S,
        panels: panels.collect(),
    };
    let picture = svg(&picture, &LIGHT, PICTURE[0], PICTURE[1]);
    add_picture(folder, "compare", &picture)
}

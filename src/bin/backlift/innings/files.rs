//! The innings as a chart.

use backlift::drawing::chart::{Curve, Point};
use backlift::drawing::innings_chart::{InningsPicture, StrokePanel, svg};
use backlift::drawing::palette::LIGHT;
use backlift::drawing::png::png;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::units::Units;

use super::told::sentence;
use crate::beside::Beside;
use backlift::questions::innings::Played;

/// Width of a panel and height of the picture, px.
const PANEL: [f64; 2] = [400.0, 420.0];
/// Least height of the scale, m/s, so that a flat innings looks flat.
const LEAST_SPAN_M_S: f64 = 2.0;

/// Adds the chart to a folder.
pub fn add(
    folder: &mut Folder,
    played: &Played,
    beside: &Beside,
    units: Units,
) -> Result<(), Fault> {
    let mut chart = chart(played, units);
    chart.sentence = beside.sentence(&chart.sentence);
    let width = PANEL[0] * chart.panels.len().max(2) as f64;
    let picture = svg(&chart, &LIGHT, width, PANEL[1]);
    folder.add("innings.svg", picture.as_bytes())?;
    let pixels = png(&picture, 2.0).map_err(|it| Fault::new(it.to_string()))?;
    folder.add("innings.png", &pixels)
}

/// The band is the difference that lasting fatigue makes: nobody knows how much of it there is.
fn chart(played: &Played, units: Units) -> InningsPicture {
    let (unit, size) = match units {
        Units::Trade => ("km/h", 1.0 / 3.6),
        Units::Si => ("m/s", 1.0),
    };
    let panel = |i: usize| {
        let points = played
            .points
            .iter()
            .filter_map(|it| Some((it.left.runs, it.with_slow.get(i)?, it.without_slow.get(i)?)))
            .map(|(runs, with, without)| {
                let [with, without] =
                    [with, without].map(|it| it.fastest.contact.bat_speed_m_s / size);
                Point { x: runs, y: with, sd: (without - with).abs() }
            })
            .collect();
        let curve = Curve { bat: played.bat, label: played.bat_label.clone(), points };
        let mut stroke = played.strokes.get(i).cloned().unwrap_or_default();
        if let Some(first) = stroke.get_mut(0..1) {
            first.make_ascii_uppercase();
        }
        StrokePanel { stroke, curves: vec![curve] }
    };
    InningsPicture {
        sentence: format!(
            "{}; the band: from none to twice what is drawn",
            sentence(played, units)
        )
        .replace('\n', " "),
        figure: format!("bat speed, {unit}"),
        least_span: LEAST_SPAN_M_S / size,
        panels: played.shown.iter().map(|i| panel(*i)).collect(),
    }
}

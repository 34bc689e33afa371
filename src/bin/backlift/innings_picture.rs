//! Bat speed through an innings with one bat as a picture: the band is what lasting fatigue makes of it.

use backlift::drawing::chart::{Curve, Point};
use backlift::drawing::innings_chart::{InningsPicture, StrokePanel, svg};
use backlift::drawing::palette::LIGHT;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::innings::played::{AtScore, StrokeNow};
use backlift::units::Units;

use crate::figure::speed_unit;
use crate::written::add_picture;

/// Width of a panel and height of the picture, px.
const PANEL: [f64; 2] = [400.0, 420.0];
/// Least height of the scale, m/s, so that a flat innings looks flat.
const LEAST_SPAN_M_S: f64 = 2.0;

pub struct Through<'a> {
    /// Its place among others, which gives it its colour.
    pub bat: usize,
    /// What it is called.
    pub label: &'a str,
    /// All strokes at the scores looked at.
    pub points: &'a [AtScore],
}

impl Through<'_> {
    /// Adds it to a folder: a panel a stroke, by its place among all and the name over it.
    pub fn add(
        &self,
        folder: &mut Folder,
        strokes: impl Iterator<Item = (usize, String)>,
        sentence: String,
        units: Units,
    ) -> Result<(), Fault> {
        let (unit, per_m_s) = speed_unit(units);
        let point = |it: &AtScore, i: usize| {
            let speed = |it: &[StrokeNow]| it.get(i).map(|it| per_m_s * it.bat_speed_m_s());
            let (with, without) = (speed(&it.with_slow)?, speed(&it.without_slow)?);
            Some(Point { x: it.left.runs, y: with, sd: (without - with).abs() })
        };
        let panel = |(i, stroke): (usize, String)| {
            let points = self.points.iter().filter_map(|it| point(it, i)).collect();
            let curve = Curve { bat: self.bat, label: self.label.to_owned(), points };
            StrokePanel { stroke, curves: vec![curve] }
        };
        let picture = InningsPicture {
            sentence,
            figure: format!("bat speed, {unit}"),
            least_span: LEAST_SPAN_M_S * per_m_s,
            panels: strokes.map(panel).collect(),
        };
        let width = PANEL[0] * picture.panels.len().max(2) as f64;
        add_picture(folder, "innings", &svg(&picture, &LIGHT, width, PANEL[1]))
    }
}

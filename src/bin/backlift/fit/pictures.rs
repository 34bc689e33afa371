//! The card, the map and the innings as files.

use backlift::bat::pickup_weight::pickup_weight_kg;
use backlift::drawing::chart::{Curve, Point};
use backlift::drawing::innings_chart::{self, InningsPicture, StrokePanel};
use backlift::drawing::map::{self, MapBat, MapPicture};
use backlift::drawing::palette::LIGHT;
use backlift::drawing::pdf::pdf;
use backlift::drawing::png::png;
use backlift::drawing::sheet;
use backlift::files::card;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::units::Units;

use super::Fitted;

/// Scale of the pictures' pixels.
const PIXELS: f64 = 2.0;
/// Size of the map, px.
const MAP: [f64; 2] = [900.0, 640.0];
/// Width of a panel of the innings and height of the picture, px.
const PANEL: [f64; 2] = [400.0, 420.0];
/// Least height of the innings' scale, m/s.
const LEAST_SPAN_M_S: f64 = 2.0;

/// Adds everything to the folder.
pub fn add(folder: &mut Folder, it: &Fitted, units: Units) -> Result<(), Fault> {
    let fault = |e: &dyn std::fmt::Display| Fault::new(e.to_string());
    let picture = map_picture(it, units);
    let sheet = sheet::svg(&it.card, Some(&picture)).map_err(|e| fault(&e))?;
    folder.add("card.pdf", &pdf(&sheet, "Bat card").map_err(|e| fault(&e))?)?;
    folder.add("card.png", &png(&sheet, PIXELS).map_err(|e| fault(&e))?)?;
    folder.add("card.ron", card::write(&it.card).map_err(|e| fault(&e))?.as_bytes())?;
    let svg = map::svg(&picture, &LIGHT, MAP[0], MAP[1]).map_err(|e| fault(&e))?;
    folder.add("map.svg", svg.as_bytes())?;
    folder.add("map.png", &png(&svg, PIXELS).map_err(|e| fault(&e))?)?;
    let innings = innings_picture(it, units);
    let width = PANEL[0] * innings.panels.len().max(2) as f64;
    let svg = innings_chart::svg(&innings, &LIGHT, width, PANEL[1]);
    folder.add("innings.svg", svg.as_bytes())?;
    folder.add("innings.png", &png(&svg, PIXELS).map_err(|e| fault(&e))?)
}

fn speed(units: Units) -> (&'static str, f64) {
    match units {
        Units::Trade => ("km/h", 3.6),
        Units::Si => ("m/s", 1.0),
    }
}

/// The map on the grid of its cells.
fn map_picture(it: &Fitted, units: Units) -> MapPicture {
    let cells = &it.fitting.map;
    let axis = |f: &dyn Fn(usize) -> f64| {
        let mut all: Vec<f64> = (0..cells.len()).map(f).collect();
        all.sort_by(f64::total_cmp);
        all.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
        all
    };
    let mass_kg = axis(&|i| cells[i].worth.bat.mass_kg());
    let balance_m = axis(&|i| cells[i].worth.bat.balance_m());
    let (unit, per_m_s) = speed(units);
    let reference = it
        .loaded
        .sizes
        .iter()
        .find(|s| s.name == it.card.size)
        .and_then(|s| s.reference.bat("reference").ok());
    let mut value = Vec::with_capacity(mass_kg.len() * balance_m.len());
    let mut pickup = Vec::with_capacity(mass_kg.len() * balance_m.len());
    for balance in &balance_m {
        for mass in &mass_kg {
            let cell = cells.iter().find(|c| {
                (c.worth.bat.mass_kg() - mass).abs() < 1e-6
                    && (c.worth.bat.balance_m() - balance).abs() < 1e-6
            });
            value.push(cell.filter(|c| c.worth.passes()).map(|c| per_m_s * c.worth.goal_m_s));
            pickup.push(cell.zip(reference.as_ref()).map(|(c, reference)| {
                pickup_weight_kg(reference, c.worth.bat.swing_moment_kg_m2())
            }));
        }
    }
    let bats = it
        .loaded
        .bats
        .iter()
        .enumerate()
        .map(|(bat, b)| MapBat { bat, mass_kg: b.bat.mass_kg(), balance_m: b.bat.balance_m() })
        .collect();
    let end = it.fitting.setting.plan.runs;
    MapPicture {
        sentence: format!(
            "What bats of size {} are worth to this player at {end:.0} runs; the frame is the card's tolerance",
            it.card.size
        ),
        mass_kg,
        balance_m,
        value,
        value_label: format!("ball speed off the bat at {end:.0}, {unit}"),
        pickup_weight_kg: pickup,
        bats,
        target: Some(super::told::target(&it.card)),
    }
}

/// The innings with the recommended bat; the band is what lasting fatigue makes of it.
fn innings_picture(it: &Fitted, units: Units) -> InningsPicture {
    let (unit, per_m_s) = speed(units);
    let points = &it.headline.points;
    let panels = it
        .fitting
        .setting
        .batter
        .strokes
        .iter()
        .enumerate()
        .map(|(i, stroke)| {
            let points = points
                .iter()
                .map(|p| {
                    let [with, without] = [&p.with_slow[i], &p.without_slow[i]]
                        .map(|s| per_m_s * s.fastest.contact.bat_speed_m_s);
                    Point { x: p.left.runs, y: with, sd: (without - with).abs() }
                })
                .collect();
            StrokePanel {
                stroke: stroke.stroke.name.clone(),
                curves: vec![Curve { bat: 0, label: "the bat to order".into(), points }],
            }
        })
        .collect();
    InningsPicture {
        sentence: "Bat speed of each stroke through the innings; the band is how little is known of lasting fatigue".into(),
        figure: format!("bat speed, {unit}"),
        least_span: LEAST_SPAN_M_S * per_m_s,
        panels,
    }
}

//! What an ounce costs, where, in words, in a table and as a picture.

use backlift::drawing::ounce_chart::{OunceCurve, OunceMark, OuncePicture};
use backlift::innings::score::runs_words;
use backlift::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use backlift::ounce::axis::CostAxis;
use backlift::ounce::cost::{Cost, OUNCE_KG, StrokeOunce};
use backlift::questions::ounces::Ounces;
use backlift::units::{INCH_M, Quantity, Units, spoken};
use serde_json::{Map, Value, json};

use crate::figure::{capital, listed, number, plain, speed_unit};
use crate::table::table;

/// Beyond this share left by the best axis no axis is spoken of.
const NO_AXIS: f64 = 0.1;

/// Digits of a length that is only about right: a tenth of an inch, a millimetre.
const DIGIT_M: f64 = 0.003;

/// "an ounce", or what it is.
pub fn ounce(units: Units) -> String {
    match units {
        Units::Trade => "an ounce".to_owned(),
        Units::Si => plain(1000.0 * OUNCE_KG, 0, "g"),
    }
}

/// What an ounce takes, m/s, in the reader's units: "0.31 km/h"; a gain has a minus sign.
pub fn takes(change_m_s: f64, units: Units) -> String {
    let (unit, size) = speed_unit(units);
    plain(-size * change_m_s, decimals(units), unit)
}

fn decimals(units: Units) -> usize {
    match units {
        Units::Trade => 2,
        Units::Si => 3,
    }
}

fn length(metre: f64, units: Units) -> String {
    spoken(Quantity::Length, metre, DIGIT_M, units)
}

/// Stations that are spoken of: the top, the pickup axis, the balance point, the toe.
fn stations(it: &Ounces) -> [(&'static str, f64); 4] {
    [
        ("at the top of the handle", 0.0),
        ("at the pickup axis", PICKUP_AXIS_FROM_TOP_M),
        ("at the balance point", it.bat.balance_m()),
        ("at the toe", it.bat.length_m()),
    ]
}

/// "an axis 11.8 in above the top of the handle".
fn axis_words(axis: &CostAxis, units: Units) -> String {
    let away = length(axis.above_top_m.abs(), units);
    match axis.residual_share {
        left if left > NO_AXIS => "no one axis".to_owned(),
        _ if axis.above_top_m >= 0.0 => format!("an axis {away} above the top of the handle"),
        _ => format!("an axis {away} down the bat"),
    }
}

/// "as if the bat were swung about an axis 11.8 in above the top of the handle".
pub fn about(stroke: &StrokeOunce, units: Units) -> String {
    let axis = stroke.axis();
    match axis.residual_share > NO_AXIS {
        true => "no one axis explains it".to_owned(),
        false => format!("as if the bat were swung about {}", axis_words(&axis, units)),
    }
}

/// Pickup or dead weight? Where the ounce sits decides.
pub fn sentence(it: &Ounces, units: Units) -> String {
    let Some(pull) = it.lead() else { return String::new() };
    let costs =
        stations(it).map(|(place, x)| format!("{} {place}", takes(pull.ounce_at_m_s(x), units)));
    let times = match pull.toe_over_top() {
        Some(times) => format!(", {} times as much at the toe as at the top", number(times, 0)),
        None => String::new(),
    };
    let about = about(pull, units);
    format!(
        "Pickup or dead weight? Neither: where {ounce} sits decides. In this player's {stroke} at {runs} with {bat} it costs {costs}{times}; {about}. The scale counts it alike everywhere, pickup not at all where the pickup axis is",
        ounce = ounce(units),
        stroke = pull.stroke,
        runs = runs_words(it.runs),
        bat = it.bat.label(),
        costs = listed(&costs),
    )
}

/// The same for a place with little room.
pub fn short(it: &Ounces, units: Units) -> String {
    let Some(pull) = it.lead() else { return String::new() };
    format!(
        "Where {} sits decides: in this player's {} at {} with {} it costs {} at the top of the handle and {} at the toe",
        ounce(units),
        pull.stroke,
        runs_words(it.runs),
        it.bat.label(),
        takes(pull.ounce_at_m_s(0.0), units),
        takes(pull.ounce_at_m_s(it.bat.length_m()), units),
    )
}

/// One line for the advice: what it costs at both ends and at the balance point.
pub fn line(it: &Ounces, units: Units) -> String {
    let Some(pull) = it.lead() else { return String::new() };
    let (unit, size) = speed_unit(units);
    let takes = |x: f64| -size * pull.ounce_at_m_s(x);
    format!(
        "{} costs the late {} {} at the top, {} at balance, {} at toe.",
        capital(&ounce(units)),
        pull.stroke,
        plain(takes(0.0), 1, unit),
        number(takes(it.bat.balance_m()), 1),
        number(takes(it.bat.length_m()), 1)
    )
}

/// A row a station, a column a stroke.
pub fn in_table(it: &Ounces, units: Units) -> String {
    let head = format!("bat speed that {} takes at {}", ounce(units), runs_words(it.runs));
    let mut heads = vec![head.as_str()];
    heads.extend(it.strokes.iter().map(|it| it.stroke.as_str()));
    let at_station = |(place, x): (&str, f64)| {
        let mut row = vec![match x {
            0.0 => place.to_owned(),
            x => format!("{place}, {} down", length(x, units)),
        }];
        row.extend(it.strokes.iter().map(|it| takes(it.ounce_at_m_s(x), units)));
        row
    };
    let mut axes = vec!["axis above the top of the handle".to_owned()];
    axes.extend(it.strokes.iter().map(|it| length(it.axis().above_top_m, units)));
    table(&heads, stations(it).map(at_station).into_iter().chain([axes]))
}

pub fn picture(it: &Ounces, units: Units) -> OuncePicture {
    let (unit, size) = speed_unit(units);
    let shown = |change_m_s: f64| -size * change_m_s;
    let mut order: Vec<&StrokeOunce> = it.lead().into_iter().collect();
    order.extend(it.strokes.iter().enumerate().filter(|(n, _)| *n != it.leading).map(|(_, it)| it));
    let curve = |it: &&StrokeOunce| {
        let axis = it.axis();
        OunceCurve {
            stroke: it.stroke.clone(),
            points: (it.curve().iter())
                .map(|at| [at.from_top_m, shown(OUNCE_KG * at.speed_change_m_s_per_kg)])
                .collect(),
            axis_above_top_m: axis.above_top_m,
            axis_words: format!("{}: {}", it.stroke, axis_words(&axis, units)),
        }
    };
    let mark = |(_, from_top_m): (&str, f64)| {
        let cost = shown(it.lead().map_or(0.0, |it| it.ounce_at_m_s(from_top_m)));
        OunceMark { from_top_m, cost, words: number(cost, decimals(units)) }
    };
    let along = match units {
        Units::Trade => ("in from the top of the handle".to_owned(), 1.0 / INCH_M),
        Units::Si => ("cm from the top of the handle".to_owned(), 100.0),
    };
    OuncePicture {
        sentence: short(it, units),
        length_m: it.bat.length_m(),
        handle_diameter_m: it.handle_diameter_m,
        along,
        cost_label: format!(
            "bat speed that {} there takes at {}, {unit}",
            ounce(units),
            runs_words(it.runs)
        ),
        curves: order.iter().map(curve).collect(),
        marks: stations(it).map(mark).to_vec(),
    }
}

/// For other programs: `ounce_cost[]`, and by stroke the axis with what it leaves.
pub fn figures(it: &Ounces) -> Value {
    let cost = |of: &StrokeOunce| {
        let row = |at: &Cost| {
            json!({
                "stroke": of.stroke,
                "from_top_m": at.from_top_m,
                "speed_change_m_s_per_kg": at.speed_change_m_s_per_kg,
            })
        };
        of.curve().iter().map(row).collect::<Vec<Value>>()
    };
    let by_stroke = |of: &dyn Fn(&CostAxis) -> f64| -> Map<String, Value> {
        it.strokes.iter().map(|it| (it.stroke.clone(), json!(of(&it.axis())))).collect()
    };
    json!({
        "ounce_cost": it.strokes.iter().flat_map(cost).collect::<Value>(),
        "axis_above_top_m": by_stroke(&|it| it.above_top_m),
        "axis_residual_share": by_stroke(&|it| it.residual_share),
    })
}

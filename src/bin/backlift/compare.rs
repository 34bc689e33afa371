//! `backlift compare`: two or more bats in one player's hands.

mod told;

use std::path::PathBuf;

use backlift::comparison::bats::BatDifference;
use backlift::comparison::figure::{Figure, StrokeFigure, When};
use backlift::comparison::noticeable::Felt;
use backlift::drawing::chart::{Curve, Point};
use backlift::drawing::innings_chart::{InningsPicture, StrokePanel, svg};
use backlift::drawing::palette::LIGHT;
use backlift::files::save::Folder;
use backlift::innings::played::FIFTY;
use backlift::questions::advice::today;
use backlift::questions::compared::{Gain, Shown, Worths, chosen, compared};
use backlift::units::Units;
use backlift::worth::expected::Worth;
use backlift::worth::suits::suits_words;
use backlift::worth::today::Given;
use serde_json::{Value, json};

use crate::beside::Beside;
use crate::figure::speed_unit;
use crate::given::{ScenarioArgs, ShowArgs};
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;
use crate::sentences::pair::sentence;
use crate::written::{add_picture, said};

/// Compare bats: what differs, is it real, can it be felt, what each is worth
///
/// Every figure of each bat in this player's hands, fresh and at fifty runs, the difference of
/// every two bats with its doubt, and the expected ball speed that `fit` chooses by.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift compare --bat \"Old faithful\" --bat \"Big edges\"")]
pub struct Args {
    #[command(flatten)]
    given: ScenarioArgs,

    /// A bat to compare, by its label or its number from 0; repeat it; all if left out
    #[arg(long, value_name = "LABEL|N", allow_negative_numbers = true)]
    bat: Vec<String>,

    /// Write a chart of the bat speeds, fresh and at fifty (SVG, PNG), into this folder
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = args.given.load()?;
    let places = chosen(&loaded, &args.bat)?;
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let progress = Progress::start();
    // Of all bats, as `fit` does: the draws hang on which is now used and on every bat's bench.
    let worths = Worths::of(&today(&loaded, None, &progress, [0.0, 0.0])?, &places);
    let bats = places.iter().filter_map(|n| loaded.bats.get(*n)).cloned().collect();
    let shown = compared(&loaded, bats, &progress)?;
    drop(progress);
    let beside = Beside::scenario(&loaded);
    said(
        "compare",
        &args.show,
        folder,
        &beside,
        || figures(&shown, &worths),
        |units| told::told(&shown, &worths, units),
        |folder, units| {
            let svg = svg(&picture(&shown, &beside, units), &LIGHT, PICTURE[0], PICTURE[1]);
            add_picture(folder, "compare", &svg)
        },
    )
}

/// Size of the picture, px.
const PICTURE: [f64; 2] = [1200.0, 520.0];
/// Least height of the scale, m/s: a difference that matters stands out, a flat innings looks flat.
const LEAST_SPAN_M_S: f64 = 2.0;

/// The bat speeds, fresh and at fifty.
fn picture(shown: &Shown, beside: &Beside, units: Units) -> InningsPicture {
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
    InningsPicture {
        sentence: beside.sentence(&sentence(shown, units)),
        figure: format!("bat speed, {unit}"),
        least_span: size * LEAST_SPAN_M_S,
        panels: panels.collect(),
    }
}

fn figures(shown: &Shown, worths: &Worths) -> Value {
    let keys: Vec<String> =
        shown.comparison.figures.iter().map(|it| it.key(&shown.strokes)).collect();
    let bats = shown.comparison.bats.iter().zip(&shown.bats).map(|(bat, weighed)| {
        let figures = keys.iter().enumerate().map(|(f, key)| {
            let (value, sd) = bat.value_sd(f);
            (key.clone(), json!({ "value": value, "sd": sd }))
        });
        json!({
            "label": bat.label,
            "size": weighed.size,
            "figures": figures.collect::<Value>(),
        })
    });
    let labels = |pair: [usize; 2]| pair.map(|bat| shown.label(bat).to_owned());
    let row = |it: &BatDifference| {
        json!({
            "figure": it.figure.key(&shown.strokes),
            "bats": labels(it.bats),
            "value": it.difference.value,
            "sd": it.difference.sd,
            "real": it.difference.real,
            "felt": felt(it),
            "felt_thresholds": thresholds(it),
        })
    };
    let pairs = shown
        .pairs()
        .into_iter()
        .map(|pair| json!({ "bats": labels(pair), "in_hand": shown.in_hand(pair) }));
    json!({
        "late_runs": FIFTY,
        "bats": bats.collect::<Value>(),
        "differences": shown.comparison.differences.iter().map(row).collect::<Value>(),
        "pairs": pairs.collect::<Value>(),
        "worth": worths.given.iter().map(worth).collect::<Value>(),
        "worth_differences": worths.gains().iter().map(|it| gain(worths, it)).collect::<Value>(),
    })
}

/// What `fit` says of a bat: of the same possible players, the same figures.
fn worth(it: &Given) -> Value {
    let worth = it.worth.as_ref();
    json!({
        "label": it.label,
        "worth_m_s": worth.map(Worth::mean_m_s),
        "worth_sd_m_s": worth.map(Worth::sd_m_s),
        "chance_in_time": worth.map(|it| it.chance_in_time),
        "suits": suits_words(it.suits).replace(' ', "_"),
    })
}

fn gain(worths: &Worths, it: &Gain) -> Value {
    json!({
        "first": worths.label(it.bats[0]),
        "second": worths.label(it.bats[1]),
        "gain_m_s": it.gain_m_s,
        "gain_sd_m_s": it.sd_m_s,
        "real": it.is_real(),
    })
}

/// Where nobody has published a threshold, nobody can be sure; but nought is not felt.
fn felt(it: &BatDifference) -> &'static str {
    match it.felt {
        Some(Felt::Yes) => "yes",
        Some(Felt::No) => "no",
        None if it.difference.value == 0.0 => "no",
        Some(Felt::Unsure) | None => "unsure",
    }
}

fn thresholds(it: &BatDifference) -> Option<[f64; 2]> {
    let shares = || it.figure.thresholds().iter().copied();
    let low = shares().reduce(f64::min)?;
    Some([low, shares().reduce(f64::max)?])
}

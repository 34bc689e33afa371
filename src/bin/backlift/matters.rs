//! `backlift matters`: which measurements matter for this player.

mod told;

use std::path::PathBuf;

use backlift::drawing::matters_chart::{Bar, InputRow, MattersPicture, Section, svg};
use backlift::drawing::palette::LIGHT;
use backlift::files::save::Folder;
use backlift::questions::matters::{self, Asked, Shown};
use backlift::sensitivity::advice::Weight;
use backlift::sensitivity::choosing::Choosing;
use backlift::sensitivity::indices::Index;
use backlift::sensitivity::input::Input;
use backlift::sensitivity::spread::Standing;
use backlift::sensitivity::study::Studied;
use backlift::sensitivity::terms::Terms;
use backlift::units::Units;
use serde_json::{Value, json};

use crate::beside::Beside;
use crate::given::{ScenarioArgs, ShowArgs};
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;
use crate::written::{add_picture, said};

/// Find out which measurements matter for this player, and which need no more care
///
/// Every input is moved as far as its measurement or estimate may be off, all of them together, and the
/// pull is swung anew each time, fresh and at the end of the innings. The spread of each figure is then
/// divided among the inputs.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift matters --samples 4 --out matters")]
pub struct Args {
    #[command(flatten)]
    given: ScenarioArgs,

    /// Bat to study, by its label or its number from 0; the first if left out
    #[arg(long, value_name = "LABEL|N", allow_negative_numbers = true)]
    bat: Option<String>,

    /// Bat to set against it; if left out, the one that picks up most differently
    #[arg(long, value_name = "LABEL|N", allow_negative_numbers = true)]
    against: Option<String>,

    /// Rows of draws, best a power of two: more is surer, and takes longer
    #[arg(long, value_name = "N", default_value_t = 32, value_parser = rows)]
    samples: usize,

    /// Move one term of the model after another too, and say what each does to which of the two bats is the better
    #[arg(long)]
    terms: bool,

    /// Swing both bats along many paths of each stroke too, and say what the player and what a bat gains by choosing
    #[arg(long)]
    paths: bool,

    /// Write a chart (SVG, PNG) into this folder
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = args.given.load()?;
    let bat = loaded.bat(args.bat.as_deref())?;
    let other = matters::other(&loaded, bat, args.against.as_deref())?;
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let asked = Asked { bat, other, rows: args.samples, terms: args.terms, paths: args.paths };
    let shown = matters::matters(&loaded, asked, &Progress::start())?;
    let beside = Beside::scenario(&loaded);
    said(
        "matters",
        &args.show,
        folder,
        &beside,
        || figures(&shown),
        |units| told::told(&shown, units),
        |folder, units| {
            add_picture(folder, "matters", &svg(&chart(&shown, &beside, units), &LIGHT))
        },
    )
}

fn chart(shown: &Shown<'_>, beside: &Beside, units: Units) -> MattersPicture {
    let row = |place: usize| {
        let input = shown.input(place)?;
        let bar = |it: &Studied| {
            let index = it.divided.indices.get(place)?;
            let (first, total) = (index.first.value, index.total.value);
            Some(Bar { first, total, interval: index.total.interval })
        };
        let bars = shown.figures().filter_map(bar).collect();
        Some(InputRow { name: input.words().to_owned(), spread: told::spread(input), bars })
    };
    let section = |title: &str, standing: Standing| Section {
        title: title.to_owned(),
        rows: shown.standing(standing).into_iter().filter_map(row).collect(),
        quiet: standing == Standing::OutOfReach,
    };
    let sections = [
        section("Not measured, but it could be", Standing::Measurable),
        section("Measured", Standing::Measured),
        section("Nobody can measure it at a bench", Standing::OutOfReach),
    ];
    let column = |it: &Studied| [it.figure.words().to_owned(), told::doubted(it, units)];
    MattersPicture {
        sentence: beside.sentence(&told::sentence(shown)),
        columns: shown.figures().map(column).collect(),
        sections: sections.into_iter().filter(|it| !it.rows.is_empty()).collect(),
        legend: "How much of each figure's doubt an input carries, % of its square. Pale: with all it does together with others; dark: by itself; thin line: 19 times in 20 the truth lies on it. Beside each name: how far the input may be off, one standard deviation. The pull; late: at the end of the innings".to_owned(),
    }
}

/// Reads the number of rows.
fn rows(written: &str) -> Result<usize, String> {
    let rows = written.trim().parse().ok().filter(|it| (2..=4096).contains(it));
    rows.ok_or_else(|| "write a whole number from 2 to 4096".to_owned())
}

fn figures(shown: &Shown<'_>) -> Value {
    let study = &shown.study;
    let inputs = study.inputs.iter().enumerate().map(|(n, it)| {
        json!({
            "input": it.input.key(),
            "relative_sd": it.relative_sd,
            "standing": match it.standing {
                Standing::Measured => "measured",
                Standing::Measurable => "not_measured",
                Standing::OutOfReach => "out_of_reach",
            },
            "matters": match study.weight(n) {
                Weight::Much => "much",
                Weight::Some => "some",
                Weight::Little => "little",
            },
        })
    });
    let figures = study.figures.iter().map(|it| {
        let row = |(input, index): (&str, &Index)| {
            json!({
                "input": input,
                "first_share": index.first.value,
                "first_interval": index.first.interval,
                "total_share": index.total.value,
                "total_interval": index.total.interval,
            })
        };
        let keys = study.inputs.iter().map(|it| it.input.key());
        json!({
            "figure": it.figure.key(),
            "value": it.best,
            "mean": it.divided.mean,
            "sd": it.divided.sd,
            "smooth_share": it.divided.explained,
            "inputs": keys.zip(&it.divided.indices).map(row).collect::<Value>(),
        })
    });
    json!({
        "bat": shown.bat,
        "other": shown.other,
        "end_runs": shown.loaded.scenario.innings.runs,
        "samples": study.rows,
        "left_out": study.left_out,
        "draws": study.draws,
        "sentence": told::sentence(shown),
        "inputs": inputs.collect::<Value>(),
        "figures": figures.collect::<Value>(),
        "terms": shown.terms.as_ref().map(terms),
        "paths": shown.choosing.iter().map(chosen).collect::<Value>(),
    })
}

fn terms(it: &Terms) -> Value {
    let moved = it.moved.iter().map(|term| {
        json!({ "what": term.what, "ratio": term.ratio, "input": term.input.map(Input::key) })
    });
    json!({ "ratio": it.ratio, "ratio_sd": it.ratio_sd, "moved": moved.collect::<Value>() })
}

fn chosen(it: &Choosing) -> Value {
    json!({
        "stroke": it.stroke,
        "stored_m_s": it.stored_m_s,
        "best_m_s": [it.best_m_s(0), it.best_m_s(1)],
        "stored_ratio": it.stored_ratio(),
        "chosen_ratio": it.chosen_ratio(),
        "by_path_m_s": it.by_path_m_s,
    })
}

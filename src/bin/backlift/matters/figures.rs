//! The study for other programs.

use backlift::sensitivity::advice::Weight;
use backlift::sensitivity::choosing::Choosing;
use backlift::sensitivity::indices::Share;
use backlift::sensitivity::input::Input;
use backlift::sensitivity::spread::Standing;
use backlift::sensitivity::terms::Term;
use serde::Serialize;

use backlift::questions::matters::Shown;

/// Everything, in SI units.
#[derive(Serialize)]
pub struct Figures {
    bat: String,
    other: Option<String>,
    end_runs: f64,
    samples: usize,
    left_out: usize,
    draws: usize,
    sentence: String,
    inputs: Vec<InputRow>,
    figures: Vec<FigureRow>,
    terms: Option<TermsRow>,
    paths: Vec<ChoosingRow>,
}

#[derive(Serialize)]
struct TermsRow {
    ratio: f64,
    ratio_sd: f64,
    moved: Vec<TermRow>,
}

#[derive(Serialize)]
struct TermRow {
    what: &'static str,
    ratio: Option<f64>,
    input: Option<&'static str>,
}

/// One stroke along many paths with the two bats.
#[derive(Serialize)]
struct ChoosingRow {
    stroke: String,
    stored_m_s: [Option<f64>; 2],
    best_m_s: [Option<f64>; 2],
    stored_ratio: Option<f64>,
    chosen_ratio: Option<f64>,
    by_path_m_s: Vec<[Option<f64>; 2]>,
}

#[derive(Serialize)]
struct InputRow {
    input: &'static str,
    relative_sd: f64,
    standing: &'static str,
    matters: &'static str,
}

#[derive(Serialize)]
struct FigureRow {
    figure: &'static str,
    value: f64,
    mean: f64,
    sd: f64,
    smooth_share: f64,
    inputs: Vec<ShareRow>,
}

#[derive(Serialize)]
struct ShareRow {
    input: &'static str,
    first_share: f64,
    first_interval: [f64; 2],
    total_share: f64,
    total_interval: [f64; 2],
}

/// As JSON has it.
pub fn of(shown: &Shown) -> Figures {
    let study = &shown.study;
    let inputs = study.inputs.iter().enumerate().map(|(n, it)| InputRow {
        input: it.input.key(),
        relative_sd: it.relative_sd,
        standing: match it.standing {
            Standing::Measured => "measured",
            Standing::Measurable => "not_measured",
            Standing::OutOfReach => "out_of_reach",
        },
        matters: match study.weight(n) {
            Weight::Much => "much",
            Weight::Some => "some",
            Weight::Little => "little",
        },
    });
    let figures = study.figures.iter().map(|it| {
        let row = |(input, index): (_, &backlift::sensitivity::indices::Index)| {
            let Share { value: first_share, interval: first_interval } = index.first;
            let Share { value: total_share, interval: total_interval } = index.total;
            ShareRow { input, first_share, first_interval, total_share, total_interval }
        };
        let keys = study.inputs.iter().map(|it| it.input.key());
        FigureRow {
            figure: it.figure.key(),
            value: it.best,
            mean: it.divided.mean,
            sd: it.divided.sd,
            smooth_share: it.divided.explained,
            inputs: keys.zip(&it.divided.indices).map(row).collect(),
        }
    });
    Figures {
        bat: shown.bat.clone(),
        other: shown.other.clone(),
        end_runs: shown.runs,
        samples: study.rows,
        left_out: study.left_out,
        draws: study.draws,
        sentence: super::told::sentence(shown),
        inputs: inputs.collect(),
        figures: figures.collect(),
        terms: shown.terms.as_ref().map(|it| TermsRow {
            ratio: it.ratio,
            ratio_sd: it.ratio_sd,
            moved: it.moved.iter().map(term).collect(),
        }),
        paths: shown.choosing.iter().map(chosen).collect(),
    }
}

fn term(it: &Term) -> TermRow {
    TermRow { what: it.what, ratio: it.ratio, input: it.input.map(Input::key) }
}

fn chosen(it: &Choosing) -> ChoosingRow {
    ChoosingRow {
        stroke: it.stroke.clone(),
        stored_m_s: it.stored_m_s,
        best_m_s: [it.best_m_s(0), it.best_m_s(1)],
        stored_ratio: it.stored_ratio(),
        chosen_ratio: it.chosen_ratio(),
        by_path_m_s: it.by_path_m_s.clone(),
    }
}

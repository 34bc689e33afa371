//! The study for other programs.

use backlift::questions::matters::Shown;
use backlift::sensitivity::advice::Weight;
use backlift::sensitivity::choosing::Choosing;
use backlift::sensitivity::indices::Index;
use backlift::sensitivity::input::Input;
use backlift::sensitivity::spread::Standing;
use backlift::sensitivity::terms::Terms;
use serde_json::{Value, json};

/// As JSON has it.
pub fn of(shown: &Shown) -> Value {
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
        "end_runs": shown.runs,
        "samples": study.rows,
        "left_out": study.left_out,
        "draws": study.draws,
        "sentence": super::told::sentence(shown),
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

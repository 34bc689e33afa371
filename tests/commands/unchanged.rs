//! A guard, not a proof: today's advice for ten scenarios is what it was when it was last looked at. Where the model
//! changes on purpose, run this with BACKLIFT_RENEW=1 and say in the commit what moved the figures, and why.

use super::once::ran;
use serde_json::Value;
use std::path::Path;

const SCENARIOS: [&str; 10] = [
    "club",
    "girl15",
    "junior",
    "left-hander",
    "maker",
    "measured-hardly",
    "measured-well",
    "minimal",
    "same-weight",
    "starter",
];

/// Other processors round otherwise in the last digits: a share of each figure, and a step of a chance that is counted.
const NEAR: f64 = 1e-6;
const COUNTED: f64 = 2.5 / 512.0;

/// What is written beside the figures and is no figure of the advice.
const BESIDE: [&str; 2] = ["elapsed_s", "constants"];

/// Today's advice for a scenario.
pub fn today(scenario: &str) -> Value {
    let file = format!("{}/scenarios/{scenario}.ron", env!("CARGO_MANIFEST_DIR"));
    ran(&["fit", &file, "--today", "--json"]).figures()
}

fn advice(scenario: &str) -> Value {
    let mut value = today(scenario);
    let figures = value.as_object_mut().unwrap();
    figures.retain(|key, _| !BESIDE.contains(&key.as_str()));
    value
}

/// Every figure that differs, by its path.
fn differences(at: &str, then: &Value, now: &Value, out: &mut Vec<String>) {
    match (then, now) {
        (Value::Object(a), Value::Object(b)) if a.keys().eq(b.keys()) => {
            for (key, then) in a {
                differences(&format!("{at}.{key}"), then, &b[key], out);
            }
        }
        (Value::Array(a), Value::Array(b)) if a.len() == b.len() => {
            for (n, (then, now)) in a.iter().zip(b).enumerate() {
                differences(&format!("{at}[{n}]"), then, now, out);
            }
        }
        (Value::Number(a), Value::Number(b)) => {
            let [a, b] = [a, b].map(|it| it.as_f64().unwrap());
            let most = if at.contains("chance") { COUNTED } else { NEAR * a.abs() };
            if (b - a).abs() > most {
                out.push(format!("{at}: {a} is {b}"));
            }
        }
        (then, now) if then == now => {}
        (then, now) => out.push(format!("{at}: {then} is {now}")),
    }
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn unchanged_advice_of_ten_scenarios() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/unchanged");
    let mut changed = Vec::new();
    for scenario in SCENARIOS {
        let (now, file) = (advice(scenario), folder.join(format!("{scenario}.json")));
        if std::env::var_os("BACKLIFT_RENEW").is_some() {
            let text = serde_json::to_string_pretty(&now).unwrap() + "\n";
            std::fs::write(&file, text).unwrap();
        }
        let then = std::fs::read_to_string(&file).unwrap();
        differences(scenario, &serde_json::from_str(&then).unwrap(), &now, &mut changed);
    }
    assert!(changed.is_empty(), "{}", changed.join("\n"));
}

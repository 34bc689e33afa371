//! matters, as a person and as another program use it.

use super::once::ran;
use super::refused;

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn matters_divides_every_figures_doubt_and_writes_a_chart() {
    let run = ran(&STUDY);
    let value = run.figures();
    assert_eq!(value["schema"], "backlift/matters/1");
    assert_eq!(value["bat"], "Big edges");
    assert_eq!(
        value["other"], "Old faithful",
        "of the four the one that picks up most differently"
    );
    let inputs = value["inputs"].as_array().unwrap();
    assert_eq!(value["draws"], 2 * (2 + inputs.len()));
    for it in inputs {
        assert!(it["relative_sd"].as_f64().unwrap() > 0.0, "{it}");
        assert!(
            ["measured", "not_measured", "out_of_reach"]
                .contains(&it["standing"].as_str().unwrap())
        );
        assert!(["much", "some", "little"].contains(&it["matters"].as_str().unwrap()), "{it}");
    }
    let figures = value["figures"].as_array().unwrap();
    assert_eq!(figures.len(), 7);
    for figure in figures {
        assert!(figure["sd"].as_f64().unwrap() > 0.0, "{figure}");
        let shares = figure["inputs"].as_array().unwrap();
        assert_eq!(shares.len(), inputs.len());
        for (share, input) in shares.iter().zip(inputs) {
            assert_eq!(share["input"], input["input"]);
            assert!(share["first_share"].is_f64() && share["total_share"].is_f64(), "{share}");
            assert!(share["total_interval"][0].as_f64() <= share["total_interval"][1].as_f64());
        }
    }
    assert!(run.file("chart/matters.png").exists());
    let chart = std::fs::read_to_string(run.file("chart/matters.svg")).unwrap();
    for words in ["trunk strength", "pendulum time", "bat speed, fresh", "Nobody can measure it"] {
        assert!(chart.contains(words), "{words}");
    }
}

/// A study of one of the demo's bats, with paths and a chart.
pub const STUDY: [&str; 9] =
    ["matters", "--bat", "1", "--samples", "2", "--paths", "--out", "chart", "--json"];

#[test]
fn what_cannot_be_studied_is_refused_with_its_mend() {
    let folder = tempfile::tempdir().unwrap();
    let table: [(&[&str], &str); 4] = [
        (&["--samples", "1"], "a whole number from 2"),
        (&["--samples", "many"], "a whole number from 2"),
        (&["--against", "Old faithful"], "this is the bat studied"),
        (&["--against", "Big edgs"], "did you mean"),
    ];
    for (arguments, said) in table {
        let words = refused(&[&["matters"], arguments].concat(), folder.path());
        assert!(words.contains(said), "{arguments:?}: {words}");
    }
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn both_bats_go_along_every_path_that_comes_with_a_stroke() {
    let value = ran(&STUDY).figures();
    let strokes = value["paths"].as_array().unwrap();
    assert_eq!(strokes.len(), 3);
    for it in strokes {
        assert_eq!(it["by_path_m_s"].as_array().unwrap().len(), 20, "{it}");
        for bat in 0..2 {
            assert!(it["best_m_s"][bat].as_f64() >= it["stored_m_s"][bat].as_f64(), "{it}");
        }
    }
}

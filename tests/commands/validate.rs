//! validate, as a person and as another program use it.

use super::{backlift, refused};
use serde_json::Value;

/// The quick checks of the mechanics that take next to no time.
const BRIEF: [&str; 6] = ["--quick", "--only", "free motion", "--only", "Splice hinge", "--json"];

#[test]
fn validate_gives_each_row_its_source_its_difference_and_its_verdict() {
    let run = backlift().arg("validate").args(BRIEF).assert().success().stderr("");
    let value: Value = serde_json::from_slice(&run.get_output().stdout).unwrap();
    assert_eq!(value["schema"], "backlift/validate/1");
    let rows = value["rows"].as_array().unwrap();
    for row in rows {
        assert_eq!(row["group"], "dynamics");
        assert!(["free motion", "splice hinge"].contains(&row["check"].as_str().unwrap()), "{row}");
        assert!(!row["source"].as_str().unwrap().is_empty() && row["unit"].is_string(), "{row}");
        assert!(row["accepted"].is_string() && row["note"].is_string(), "{row}");
        let figure = |name: &str| row[name].as_f64().unwrap();
        let off = figure("difference") - (figure("ours") - figure("expected"));
        // Figures are written with twelve digits.
        assert!(off.abs() <= 2e-11 * figure("expected").abs(), "{row}");
        assert!(row["sd"].is_null(), "{row}");
    }
    let agree = rows.iter().filter(|it| it["verdict"] == "agrees").count();
    assert_eq!(value["agrees"], agree);
    assert_eq!(agree, rows.len(), "{value:#}");
}

#[test]
fn validate_says_the_same_on_one_core_and_on_many() {
    let with = |cores: &str| {
        let run = backlift().env("RAYON_NUM_THREADS", cores).arg("validate").args(BRIEF).assert();
        run.success().get_output().stdout.clone()
    };
    assert_eq!(with("1"), with("4"));
}

#[test]
fn validate_writes_one_report_that_needs_nothing_else_and_a_picture_of_each_curve() {
    let folder = tempfile::tempdir().unwrap();
    let arguments = ["validate", "--only", "splice hinge", "--out", "report"];
    let run = backlift().current_dir(folder.path()).args(arguments).assert().success();
    let told = String::from_utf8(run.get_output().stdout.clone()).unwrap();
    assert!(told.lines().all(|it| it.chars().count() <= 80), "{told}");
    assert!(told.contains("Wrote report/report.html"), "{told}");
    let page = std::fs::read_to_string(folder.path().join("report/report.html")).unwrap();
    assert!(page.contains("This report holds 1 of"), "a part must not pass for the whole");
    assert!(page.contains("<svg") && page.contains("prefers-color-scheme:dark"));
    for outside in ["<script", "<link", "src=", "url(", "@import"] {
        assert!(!page.contains(outside), "{outside}");
    }
    let files = std::fs::read_dir(folder.path().join("report")).unwrap();
    let mut endings: Vec<String> = files
        .map(|it| it.unwrap().path().extension().unwrap().to_str().unwrap().to_owned())
        .collect();
    endings.sort();
    assert_eq!(endings, ["html", "png", "svg"]);
}

#[test]
fn a_check_that_is_not_there_gets_the_nearest() {
    let folder = tempfile::tempdir().unwrap();
    let said = refused(&["validate", "--only", "free motoin"], folder.path());
    assert!(said.contains("did you mean \"free motion\"?"), "{said}");
    let slow = ["validate", "--quick", "--only", "drawn chains finely"];
    assert!(refused(&slow, folder.path()).contains("leave --quick out"));
}

//! A scenario's note and its strokes, as a person uses them.

use super::{backlift, refused};
use serde_json::Value;
use std::path::Path;

/// The pull under another name.
fn sweep() -> String {
    include_str!("../../assets/strokes/pull.ron").replace("name: \"pull\"", "name: \"sweep\"")
}

fn scenario(folder: &Path, fields: &str) {
    let text = format!(
        "(version: \"backlift/scenario/1\", note: \"Read on a wet evening\", {fields} \
         player: (age: 13, sex: \"male\", stature: \"1.55 m\"), \
         bats: [(label: \"A\", mass: \"2 lb 4 oz\"), (label: \"B\", mass: \"2 lb 6 oz\")])"
    );
    std::fs::write(folder.join("kit.ron"), text).unwrap();
    std::fs::write(folder.join("my-sweep.ron"), sweep()).unwrap();
}

fn figures(arguments: &[&str], folder: &Path) -> Value {
    let run = backlift().current_dir(folder).args(arguments).arg("--json").assert().success();
    serde_json::from_slice(&run.get_output().stdout).unwrap()
}

#[test]
fn the_note_stands_above_what_a_command_tells() {
    let folder = tempfile::tempdir().unwrap();
    scenario(folder.path(), "");
    for command in [&["weigh", "kit.ron"][..], &["trial", "kit.ron", "--like-bat", "B"]] {
        let run = backlift().current_dir(folder.path()).args(command).assert().success();
        let told = String::from_utf8(run.get_output().stdout.clone()).unwrap();
        assert!(told.starts_with("Read on a wet evening\n\n"), "{command:?}: {told}");
    }
}

#[test]
fn only_the_strokes_chosen_are_swung_and_a_users_own_is_one_of_them() {
    let folder = tempfile::tempdir().unwrap();
    let strokes =
        "strokes: [\"drive\", \"my-sweep.ron\"], innings: (mix: \"drive 60 %, sweep 40 %\"),";
    scenario(folder.path(), strokes);
    // Named from another folder, the stroke is still looked for beside its scenario.
    let outside = tempfile::tempdir().unwrap();
    let kit = folder.path().join("kit.ron");
    let own = figures(&["swing", kit.to_str().unwrap(), "--stroke", "sweep"], outside.path());
    assert_eq!(own["stroke"], "sweep");
    let pull = ["swing", "kit.ron", "--set", "strokes=pull", "--set", "innings.mix=pull 1"];
    let pull = figures(&pull, folder.path());
    assert_eq!((&pull["stroke"], &own["bat_speed_m_s"]), (&"pull".into(), &pull["bat_speed_m_s"]));
    let said = refused(&["swing", "kit.ron", "--stroke", "hook"], folder.path());
    assert!(said.contains("the strokes are drive, sweep"), "{said}");
    let said = refused(&["pickup", "kit.ron"], folder.path());
    assert!(said.contains("add pull to strokes"), "{said}");
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn an_innings_of_chosen_strokes_is_led_by_one_that_answers_the_short_ball() {
    let folder = tempfile::tempdir().unwrap();
    let strokes =
        "strokes: [\"drive\", \"my-sweep.ron\"], innings: (mix: \"drive 60 %, sweep 40 %\"),";
    scenario(folder.path(), strokes);
    let value = figures(&["innings", "kit.ron"], folder.path());
    assert_eq!(value["lead_stroke"], "sweep");
    let strokes = value["points"][0]["strokes"].as_object().unwrap();
    assert_eq!(strokes.keys().collect::<Vec<_>>(), ["drive", "sweep"]);
}

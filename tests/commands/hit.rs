//! `backlift hit`, as a person and as another program use it.

use super::{backlift, refused};
use serde_json::Value;

fn figures(more: &[&str], folder: &std::path::Path) -> Value {
    let arguments = [&["hit", "--speed", "15 m/s", "--json"], more].concat();
    let run = backlift().current_dir(folder).args(arguments).assert().success();
    serde_json::from_slice(&run.get_output().stdout).unwrap()
}

#[test]
fn a_hit_in_the_middle_does_not_twist_and_one_off_it_does_and_slower() {
    let folder = tempfile::tempdir().unwrap();
    let middle = figures(&[], folder.path());
    let off = figures(&["--across", "25 mm"], folder.path());
    let number = |it: &Value, at: &str| it.pointer(at).and_then(Value::as_f64).unwrap();
    assert!(number(&middle, "/hands/top/couple_n_m") < 1e-6);
    assert!(number(&off, "/hands/top/couple_n_m") > 0.1);
    assert!(number(&off, "/exit_speed_m_s") < number(&middle, "/exit_speed_m_s"));
    // The hinge and the hands move the closed form of a rigid, free bat by some per cent, not more.
    let rigid = number(&middle, "/rigid_exit_speed_m_s");
    assert!((number(&middle, "/exit_speed_m_s") / rigid - 1.0).abs() < 0.08);
    assert!(number(&middle, "/splice_bend_deg") > 1.0);
    for hand in ["top", "bottom"] {
        assert!(number(&middle, &format!("/hands/{hand}/peak_n")) > 0.0);
    }
}

#[test]
fn a_place_off_the_face_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let said = refused(&["hit", "--speed", "15 m/s", "--at", "30 in"], folder.path());
    assert!(said.contains("face"), "{said}");
    let said = refused(&["hit", "--speed", "fast"], folder.path());
    assert!(said.contains("fast"), "{said}");
}

/// The blade of the guide, with what is put over it.
fn blade(folder: &std::path::Path, over: &[(&str, &str)]) {
    let mut text = include_str!("../../scenarios/blade.ron").to_owned();
    for (old, new) in over {
        assert!(text.contains(old), "{old}");
        text = text.replace(old, new);
    }
    std::fs::write(folder.join("blade.ron"), text).unwrap();
}

#[test]
fn a_described_blade_is_hit_as_described() {
    let folder = tempfile::tempdir().unwrap();
    let number = |it: &Value, at: &str| it.pointer(at).and_then(Value::as_f64).unwrap();
    blade(folder.path(), &[]);
    let it = figures(&["--shape", "blade.ron"], folder.path());
    assert_eq!(it["described"], true);
    assert_eq!(it["bat"], "Full profile, low middle");
    assert!(it["swing_moment_off_share"].is_null());
    // A thinner handle makes the splice softer, and it bends further.
    blade(folder.path(), &[("34.5 mm", "32.5 mm")]);
    let thin = figures(&["--shape", "blade.ron"], folder.path());
    let [a, b] = [&thin, &it].map(|it| number(it, "/splice_stiffness_n_m"));
    assert!(a < 0.9 * b, "{a} {b}");
    let [a, b] = [&thin, &it].map(|it| number(it, "/splice_bend_deg"));
    assert!(a > b, "{a} {b}");
    // The same blade in lighter willow sends the ball back more slowly.
    blade(folder.path(), &[("2.75 kg", "2.5 kg")]);
    let light = figures(&["--shape", "blade.ron"], folder.path());
    assert!(number(&light, "/exit_speed_m_s") < number(&it, "/exit_speed_m_s"));
}

#[test]
fn faults_of_a_described_blade_are_shown_where_they_stand() {
    let folder = tempfile::tempdir().unwrap();
    blade(folder.path(), &[("37 mm", "37 miles")]);
    let said = refused(&["hit", "--speed", "15 m/s", "--shape", "blade.ron"], folder.path());
    assert!(said.contains("37 miles"), "{said}");
    blade(folder.path(), &[("37 mm", "90 mm")]);
    let said = refused(&["hit", "--speed", "15 m/s", "--shape", "blade.ron"], folder.path());
    assert!(said.contains("90 mm"), "{said}");
}

#[test]
fn a_blade_is_no_wider_at_the_shoulder_than_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let at = ["hit", "--speed", "15 m/s", "--at", "505 mm", "--across", "45 mm"];
    let said = refused(&at, folder.path());
    assert!(said.contains("face"), "{said}");
}

#[test]
fn a_junior_is_told_every_caution() {
    let folder = tempfile::tempdir().unwrap();
    let run =
        backlift().current_dir(folder.path()).args(["hit", "--speed", "15 m/s"]).assert().success();
    let said = String::from_utf8(run.get_output().stdout.clone()).unwrap().replace("\n  ", " ");
    for caution in
        ["Ask the coach", "medical professional", "Local playing conditions", "fit again"]
    {
        assert!(said.contains(caution), "{caution} is missing: {said}");
    }
}

#[test]
fn a_bowed_face_is_told_where_it_lies_and_looks_and_a_straight_one_is_not_told_of() {
    let folder = tempfile::tempdir().unwrap();
    let number = |it: &Value, at: &str| it.pointer(at).and_then(Value::as_f64).unwrap();
    let said = || {
        let hit = ["hit", "--speed", "15 m/s", "--shape", "blade.ron"];
        let run = backlift().current_dir(folder.path()).args(hit).assert().success();
        let said = String::from_utf8(run.get_output().stdout.clone()).unwrap();
        said.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    blade(folder.path(), &[]);
    let straight = figures(&["--shape", "blade.ron"], folder.path());
    assert_eq!(number(&straight, "/face_behind_chord_m"), 0.0);
    assert_eq!(number(&straight, "/face_looks_to_toe_deg"), 0.0);
    assert!(!said().contains("bowed"), "{}", said());
    blade(folder.path(), &[("bow: \"0 mm\"", "bow: \"10 mm\"")]);
    let bowed = figures(&["--shape", "blade.ron"], folder.path());
    let behind_m = number(&bowed, "/face_behind_chord_m");
    assert!((0.003..0.010).contains(&behind_m), "{behind_m}");
    assert!(number(&bowed, "/face_looks_to_toe_deg") < -1.0, "towards the handle");
    let along = |it: &Value| number(it, "/exit_along_deg");
    assert!(along(&bowed) < along(&straight) - 1.0, "{} {}", along(&bowed), along(&straight));
    assert!(said().contains("The face is bowed: there it lies"), "{}", said());
}

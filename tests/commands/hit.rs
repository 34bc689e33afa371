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

//! Keys work whatever has the keyboard, and what is typed counts first.

use egui::{Event, Key};
use egui_kittest::kittest::Queryable;
use tempfile::TempDir;

use super::file_of;
use super::paths::{Window, control, field, press, says, window_on};
use crate::studio::action::{Action, View};
use crate::studio::paper::OnDesk;
use crate::studio::recovery::Recovery;
use crate::studio::state::Studio;

/// A window at the bench, on a file.
fn at_the_bench() -> (Window, TempDir) {
    let (folder, file) = file_of("ann.ron", backlift::files::scenario::DEMO);
    let mut it = window_on(Studio::new(Some(&file), Recovery::default()).unwrap());
    it.state_mut().apply(Action::View(View::Bench));
    it.run_steps(3);
    (it, folder)
}

fn value(it: &Window, label: &str) -> String {
    field(it, label, 0).value().unwrap_or_default()
}

/// Types into a field, and leaves the keyboard there.
fn type_into(it: &mut Window, label: &str, text: &str) {
    let at = field(it, label, 0).rect().center();
    it.hover_at(at);
    it.drag_at(at);
    it.drop_at(at);
    it.run_steps(2);
    control(it, Key::A);
    it.event(Event::Text(text.to_owned()));
    it.run_steps(2);
    assert_eq!(value(it, label), text);
}

#[test]
fn a_draft_counts_before_it_is_saved_and_the_field_keeps_the_keyboard() {
    let (mut it, folder) = at_the_bench();
    type_into(&mut it, "Dead weight", "2 lb 4 oz");
    assert_eq!(it.state().document.at("bats.0.mass"), "2 lb 3 oz");
    control(&mut it, Key::S);
    let text = std::fs::read_to_string(folder.path().join("ann.ron")).unwrap();
    assert!(text.contains("2 lb 4 oz") && !it.state().document.is_changed());
    let playing = it.state().playback.playing;
    it.event(Event::Text(" ".to_owned()));
    press(&mut it, Key::Space);
    assert_eq!(it.state().playback.playing, playing, "a blank in a field is a letter");
}

#[test]
fn a_draft_counts_before_its_view_is_left() {
    let (mut it, _folder) = at_the_bench();
    type_into(&mut it, "Dead weight", "2 lb 4 oz");
    press(&mut it, Key::F3);
    assert_eq!(it.state().view, View::Swing);
    assert_eq!(it.state().document.at("bats.0.mass"), "2 lb 4 oz");
}

#[test]
fn taking_back_in_a_field_gives_its_draft_up_first() {
    let (mut it, _folder) = at_the_bench();
    it.state_mut().apply(Action::Set("player.age".into(), "14".into()));
    type_into(&mut it, "Dead weight", "2 lb 4 oz");
    control(&mut it, Key::Z);
    assert_eq!(value(&it, "Dead weight"), "2 lb 3 oz");
    assert_eq!(it.state().document.at("player.age"), "14");
    control(&mut it, Key::Z);
    assert_eq!(it.state().document.at("player.age"), "13");
}

#[test]
fn a_held_key_toggles_once_and_steps_again_and_again() {
    let (mut it, _folder) = at_the_bench();
    press(&mut it, Key::F3);
    for _ in 0..4 {
        it.key_down(Key::Space);
        it.run_steps(1);
    }
    it.key_up(Key::Space);
    it.run_steps(1);
    assert!(it.state().playback.playing);
    it.state_mut().apply(Action::Scrub(0.0));
    for _ in 0..4 {
        it.key_down(Key::ArrowRight);
        it.run_steps(1);
    }
    assert!((it.state().playback.time_s - 0.02).abs() < 1e-9);
}

#[test]
fn buttons_stay_where_they_are_when_something_is_unsaved() {
    let (mut it, _folder) = at_the_bench();
    let before = it.get_by_label("Undo").rect();
    it.state_mut().apply(Action::Set("player.age".into(), "14".into()));
    it.run_steps(2);
    assert!(says(&it, "ann.ron (unsaved)"));
    assert_eq!(it.get_by_label("Undo").rect(), before);
}

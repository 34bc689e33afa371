//! A path is asked for: the system's window and our own, together or alone.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::{Duration, Instant};

use egui::Key;
use egui_kittest::kittest::{NodeT, Queryable};
use tempfile::tempdir;

use super::paths::{click, control, field, press, says, window, window_on};
use super::{demo, file_of};
use crate::studio::action::{Action, View, Which};
use crate::studio::asking::Asked;
use crate::studio::dialogs::Dialogs;
use crate::studio::paper::OnDesk;
use crate::studio::recovery::Recovery;
use crate::studio::state::{Ask, Studio};
use crate::studio::work::Wake;

/// Windows that come back after so long with this.
fn windows(after: Duration, with: Option<PathBuf>) -> Dialogs {
    let chooser = move |_: &Asked, _: &Path, _: &str| {
        std::thread::sleep(after);
        with.clone()
    };
    Dialogs::new(Arc::new(chooser), Wake::default())
}

/// Serves until something holds.
fn serve(dialogs: &mut Dialogs, it: &mut Studio, until: impl Fn(&Studio) -> bool) {
    let started = Instant::now();
    while !until(it) {
        dialogs.serve(it);
        assert!(started.elapsed() < Duration::from_secs(20), "nothing comes back");
        std::thread::sleep(Duration::from_millis(5));
    }
}

#[test]
fn what_is_chosen_in_the_systems_window_counts_and_the_question_is_gone() {
    let folder = tempdir().unwrap();
    let file = folder.path().join("kit.ron");
    let mut it = demo();
    it.apply(Action::AskSave);
    let mut dialogs = windows(Duration::ZERO, Some(file.clone()));
    serve(&mut dialogs, &mut it, |it| it.asks.is_empty());
    assert!(file.is_file());
    assert_eq!(it.document.path(), Some(file.as_path()));
}

#[test]
fn a_system_without_windows_for_files_leaves_the_question_and_is_said() {
    let mut it = window();
    it.state_mut().apply(Action::AskSave);
    it.run_steps(3);
    assert!(says(&it, "Save the scenario") && says(&it, "Choose in the system's window"));
    let mut dialogs = windows(Duration::ZERO, None);
    serve(&mut dialogs, it.state_mut(), |it| !it.has_chooser);
    it.run_steps(3);
    assert_eq!(it.state().asks.front(), Some(&Ask::SaveAs(Which::Scenario)));
    assert!(says(&it, "This system has no window for files: type where"));
    // The same question asked again is a new one.
    click(&mut it, "Cancel");
    assert!(it.state().asks.is_empty());
    it.state_mut().apply(Action::AskSave);
    let folder = tempdir().unwrap();
    let file = folder.path().join("kit.ron");
    let mut dialogs = windows(Duration::ZERO, Some(file.clone()));
    serve(&mut dialogs, it.state_mut(), |it| it.asks.is_empty());
    assert!(file.is_file() && it.state().has_chooser);
}

#[test]
fn a_question_put_away_in_the_systems_window_is_gone_here_too() {
    let mut it = demo();
    it.apply(Action::AskCard);
    let mut dialogs = windows(Duration::from_millis(1_200), None);
    serve(&mut dialogs, &mut it, |it| it.asks.is_empty());
    assert!(it.has_chooser && it.notices.is_empty());
}

#[test]
fn a_path_is_typed_where_it_is_asked_for() {
    let (folder, file) = file_of("ann.ron", backlift::files::scenario::DEMO);
    let mut it = window_on(Studio::new(Some(&file), Recovery::default()).unwrap());
    it.state_mut().apply(Action::Set("player.age".into(), "14".into()));
    it.state_mut().apply(Action::AskSave);
    it.run_steps(3);
    let label = "Choose in the system's window, or type where";
    // Where the file is, and over it: what happens is said.
    assert_eq!(field(&it, label, 0).value().unwrap(), file.display().to_string());
    assert!(says(&it, "The file is there already") && says(&it, "Replace it"));
    // A name alone lies beside it.
    field(&it, label, 0).type_text("");
    control(&mut it, Key::A);
    field(&it, label, 0).type_text("bea");
    it.run_steps(2);
    click(&mut it, "Save it there");
    assert!(it.state().asks.is_empty());
    let text = std::fs::read_to_string(folder.path().join("bea.ron")).unwrap();
    assert!(text.contains("14"));
    assert!(!it.state().document.is_changed());
}

#[test]
fn escape_puts_the_question_away_and_nothing_else_happens_meanwhile() {
    let mut it = window();
    it.state_mut().apply(Action::View(View::Bench));
    it.state_mut().apply(Action::AskOpen);
    it.run_steps(3);
    // There is no such file yet.
    let open = it.get_by_label("Open it");
    assert!(open.accesskit_node().is_disabled());
    it.key_press(Key::F3);
    control(&mut it, Key::S);
    assert_eq!((it.state().view, it.state().asks.len()), (View::Bench, 1));
    press(&mut it, Key::Escape);
    assert!(it.state().asks.is_empty() && !says(&it, "Open a scenario"));
}

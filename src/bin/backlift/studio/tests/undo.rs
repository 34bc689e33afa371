//! Undo and redo of every change of the scenario.

use backlift::files::document::TextFile;
use proptest::prelude::*;
use proptest::sample::select;

use super::demo;
use crate::studio::action::{Action, View};
use crate::studio::paper::OnDesk;

/// What a user might do to a scenario, sense and nonsense.
fn change() -> impl Strategy<Value = Action> {
    let field = select(&[
        "title",
        "player.age",
        "player.grip_top",
        "player.arm_length",
        "bats.0.mass",
        "bats.1.balance",
        "bats.2.pendulum.time",
        "bats.3.pendulum.swings",
        "bats.5.label",
        "innings.runs",
        "fit.sizes",
        "note",
        "player.shoes",
        "bats.1",
    ]);
    let value =
        select(&["2 lb 9 oz", "13.5 years", "20 in", "", "\" quoted \\ = , ) //", "é ± \u{2009}"]);
    prop_oneof![
        6 => (field, value).prop_map(|(path, value)| Action::Set(path.to_owned(), value.to_owned())),
        1 => Just(Action::AddBat),
        2 => (0usize..6).prop_map(Action::DuplicateBat),
        2 => (0usize..6).prop_map(Action::RemoveBat),
        1 => (0u32..150).prop_map(Action::Score),
        1 => (0usize..9).prop_map(Action::SecondBat),
        1 => Just(Action::View(View::Swing)),
        1 => Just(Action::Undo),
        1 => Just(Action::Redo),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..Default::default() })]

    #[test]
    fn any_changes_undone_leave_the_scenario_as_it_was_and_redone_bring_it_back(
        changes in prop::collection::vec(change(), 1..25)
    ) {
        let mut it = demo();
        let before = TextFile::clone(&it.document);
        for action in changes {
            it.apply(action);
        }
        let after = TextFile::clone(&it.document);
        let mut steps = 0;
        while it.document.history().last().is_some() {
            it.apply(Action::Undo);
            steps += 1;
        }
        prop_assert_eq!(&*it.document, &before);
        prop_assert!(!it.document.is_changed());
        prop_assert!(it.playback.bats.iter().all(|bat| *bat < it.document.bat_count()));
        for _ in 0..steps {
            it.apply(Action::Redo);
        }
        prop_assert_eq!(&*it.document, &after);
    }
}

#[test]
fn undo_and_redo_of_one_change_go_there_and_back() {
    let mut it = demo();
    let before = it.document.text().to_owned();
    it.apply(Action::Set("bats.0.mass".into(), "2 lb 9 oz".into()));
    let after = it.document.text().to_owned();
    assert_eq!(it.document.at("bats.0.mass"), "2 lb 9 oz");
    assert_eq!(after, before.replace("mass: \"2 lb 3 oz\"", "mass: \"2 lb 9 oz\""));
    it.apply(Action::Undo);
    assert_eq!(it.document.text(), before);
    it.apply(Action::Redo);
    assert_eq!(it.document.text(), after);
    assert_eq!(it.document.history().last(), Some("Old faithful, dead weight: 2 lb 9 oz"));
}

#[test]
fn a_wrong_value_is_told_as_on_the_command_line_and_the_last_good_bats_stay() {
    let mut it = demo();
    it.apply(Action::Set("bats.0.mass".into(), "2 lb 9 ozz".into()));
    assert!(it.derived.is_stale());
    let words: Vec<_> = it.derived.about("bats.0.mass").map(|it| it.message.clone()).collect();
    assert_eq!(words.len(), 1, "{words:?}");
    assert!(it.derived.loaded.is_some());
    it.apply(Action::Undo);
    assert!(!it.derived.is_stale());
    it.apply(Action::Set("bats.0.weight".into(), "2 lb".into()));
    assert!(it.notices.iter().any(|it| it.is_fault && it.words.contains("no field \"weight\"")));
}

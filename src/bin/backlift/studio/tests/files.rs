//! Open, save, and what is left after the window was killed.

use egui::Key;
use tempfile::tempdir;

use super::paths::{control, press, window};
use super::{demo, file_of, killed, set};
use crate::studio::action::{Action, Keep, View, Which};
use crate::studio::panels::VIEWS;
use crate::studio::paper::OnDesk;
use crate::studio::recovery::Recovery;
use crate::studio::state::{Ask, Studio};
use crate::studio::wood::action::WoodAction;

#[test]
fn a_file_saved_by_the_window_is_read_by_the_command_line_and_keeps_its_notes() {
    let folder = tempdir().unwrap();
    let file = folder.path().join("ann.ron");
    let mut it = demo();
    set(&mut it, "player.age", "14");
    it.apply(Action::SaveAs(file.clone()));
    assert!(!it.document.is_changed());
    let text = std::fs::read_to_string(&file).unwrap();
    assert!(text.contains("// Quick for 13: the opening bowlers"), "{text}");
    let read = backlift::files::scenario::load(Some(&file), &[]).unwrap();
    assert_eq!(read.scenario.player.age_y, 14.0);
}

#[test]
fn unsaved_changes_stand_in_the_way_until_it_is_decided_what_becomes_of_them() {
    let mut it = demo();
    set(&mut it, "player.age", "14");
    it.apply(Action::Close);
    assert!(!it.closed && it.waiting.is_some());
    it.apply(Action::Keep(Keep::Stay));
    assert!(!it.closed && it.document.at("player.age") == "14");
    it.apply(Action::Close);
    it.apply(Action::Keep(Keep::Save));
    assert_eq!(it.asks.pop_front(), Some(Ask::SaveAs(Which::Scenario)));
    let folder = tempdir().unwrap();
    it.apply(Action::SaveAs(folder.path().join("it.ron")));
    assert!(it.closed);
    let mut it = demo();
    set(&mut it, "player.age", "14");
    it.apply(Action::New);
    it.apply(Action::Keep(Keep::Drop));
    assert_eq!(it.document.at("title"), "My player and the kit bag");
}

#[test]
fn what_a_killed_window_had_not_saved_is_offered_by_the_next_one() {
    let (folder, file) = file_of("ann.ron", backlift::files::scenario::DEMO);
    let recovery = Recovery::within(folder.path().join("state"));
    killed(Some(&file), &recovery, |it| set(it, "player.age", "14"));

    let mut next = Studio::new(Some(&file), recovery.clone()).unwrap();
    assert_eq!(next.document.at("player.age"), "13");
    assert!(next.document.offered().is_some());
    next.tick(0.0);
    next.apply(Action::Rescue);
    assert_eq!(next.document.at("player.age"), "14");
    assert!(next.document.is_changed());
    next.apply(Action::Undo);
    assert_eq!(next.document.at("player.age"), "13");
    next.apply(Action::Redo);
    next.apply(Action::Save);
    assert!(Studio::new(Some(&file), recovery.clone()).unwrap().document.offered().is_none());
    assert_eq!(recovery.recent().len(), 1);
}

#[test]
fn a_file_that_cannot_be_written_leaves_the_changes_on_the_screen() {
    let folder = tempdir().unwrap();
    let mut it = demo();
    set(&mut it, "player.age", "14");
    it.apply(Action::SaveAs(folder.path().join("no").join("such").join("it.ron")));
    assert!(it.document.is_changed());
    assert!(it.notices.iter().any(|it| it.is_fault));
}

#[test]
fn a_file_let_fall_on_the_window_is_opened_and_a_card_is_checked_against() {
    let club = include_str!("../../../../../scenarios/club.ron");
    let (_folder, scenario) = file_of("kit.ron", club);
    let mut it = demo();
    it.apply(Action::Dropped(scenario.clone()));
    assert_eq!(it.document.path(), Some(scenario.as_path()));
    // What only says that it is a card is refused as one, and the scenario stays.
    let (_folder, card) = file_of("card.ron", "(schema: \"backlift/card/1\")");
    it.apply(Action::Dropped(card));
    assert_eq!(it.document.path(), Some(scenario.as_path()));
    assert!(it.notices.iter().any(|it| it.is_fault), "{:?}", it.notices);
}

#[test]
fn keys_mean_the_paper_in_front_and_f_keys_follow_from_the_views() {
    let mut it = window();
    for (n, row) in VIEWS.iter().enumerate() {
        press(&mut it, Key::from_name(&format!("F{}", n + 1)).unwrap());
        assert_eq!(it.state().view, row.view);
        let paper = row.view.paper();
        control(&mut it, Key::O);
        assert_eq!(it.state_mut().asks.pop_front(), Some(Ask::Open(paper)), "{:?}", row.view);
        control(&mut it, Key::S);
        assert_eq!(it.state_mut().asks.pop_front(), Some(Ask::SaveAs(paper)), "{:?}", row.view);
    }
    // At the wood, what is new is a blade, and what is taken back is its own.
    it.state_mut().apply(Action::View(View::Wood));
    it.state_mut().apply(Action::Set("player.age".into(), "14".into()));
    it.state_mut().apply(Action::Wood(WoodAction::Set("blade.edge".into(), "31 mm".into())));
    control(&mut it, Key::Z);
    assert!(!it.state().wood.paper.is_changed() && it.state().document.at("player.age") == "14");
    control(&mut it, Key::N);
    assert!(it.state().waiting.is_none() && it.state().document.at("player.age") == "14");
}

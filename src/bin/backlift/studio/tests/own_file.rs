//! A bat with its own file on the screen: begun, read pass by pass, kept.

use backlift::files::assets::sizes;
use backlift::files::shape::load_own;
use backlift::questions::plane::{Way, planned_by};
use backlift::workshop::plane::plan::PLANING_SD;
use egui_kittest::kittest::Queryable;
use tempfile::TempDir;

use super::paths::{click, says, window_on, write};
use super::wood::{CARD, act, with_card};
use crate::studio::action::Action;
use crate::studio::state::Studio;
use crate::studio::wood::action::{WoodAction, Work};

fn set(it: &mut Studio, path: &str, value: &str) {
    act(it, WoodAction::Set(path.to_owned(), value.to_owned()));
}

/// At the plane with a card opened, and no bat yet.
fn at_the_plane() -> (Studio, TempDir) {
    let (mut it, folder) = with_card();
    act(&mut it, WoodAction::Work(Work::Plane));
    (it, folder)
}

/// A first reading.
fn read(it: &mut Studio) {
    act(it, WoodAction::NextReading);
    set(it, "log.0.mass", "980 g");
    set(it, "log.0.balance", "523 mm");
    set(it, "log.0.time", "42.6 s");
}

#[test]
fn readings_typed_on_the_screen_give_the_plan_of_the_command_and_the_file_it_reads() {
    let (it, folder) = at_the_plane();
    let mut window = window_on(it);
    click(&mut window, "Give this bat its own file");
    assert!(window.state().own_log().is_none() && window.state().wood.planned.is_none());
    assert!(!says(&window, "it is missing"), "what is not filled in yet is no mistake");
    for (label, text) in
        [("Weight", "980 g"), ("Balance point", "523 mm"), ("Time of all swings", "42.6 s")]
    {
        write(&mut window, label, 0, text);
    }
    let it = window.state_mut();
    assert!(it.wood.faults.is_empty(), "{:?}", it.wood.faults);
    it.tick(0.0);
    let first = it.wood.planned.as_ref().unwrap().plan.as_ref().unwrap().passes[0].clone();
    click(&mut window, "Next reading");
    assert_eq!(window.state().wood.paper.at("log.1.planed"), first.place.words());
    write(&mut window, "Weight", 0, &format!("{} g", (1e3 * first.then.mass_kg).round()));
    write(&mut window, "Balance point", 0, "523 mm");
    write(&mut window, "Time of all swings", 0, "42.6 s");
    let it = window.state_mut();
    assert!(it.wood.faults.is_empty(), "{:?}", it.wood.faults);
    it.tick(0.0);
    assert_eq!(it.own_log().unwrap().entries.len(), 2);

    let file = folder.path().join("bat.ron");
    act(it, WoodAction::SaveAs(file.clone()));
    let kept = load_own(&file, &sizes().unwrap()).unwrap().unwrap();
    let way = Way { besides: Vec::new(), planing_sd: PLANING_SD };
    let (plan, _) = planned_by(&kept, &kept.log, &way, str::to_owned).unwrap();
    assert_eq!(Some(&plan.plan), it.wood.planned.as_ref().unwrap().plan.as_ref().ok());
    assert_eq!(kept.log.entries[1].planed, Some(first.place));
    assert_eq!(kept.log.entries[1].asked_kg, Some(first.off_kg));
}

#[test]
fn where_the_plane_was_at_work_elsewhere_the_plan_asked_for_nothing_there() {
    let (mut it, _folder) = at_the_plane();
    read(&mut it);
    it.tick(0.0);
    act(&mut it, WoodAction::NextReading);
    assert!(!it.wood.paper.at("log.1.asked").is_empty());
    set(&mut it, "log.1.planed", "toe");
    assert_eq!(it.wood.paper.at("log.1.asked"), "");
}

#[test]
fn a_bat_with_its_own_card_is_held_against_no_other() {
    let (mut it, folder) = at_the_plane();
    read(&mut it);
    let own = it.wood_card().unwrap().clone();
    let other = folder.path().join("other.ron");
    std::fs::write(&other, CARD.replacen("age_y: 13", "age_y: 14", 1)).unwrap();
    act(&mut it, WoodAction::Card(other));
    assert_eq!(it.wood_card(), Some(&own));
    let window = window_on(it);
    assert!(window.query_by_label_contains("made for the card in its own file").is_some());
}

#[test]
fn a_reading_that_cannot_be_is_said_beside_its_field_and_each_step_goes_back() {
    let (mut it, _folder) = at_the_plane();
    let before = it.wood.paper.text().to_owned();
    read(&mut it);
    set(&mut it, "log.0.mass", "980");
    assert!(it.wood.about("log.0.mass").count() == 1, "{:?}", it.wood.faults);
    for _ in 0..5 {
        it.apply(Action::Undo);
    }
    assert_eq!(it.wood.paper.text(), before);
}

#[test]
fn a_bat_of_another_size_than_the_card_is_not_put_under_it() {
    let (mut it, _folder) = at_the_plane();
    set(&mut it, "size", "harrow");
    set(&mut it, "blade.edge", "36 mm");
    let before = it.wood.paper.text().to_owned();
    act(&mut it, WoodAction::NextReading);
    assert_eq!(it.wood.paper.text(), before);
    let window = window_on(it);
    assert!(window.query_by_label_contains("the bat described is of size").is_some());
}

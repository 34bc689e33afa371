//! The coach's way: by the hand from who bats to the card.

use egui::accesskit::Role;
use egui_kittest::kittest::Queryable;

use super::paths::{click, says, wait_until, window, window_on, write, write_card};
use super::{demo, pass_until, set};
use crate::studio::action::{Action, Step, View};
use crate::studio::state::Studio;
use crate::studio::work::Question;

#[test]
fn a_card_for_a_new_player_with_two_bats_takes_less_than_a_dozen_interactions() {
    let mut it = window();
    let mut done = 0;
    let mut count = |n: usize| done += n;
    click(&mut it, "I coach");
    count(1);
    assert_eq!((it.state().view, it.state().way), (View::Bench, Some(Step::Who)));
    // One stroke is as many interactions as three.
    set(it.state_mut(), "strokes", "pull");
    write(&mut it, "Age", 0, "12");
    click(&mut it, "female");
    write(&mut it, "Height", 0, "5 ft 0 in");
    count(3);
    let needed = it.state().needed(Step::Who);
    assert_eq!(it.state().way, Some(Step::Bats), "Enter in the last field goes on: {needed:?}");
    for (n, (size, mass)) in [("5", "2 lb 0 oz"), ("6", "2 lb 5 oz")].into_iter().enumerate() {
        write(&mut it, "Size", n, size);
        write(&mut it, "Dead weight", n, mass);
        count(2);
    }
    assert_eq!(it.state().way, Some(Step::Seen));
    assert!(!it.state().derived.is_stale(), "{:?}", it.state().derived.faults);
    click(&mut it, "half");
    count(1);
    assert_eq!(it.state().way, Some(Step::Answer));
    wait_until(&mut it, |it| it.advice().is_some());
    assert!(it.state().fitted().is_none(), "today's bats come before the search");
    assert!(says(&it, "Use today: ") && says(&it, "What would make it surer"));
    wait_until(&mut it, |it| it.fitted().is_some());
    write_card(&mut it);
    count(2);
    assert!(done < 12, "{done}");
}

#[test]
fn nothing_of_a_new_player_is_filled_in_and_what_is_missing_is_no_mistake() {
    let mut it = window();
    click(&mut it, "I coach");
    let fields = it.query_all_by_role(Role::TextInput);
    let values: Vec<String> =
        fields.filter_map(|it| it.value()).filter(|it| !it.is_empty()).collect();
    assert!(values.is_empty(), "{values:?}");
    assert!(says(&it, "Still needed: Age; Sex; Height") && !says(&it, "To be mended"));
    assert!(it.state().standing().is_empty());
    // Nothing is skipped by a slip: Next waits for what is needed, and any step is a click away.
    it.state_mut().apply(Action::Onward);
    assert_eq!(it.state().way, Some(Step::Who));
    click(&mut it, "step 3 What was seen");
    assert_eq!(it.state().way, Some(Step::Seen));
    click(&mut it, "Back");
    assert_eq!(it.state().way, Some(Step::Bats));
    click(&mut it, "The whole bench");
    assert!(it.state().way.is_none() && says(&it, "Innings to last"));
    click(&mut it, "Step by step");
    assert_eq!(it.state().way, Some(Step::Who));
}

/// A new player of whom as little as possible is known.
fn begun() -> Studio {
    let mut it = demo();
    it.apply(Action::New);
    for (path, value) in [
        ("strokes", "pull"),
        ("player.age", "12"),
        ("player.sex", "female"),
        ("player.stature", "5 ft 0 in"),
        ("bats.0.mass", "2 lb 0 oz"),
    ] {
        set(&mut it, path, value);
    }
    it
}

#[test]
fn a_bat_that_was_left_empty_is_left_out_and_one_without_its_weight_is_asked_for() {
    let mut it = begun();
    it.apply(Action::Way(Some(Step::Bats)));
    it.apply(Action::Set("bats.1.label".into(), "Spare".into()));
    it.apply(Action::Onward);
    assert_eq!((it.way, it.document.bat_count()), (Some(Step::Bats), 2));
    it.apply(Action::Undo);
    it.apply(Action::Onward);
    assert_eq!((it.way, it.document.bat_count()), (Some(Step::Seen), 1));
    assert!(!it.derived.is_stale(), "{:?}", it.derived.faults);
    it.apply(Action::Undo);
    assert_eq!(it.document.bat_count(), 2);
}

#[test]
fn what_is_still_to_be_measured_stands_beside_the_answer_with_what_it_brings() {
    let mut state = begun();
    state.apply(Action::Way(Some(Step::Answer)));
    let surer = state.derived.loaded.as_ref().unwrap().surer();
    assert_eq!(surer.len(), 4, "a bat, the grip, the mass, the hand: {surer:?}");
    assert!(surer.iter().all(|it| it.then < 0.6 * it.now), "{surer:?}");
    let mut it = window_on(state);
    it.run_steps(3);
    assert!(says(&it, "a pendulum test of bat A: its swing moment to ± "));
    assert!(says(&it, "Both hands on a dynamometer: the grip to ± "));
    click(&mut it, "Measure the bats now");
    assert_eq!(it.state().way, Some(Step::Bats));
}

#[test]
fn the_card_and_the_map_show_what_is_known_so_far_while_the_bat_is_searched_for() {
    let mut state = begun();
    state.apply(Action::Way(Some(Step::Seen)));
    state.apply(Action::View(View::Card));
    pass_until(&mut state, |it| it.advice().is_some());
    state.apply(Action::CancelFit);
    let mut it = window_on(state);
    for view in [View::Card, View::Map] {
        it.state_mut().view = view;
        it.run_steps(3);
        assert!(it.state().fitted().is_none() && it.state().work.job(Question::Fit).is_none());
        assert!(says(&it, "Use today: ") && says(&it, "Today's bats"), "{view:?}");
        assert!(!says(&it, "No card yet"));
    }
}

#[test]
fn another_bat_on_the_way_begins_empty_and_is_left_out_if_it_stays_so() {
    let mut it = begun();
    it.apply(Action::Set("bats.1.mass".into(), "2 lb 5 oz".into()));
    let count = it.document.bat_count();
    it.apply(Action::Way(Some(Step::Bats)));
    it.apply(Action::AddBat);
    assert_eq!(it.document.at(&format!("bats.{count}.label")), "");
    it.apply(Action::Way(Some(Step::Seen)));
    assert_eq!(it.document.bat_count(), count);
}

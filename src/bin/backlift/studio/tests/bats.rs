//! The left side: bats are chosen and swapped there.

use egui::Key;
use egui_kittest::kittest::Queryable;

use super::paths::{click, press, says, window};
use crate::studio::action::{Action, View};

#[test]
fn one_click_on_a_bat_swings_it_beside_the_first_and_one_makes_it_the_first() {
    let mut it = window();
    assert_eq!(it.state().playback.bats, [0, 1]);
    click(&mut it, "Club spare second");
    assert_eq!(it.state().playback.bats, [0, 3]);
    // The two change places: neither goes from the screen.
    click(&mut it, "Club spare first");
    assert_eq!(it.state().playback.bats, [3, 0]);
    // A click on what is the first already changes nothing.
    click(&mut it, "Club spare second");
    assert_eq!(it.state().playback.bats, [3, 0]);
    // Only the second has a button of its own.
    let buttons = it.query_all_by_label("Old faithful first").count();
    let others = it.query_all_by_label("Hand-me-down first").count();
    assert_eq!((buttons, others), (1, 0));
    // What it weighs and how it picks up stands on the bat itself.
    assert!(says(&it, "2\u{2009}lb 6.0\u{2009}oz ± ") && says(&it, "picks up like "));
}

#[test]
fn bats_are_swapped_by_the_keyboard_too() {
    let mut it = window();
    it.get_by_label("Hand-me-down second").focus();
    it.run_steps(2);
    press(&mut it, Key::Enter);
    assert_eq!(it.state().playback.bats, [0, 2]);
    it.get_by_label("Club spare second").focus();
    it.run_steps(2);
    it.key_press_modifiers(egui::Modifiers::SHIFT, Key::Enter);
    it.run_steps(3);
    assert_eq!(it.state().playback.bats, [3, 2]);
}

#[test]
fn at_the_bench_a_click_puts_the_bat_there() {
    let mut it = window();
    it.state_mut().apply(Action::View(View::Bench));
    it.run_steps(2);
    click(&mut it, "Hand-me-down second");
    assert_eq!((it.state().bench_bat, it.state().playback.bats), (2, [0, 2]));
}

//! Each user's whole path by clicks and typing.

use egui::accesskit::Role;
use egui::{Key, Modifiers, Pos2};
use egui_kittest::kittest::{NodeT, Queryable};
use egui_kittest::{Harness, Node};
use tempfile::tempdir;

use super::{demo, pass_until, pull_demo, settled_demo};
use crate::studio::action::{Action, View};
use crate::studio::layout::show;
use crate::studio::panels::{Row, VIEWS};
use crate::studio::playback::Playback;
use crate::studio::state::{Ask, Studio};
use crate::studio::work::Question;

pub type Window = Harness<'static, Studio>;

/// A window of a small laptop on the demo.
pub fn window() -> Window {
    window_on(demo())
}

/// The same on any state.
pub fn window_on(mut state: Studio) -> Window {
    state.playback = Playback { playing: false, ..state.playback };
    let app = |ui: &mut egui::Ui, it: &mut Studio| {
        show(ui, it);
    };
    let mut it =
        Harness::builder().with_size([1366.0, 768.0]).with_step_dt(0.05).build_ui_state(app, state);
    it.run_steps(3);
    it
}

pub fn click(it: &mut Window, label: &str) {
    it.get_by_label(label).scroll_to_me();
    it.run_steps(10);
    it.get_by_label(label).click();
    it.run_steps(3);
}

/// The field of that name, the nth of them.
pub fn field<'a>(it: &'a Window, label: &'a str, n: usize) -> Node<'a> {
    it.get_all_by_role_and_label(Role::TextInput, label).nth(n).unwrap()
}

/// Writes over what stands in that field, and leaves it by Enter.
pub fn write(it: &mut Window, label: &str, n: usize, text: &str) {
    field(it, label, n).scroll_to_me();
    it.run_steps(10);
    field(it, label, n).focus();
    it.run_steps(1);
    control(it, Key::A);
    field(it, label, n).type_text(text);
    it.run_steps(1);
    press(it, Key::Enter);
}

/// Asks for a folder for the card, gives one, and finds the card in it.
pub fn write_card(it: &mut Window) {
    click(it, "Write the card…");
    assert_eq!(it.state_mut().asks.pop_front(), Some(Ask::CardFolder));
    let folder = tempdir().unwrap();
    it.state_mut().apply(Action::WriteCard(folder.path().join("fitting")));
    wait_until(it, |it| it.work.job(Question::CardFiles).is_none());
    assert!(says(it, "Wrote "));
    assert!(folder.path().join("fitting").join("card.pdf").is_file());
}

pub fn press(it: &mut Window, key: Key) {
    it.key_press(key);
    it.run_steps(3);
}

/// The same with Ctrl held.
pub fn control(it: &mut Window, key: Key) {
    it.key_press_modifiers(Modifiers::COMMAND, key);
    it.run_steps(3);
}

pub fn drag(it: &mut Window, from: Pos2, to: Pos2) {
    it.drag_at(from);
    it.run_steps(1);
    it.hover_at(to);
    it.run_steps(1);
    it.drop_at(to);
    it.run_steps(3);
}

pub fn wait(it: &mut Window) {
    wait_until(it, Studio::is_settled);
}

/// The same for one thing alone.
pub fn wait_until(it: &mut Window, is_there: impl Fn(&Studio) -> bool) {
    pass_until(it.state_mut(), is_there);
    it.run_steps(3);
}

pub fn says(it: &Window, words: &str) -> bool {
    it.query_all_by_label_contains(words).next().is_some()
}

#[test]
fn panels_in_which_nothing_happens_ask_for_no_picture() {
    let mut it = window_on(settled_demo());
    for Row { view, .. } in &VIEWS {
        it.state_mut().view = *view;
        it.run_steps(40);
        let asks = it.ctx.has_requested_repaint();
        assert!(!asks, "{view:?}: {:?}", it.ctx.repaint_causes());
    }
}

#[test]
fn a_coach_measures_a_player_and_a_bat_and_gets_the_card() {
    let mut it = window_on(pull_demo());
    click(&mut it, "Bench");
    assert_eq!(it.state().view, View::Bench);
    write(&mut it, "Age", 0, "14");
    write(&mut it, "Dead weight", 0, "2 lb 9 ozz");
    assert!(it.state().derived.is_stale());
    assert!(says(&it, "To be mended") && says(&it, "dead weight: "));
    write(&mut it, "Dead weight", 0, "2 lb 4 oz");
    assert_eq!(it.state().document.at("bats.0.mass"), "2 lb 4 oz");
    assert!(!it.state().derived.is_stale());
    click(&mut it, "Undo");
    click(&mut it, "Undo");
    assert_eq!(it.state().document.at("player.age"), "14");
    click(&mut it, "Map");
    assert!(says(&it, "Stop the search"));
    wait_until(&mut it, |it| it.fitted().is_some());
    assert!(says(&it, " middle ("));
    let map = it.get_by_label_contains("map of bats").rect();
    drag(&mut it, map.center(), map.center() + egui::vec2(30.0, -20.0));
    assert!(it.state().tried.is_some());
    click(&mut it, "See the card");
    assert_eq!(it.state().view, View::Card);
    wait_until(&mut it, |it| it.card_picture().is_some());
    write_card(&mut it);
    click(&mut it, "Check it against this card");
    assert!(it.state().check.is_some());
}

#[test]
fn a_player_compares_two_bats_late_in_the_innings() {
    let mut it = window_on(pull_demo());
    click(&mut it, "I play");
    assert_eq!(it.state().view, View::Innings);
    click(&mut it, "Hand-me-down second");
    assert_eq!(it.state().playback.bats, [0, 2]);
    wait_until(&mut it, |it| !it.is_pending(0));
    assert!(says(&it, "By fifty the pull with Old faithful has lost"));
    click(&mut it, "At fifty");
    assert_eq!(it.state().playback.runs, 50);
    click(&mut it, "Swing");
    wait_until(&mut it, Studio::is_compared);
    assert!(says(&it, "At 50 runs the pull"));
    click(&mut it, "lb, in");
    assert!(says(&it, "m/s"));
}

#[test]
fn a_maker_shows_a_customer_both_pairs() {
    let mut it = window();
    click(&mut it, "I make bats");
    assert_eq!(it.state().view, View::Pickup);
    assert!(says(&it, "weigh the same"));
    assert_eq!(it.state().playback.bats, [0, 1]);
    click(&mut it, "Alike in the hand");
    assert_eq!(it.state().playback.bats, [2, 3]);
    assert!(says(&it, "apart on the scale"));
}

#[test]
fn the_pendulum_is_timed_by_tapping() {
    let mut it = window();
    click(&mut it, "Bench");
    for _ in 0..11 {
        it.get_by_label("Tap: the bat is back").scroll_to_me();
        it.run_steps(1);
        it.get_by_label("Tap: the bat is back").click();
        // The window's clock runs a step at a time.
        it.run_steps(24);
    }
    assert_eq!(it.state().taps.swings(), 10, "{:?}", it.state().taps);
    assert!(says(&it, "So far the swing moment is"), "{:?}", it.state().taps);
}

#[test]
fn every_control_has_a_name() {
    for Row { view, .. } in &VIEWS {
        let mut it = window();
        it.state_mut().view = *view;
        it.run_steps(2);
        let nameless: Vec<String> = it
            .query_all_by(|node| {
                let controls = [Role::Button, Role::TextInput, Role::Slider, Role::CheckBox];
                controls.contains(&node.role())
            })
            .filter(|node| node.accesskit_node().label().unwrap_or_default().is_empty())
            .map(|node| format!("{node:?}"))
            .collect();
        assert!(nameless.is_empty(), "{view:?}: {nameless:#?}");
    }
}

//! Today's bats: which to use, what was seen, and what must stand with it.

use egui::Key;
use egui_kittest::kittest::Queryable;

use super::paths::{Window, click, drag, press, says, wait, wait_until, window, window_on};
use super::{demo, pass_until, set, settled_demo};
use crate::sentences::advice;
use crate::studio::action::{Action, View};
use crate::studio::panels::{Row, VIEWS};
use crate::studio::state::Studio;

#[test]
fn which_bat_to_use_today_comes_before_any_search_and_in_the_words_of_the_command_line() {
    let mut it = window_on(settled_demo());
    assert!(it.state().fitted().is_none() && it.state().is_advised());
    let (loaded, now) = it.state().advice().unwrap();
    let words = advice::which_today(loaded, now);
    assert!(words.starts_with("Use today: "), "{words}");
    assert_eq!(now.today.given.len(), it.state().document.bat_count());
    for view in [View::Innings, View::Bench] {
        it.state_mut().view = view;
        it.run_steps(3);
        assert!(says(&it, &words), "{view:?} does not say {words:?}");
    }
    // A change of the bench makes it old until the new one is there.
    set(it.state_mut(), "bats.0.mass", "2 lb 5 oz");
    assert!(!it.state().is_advised() && it.state().advice().is_some());
    wait_until(&mut it, Studio::is_advised);
}

#[test]
fn an_age_in_years_and_months_has_its_unit_once() {
    for (written, said) in [("13 years 4 months", "13 years 4 months, "), ("14", "14 years, ")] {
        let mut state = demo();
        set(&mut state, "player.age", written);
        let it = window_on(state);
        assert!(says(&it, said), "{written}");
    }
}

#[test]
fn what_was_seen_is_written_into_the_text_and_cleared_from_it() {
    let mut it = window_on(settled_demo());
    it.state_mut().apply(Action::View(View::Bench));
    it.run_steps(3);
    let before = it.state().document.text().to_owned();
    click(&mut it, "most");
    let at = |it: &Window, name: &str| it.state().document.at(&format!("seen.0.{name}"));
    assert_eq!(at(&it, "bat"), "Old faithful");
    assert_eq!(at(&it, "stroke"), "pull");
    assert_eq!(at(&it, "in_time"), "most");
    assert!(!it.state().derived.is_stale(), "{:?}", it.state().derived.faults);
    set(it.state_mut(), "seen.0.runs", "50");
    let seen = it.state().derived.loaded.as_ref().unwrap().scenario.seen.clone();
    assert_eq!((seen.len(), seen[0].bat, seen[0].runs, seen[0].balls), (1, 0, 50.0, 20));
    wait(&mut it);
    let (_, now) = it.state().advice().unwrap();
    assert!(it.state().is_advised() && now.today.in_time_assumed.is_none());
    assert!(it.state().document.text().contains("// Quick for 13"), "notes stay");
    click(&mut it, "Clear");
    assert_eq!(it.state().document.text(), before);
    it.state_mut().apply(Action::Undo);
    assert_eq!(at(&it, "in_time"), "most");
}

#[test]
fn the_bat_in_use_keeps_its_name_and_goes_with_its_bat() {
    let mut it = demo();
    set(&mut it, "uses", "Big edges");
    it.apply(Action::Saw("half".to_owned()));
    assert_eq!(it.document.at("seen.0.bat"), "Big edges");
    assert_eq!(it.derived.loaded.as_ref().unwrap().scenario.uses, 1);
    set(&mut it, "bats.1.label", "Edges");
    assert_eq!(
        (it.document.at("uses"), it.document.at("seen.0.bat")),
        ("Edges".into(), "Edges".into())
    );
    assert!(!it.derived.is_stale(), "{:?}", it.derived.faults);
    it.apply(Action::RemoveBat(1));
    assert!(!it.derived.is_stale() && !it.document.is_seen(), "{:?}", it.derived.faults);
    assert_eq!(it.document.at("uses"), "");
    it.apply(Action::Undo);
    assert_eq!(it.document.at("uses"), "Edges");
    assert_eq!(it.document.used_bat(), 1);
}

#[test]
fn every_view_of_a_junior_and_of_invented_people_says_so() {
    let mut it = window();
    for Row { view, .. } in &VIEWS {
        it.state_mut().view = *view;
        it.run_steps(3);
        let both = says(&it, "Invented player and bats") && says(&it, "Growth changes the answer");
        assert!(both, "{view:?}");
    }
    // A grown player who was measured.
    set(it.state_mut(), "player.age", "24");
    set(it.state_mut(), "invented", "no");
    assert!(it.state().standing().is_empty(), "{:?}", it.state().derived.faults);
}

#[test]
fn nothing_calls_a_player_invented_who_was_measured() {
    let mut state = demo();
    set(&mut state, "invented", "no");
    let mut it = window_on(state);
    it.run_steps(3);
    assert!(!says(&it, "invented") && !says(&it, "Invented"));
    assert!(says(&it, "Growth changes the answer"));
}

#[test]
fn an_ounce_is_dragged_along_the_bat_and_moved_by_the_arrows() {
    let mut state = settled_demo();
    state.apply(Action::View(View::Pickup));
    pass_until(&mut state, |it| it.ounces().is_some());
    let mut it = window_on(state);
    let pull = it.state().ounces().unwrap().lead().unwrap().clone();
    let length_m = pull.length_m;
    assert!(pull.ounce_at_m_s(length_m) < pull.ounce_at_m_s(0.5 * length_m));
    assert!(says(&it, "swung about an axis"));
    it.get_by_label_contains("ounce on the bat").scroll_to_me();
    it.run_steps(10);
    let rect = it.get_by_label_contains("ounce on the bat").rect();
    drag(&mut it, rect.center() + egui::vec2(0.4 * rect.width(), 0.0), rect.center());
    let share = it.state().ounce_at;
    assert!((share - 0.5).abs() < 0.02, "{share}");
    for _ in 0..2 {
        press(&mut it, Key::ArrowLeft);
    }
    let moved_m = (share - it.state().ounce_at) * length_m;
    assert!((moved_m - 0.0127).abs() < 1e-9, "{moved_m}");
    let at_m = it.state().ounce_at * length_m;
    let cost = format!("{:.2}\u{2009}km/h", -3.6 * pull.ounce_at_m_s(at_m));
    assert!(says(&it, &format!("takes {cost}")), "{cost}");
    // The same figure stands at the weight itself.
    assert!(it.query_all_by_label_contains("ounce on the bat").any(|node| {
        let label = egui_kittest::kittest::NodeT::accesskit_node(&node).label().unwrap_or_default();
        label.contains(&format!("−{cost}"))
    }));
    let other = (it.state().playback.bats[0] + 1) % 4;
    it.state_mut().apply(Action::FirstBat(other));
    assert!(it.state().ounces().is_none(), "another bat has costs of its own");
}

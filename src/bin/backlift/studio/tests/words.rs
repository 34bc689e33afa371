//! What the window says of fields, examples and figures: in a coach's words, and of what they are.

use egui_kittest::kittest::{NodeT, Queryable};

use super::paths::{Window, says, window_on};
use super::{demo, searched_demo, set};
use crate::studio::action::{Action, View};
use crate::studio::fields::PLAYER;
use crate::studio::panels::{Row, VIEWS};
use crate::studio::state::Studio;

/// Everything that is written on the screen.
fn written(it: &Window) -> Vec<String> {
    let all = it.query_all_by(|_| true);
    let words = all.map(|node| {
        let node = node.accesskit_node();
        [node.label(), node.value()].into_iter().flatten().collect::<Vec<_>>().join(" ")
    });
    words.collect()
}

#[test]
fn what_is_wrong_is_said_of_a_bat_by_its_name_and_of_a_field_as_the_bench_calls_it() {
    let mut state = demo();
    set(&mut state, "bats.0.mass", "2 lb 9 ozz");
    set(&mut state, "bats.1.handle_diameter", "3 m");
    set(&mut state, "player.grip_top", "300 kg");
    set(&mut state, "bats.2.label", "Old faithful");
    let mut it = window_on(state);
    for Row { view, .. } in &VIEWS {
        it.state_mut().view = *view;
        it.run_steps(3);
        if *view != View::Wood {
            assert!(says(&it, "Old faithful, dead weight: "), "{view:?}: {:#?}", written(&it));
        }
        let paths = ["bats.", "player.", "grip_top", "handle_diameter"];
        let told: Vec<String> = written(&it);
        let raw = told.iter().find(|it| paths.iter().any(|path| it.contains(path)));
        assert!(raw.is_none(), "{view:?} says {raw:?}");
    }
    set(it.state_mut(), "bats.0.mass", "2 lb 3 oz");
    set(it.state_mut(), "bats.1.handle_diameter", "");
    set(it.state_mut(), "bats.2.label", "Spare");
    it.run_steps(3);
    it.state_mut().view = View::Swing;
    it.run_steps(3);
    assert!(says(&it, "Grip, top hand: "));
}

#[test]
fn a_childs_measurement_that_is_refused_is_told_with_a_childs_example() {
    let mut it = demo();
    set(&mut it, "player.age", "12");
    set(&mut it, "player.mass", "46");
    let help =
        |it: &Studio, path: &str| it.derived.about(path).next().unwrap().help.clone().unwrap();
    assert_eq!(help(&it, "player.mass"), "write it with its unit, like \"45 kg\" or \"99 lb\"");
    set(&mut it, "player.mass", "");
    set(&mut it, "player.grip_top", "23");
    assert!(
        help(&it, "player.grip_top").contains("like \"25 kg\""),
        "{}",
        help(&it, "player.grip_top")
    );
    set(&mut it, "player.grip_top", "");
    set(&mut it, "player.mass", "300 kg");
    assert!(help(&it, "player.mass").ends_with("most of 12 years are near 45 kg"));
    set(&mut it, "player.mass", "");
    set(&mut it, "player.stature", "tall");
    assert!(help(&it, "player.stature").contains("4 ft 11 in"), "{}", help(&it, "player.stature"));
    // And the hints of empty fields with them.
    set(&mut it, "player.stature", "4 ft 11 in");
    let hint = |it: &Studio| it.like(&PLAYER[2]);
    let child = hint(&it);
    set(&mut it, "player.age", "30");
    set(&mut it, "player.stature", "5 ft 10 in");
    assert_eq!([child.as_str(), hint(&it).as_str()], ["39 kg", "76 kg"]);
}

#[test]
fn a_mean_over_strokes_is_called_one_and_every_head_says_the_score_of_its_figures() {
    let mut state = searched_demo();
    state.apply(Action::View(View::Map));
    let mut it = window_on(state);
    assert!(
        says(&it, "mean ball of pulls in time at 50 runs") && !says(&it, "off the bat, the pull")
    );
    assert!(says(&it, "expected ball, the innings") && says(&it, "in time at 50 runs"));
    // The net beside it is fresh, and says so.
    assert!(says(&it, "In the net: The pull, fresh"));
    // No speed without its doubt, and no weight of a weighed bat.
    let figures = written(&it);
    let doubts = figures.iter().filter(|it| it.trim_start().starts_with("± ")).count();
    assert!(doubts >= 7, "{doubts} in {figures:#?}");
    it.state_mut().apply(Action::View(View::Innings));
    it.run_steps(3);
    assert!(says(&it, "in time at 50 runs") && says(&it, "expected ball, km/h"));
    assert!(says(&it, "of its bat speed by fifty"));
    assert!(
        says(&it, "2\u{2009}lb 3.00\u{2009}oz ± ") || says(&it, "2\u{2009}lb 3.0\u{2009}oz ± ")
    );
}

//! The swing on the screen plays until somebody stops it.

use egui::Key;
use egui::accesskit::Role;
use egui_kittest::kittest::Queryable;

use super::demo;
use super::paths::{Window, drag, press, wait_until, window_on};
use crate::studio::action::{Action, View};

const TIME: &str = "time after the top of the backlift";

/// The demo's swing, playing.
fn playing() -> Window {
    let mut it = window_on(demo());
    it.state_mut().apply(Action::View(View::Swing));
    it.state_mut().apply(Action::Play);
    it.run_steps(3);
    it
}

/// The same, its first stroke there.
fn with_a_stroke() -> Window {
    let mut it = playing();
    wait_until(&mut it, |it| it.stroke_time_s(0).is_some());
    it
}

/// Ten pictures of 37.1 ms: of the stroke, no whole number of milliseconds.
fn ten_pictures(it: &mut Window) -> f64 {
    for _ in 0..10 {
        it.state_mut().tick(0.0371);
        it.run_steps(1);
    }
    0.371 * it.state().playback.rate
}

#[test]
fn time_passes_while_the_swing_plays() {
    let mut it = playing();
    let before_s = it.state().playback.time_s;
    let passed_s = ten_pictures(&mut it);
    let now = &it.state().playback;
    assert!(now.playing, "drawing the time stopped the swing: {now:?}");
    assert!((now.time_s - before_s - passed_s).abs() < 1e-9, "{before_s} and {passed_s}: {now:?}");
}

#[test]
fn the_end_of_the_stroke_does_not_stop_it_when_it_plays_again_and_again() {
    let mut it = playing();
    let length_s = it.state().length_s();
    it.state_mut().playback.time_s = length_s + 1e-4;
    // The end stands for a second.
    for _ in 0..4 {
        ten_pictures(&mut it);
    }
    let now = &it.state().playback;
    assert!(now.playing && now.time_s < length_s, "{length_s}: {now:?}");
}

#[test]
fn a_hand_on_the_slider_stops_it_there() {
    let mut it = with_a_stroke();
    let rect = it.get_by_role_and_label(Role::Slider, TIME).rect();
    let place = rect.left_center() + egui::vec2(0.25 * rect.width(), 0.0);
    drag(&mut it, place, place);
    let now = it.state().playback.clone();
    assert!(!now.playing && now.time_s > 0.0, "{now:?}");
    ten_pictures(&mut it);
    assert_eq!(it.state().playback.time_s, now.time_s);
}

#[test]
fn an_arrow_key_on_the_slider_stops_it_there() {
    let mut it = with_a_stroke();
    it.get_by_role_and_label(Role::Slider, TIME).focus();
    it.run_steps(2);
    assert!(it.state().playback.playing, "{:?}", it.state().playback);
    press(&mut it, Key::ArrowRight);
    let now = &it.state().playback;
    assert!(!now.playing && now.time_s > 0.0, "{now:?}");
}

#[test]
fn the_swing_slows_down_towards_the_ball_and_the_end_stands_for_a_second() {
    let mut it = playing();
    let length_s = it.state().length_s();
    let passed_s = |it: &mut Window, from_s: f64| {
        it.state_mut().playback.time_s = from_s;
        it.state_mut().tick(0.02);
        it.state().playback.time_s - from_s
    };
    let [early_s, late_s] = [0.2, 0.9].map(|share| passed_s(&mut it, share * length_s));
    assert!(late_s > 0.0 && late_s < 0.25 * early_s, "{late_s} {early_s}");
    it.state_mut().playback.time_s = length_s;
    for n in 0..12 {
        assert!(it.state().playback.time_s >= length_s, "picture {n}");
        it.state_mut().tick(0.083);
    }
}

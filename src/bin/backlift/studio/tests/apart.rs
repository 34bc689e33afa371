//! What two bats are apart by, in large, in words and in the net.

use egui::{Rect, pos2};

use super::{demo, settled_demo};
use crate::sentences::pair::in_hand;
use crate::studio::action::{Action, View};
use crate::studio::state::Studio;

pub const ROOM: Rect = Rect { min: pos2(200.0, 50.0), max: pos2(1000.0, 650.0) };

/// The demo's swing, settled, at its start.
pub fn settled() -> Studio {
    let mut it = settled_demo();
    it.apply(Action::View(View::Swing));
    it.apply(Action::Scrub(0.0));
    it
}

/// How far the second bat is behind the first, m.
fn behind_m(it: &Studio) -> f64 {
    let scene = it.scene(ROOM).unwrap();
    scene.figures[1].way.behind_m(scene.figures[0].way)
}

#[test]
fn nothing_is_behind_at_the_start_and_the_lag_opens_towards_the_ball() {
    let mut it = settled();
    assert_eq!(behind_m(&it), 0.0);
    let first_s = it.stroke_time_s(0).unwrap();
    let mut before_m = 0.0;
    for share in [0.4, 0.6, 0.8, 1.0] {
        it.apply(Action::Scrub(share * first_s));
        let now_m = behind_m(&it);
        assert!(now_m > before_m, "{share} of the stroke: {now_m} m after {before_m} m");
        before_m = now_m;
    }
    // When the first meets the ball, the second has the rest of its own way to go.
    let rest = it.scene(ROOM).unwrap().figures[1].way;
    assert!((before_m - (rest.whole_m - rest.gone_m)).abs() < 1e-6, "{before_m} {rest:?}");
    // Swapped, it is the other that is behind.
    it.apply(Action::FirstBat(1));
    it.apply(Action::SecondBat(0));
    it.apply(Action::Scrub(first_s));
    assert!((behind_m(&it) + before_m).abs() < 0.1 * before_m, "{} {before_m}", behind_m(&it));
}

#[test]
fn the_large_figure_and_the_sentence_are_of_the_same_bat_and_score() {
    let mut it = settled();
    for runs in [0, 50] {
        it.apply(Action::Score(runs));
        let large = it.apart_in_large().unwrap();
        let [a, b] = [0, 1].map(|slot| it.stroke_time_s(slot).unwrap());
        let ms = format!("{:.0}\u{2009}ms", 1e3 * (b - a).abs());
        assert!(large.words.contains(&ms) && large.words.starts_with('B'), "{} {ms}", large.words);
        assert!(large.under.contains('±'), "{}", large.under);
        let sentence = it.pair_sentence();
        assert!(sentence.contains(&ms), "{sentence}: {ms}");
        assert_eq!(large.under.contains("fresh"), runs == 0, "{}", large.under);
    }
}

#[test]
fn in_the_same_time_both_meet_the_ball_at_once_and_the_heavier_asks_more_of_the_wrists() {
    let mut it = settled();
    it.apply(Action::SameTime(true));
    let [a, b] = [0, 1].map(|slot| it.stroke_time_s(slot).unwrap());
    assert!((a - b).abs() < 0.002, "{a} and {b} s");
    let large = it.apart_in_large().unwrap();
    assert!(large.words.starts_with('B') && large.words.contains("more of the wrists"));
    let most = |slot: usize| {
        let through = it.through(slot);
        through.iter().map(|it| it.wrist_share[0] + it.wrist_share[1]).sum::<f64>()
    };
    assert!(most(1) > most(0), "{} {}", most(1), most(0));
}

#[test]
fn the_bat_that_is_harder_to_get_moving_is_the_ghost_whichever_comes_first() {
    let mut it = settled();
    assert_eq!(it.ghost(), Some(1));
    it.apply(Action::FirstBat(1));
    it.apply(Action::SecondBat(0));
    assert_eq!(it.ghost(), Some(0));
    it.apply(Action::ShowSecond(false));
    assert_eq!(it.ghost(), None);
}

#[test]
fn the_hand_tells_of_a_pair_in_either_order() {
    let it = settled();
    let shown = it.compared().unwrap();
    let [on, off] = [[0, 1], [1, 0]].map(|pair| in_hand(shown, pair));
    assert!(on.contains("taped to the toe of Old faithful"), "{on}");
    assert!(off.contains("taken off the toe of Big edges"), "{off}");
}

#[test]
fn the_makers_pair_gives_way_to_the_bats_that_were_swung_before() {
    let mut it = demo();
    it.apply(Action::FirstBat(0));
    it.apply(Action::SecondBat(3));
    it.apply(Action::View(View::Pickup));
    assert_ne!(it.playback.bats, [0, 3]);
    it.apply(Action::View(View::Swing));
    assert_eq!(it.playback.bats, [0, 3]);
    it.apply(Action::View(View::Pickup));
    it.apply(Action::SecondBat(2));
    let chosen = it.playback.bats;
    it.apply(Action::View(View::Swing));
    assert_eq!(it.playback.bats, chosen);
}

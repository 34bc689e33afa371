//! Whose answers are on the screen: never those about other bats, or another player.

use tempfile::tempdir;

use super::{demo, killed, pass_until, searched_demo, set, settled_demo};
use crate::studio::action::{Action, View};
use crate::studio::recovery::Recovery;
use crate::studio::state::Studio;

/// Whether anything that was worked out of bats is on the screen.
fn tells(it: &Studio) -> [bool; 4] {
    let innings = it.innings(0).is_some() || it.innings(1).is_some();
    [it.advice().is_some(), it.compared().is_some(), it.fitted().is_some(), innings]
}

#[test]
fn restored_work_on_other_bats_shows_nothing_of_the_bats_before() {
    let folder = tempdir().unwrap();
    let recovery = Recovery::within(folder.path().join("state"));
    killed(None, &recovery, |it| {
        it.apply(Action::New);
        for (path, value) in [
            ("strokes", "pull"),
            ("player.age", "12"),
            ("player.sex", "female"),
            ("player.stature", "4 ft 11 in"),
            ("bats.0.label", "Plank"),
            ("bats.0.mass", "2 lb 1 oz"),
            ("bats.1.label", "Twig"),
            ("bats.1.mass", "1 lb 15 oz"),
        ] {
            set(it, path, value);
        }
    });

    let mut it = Studio::new(None, recovery).unwrap();
    it.answers = searched_demo().answers.clone();
    assert_eq!(tells(&it), [true; 4]);
    it.apply(Action::Fit);
    it.apply(Action::Rescue);
    assert_eq!(it.label(0), "Plank");
    assert_eq!(tells(&it), [false; 4]);
    assert!(it.pair_sentence().contains("being worked out"), "{}", it.pair_sentence());
    // What was under way for the bats before does not come later.
    it.tick(0.0);
    assert!(it.work.job(crate::studio::work::Question::Fit).is_none());
    it.apply(Action::View(View::Bench));
    pass_until(&mut it, |it| it.advice().is_some());
    let (_, now) = it.advice().unwrap();
    assert_eq!(now.today.given[0].label, "Plank");
    // Back: what was found for the bats before is there again, and only that.
    it.apply(Action::Undo);
    assert!(it.advice().is_none_or(|(_, now)| now.today.given[0].label == "Old faithful"));
}

#[test]
fn a_changed_weight_leaves_the_figures_there_and_says_that_they_are_old() {
    let mut it = settled_demo();
    set(&mut it, "bats.0.mass", "2 lb 5 oz");
    assert_eq!(tells(&it), [true, true, false, true]);
    assert!(it.is_pending(0) && !it.is_advised() && !it.is_compared());
    // One more bat is named in none of them.
    it.apply(Action::AddBat);
    assert_eq!(tells(&it), [true, true, false, true]);
}

#[test]
fn a_bat_that_was_renamed_taken_away_or_put_elsewhere_is_not_told_of_by_its_old_name() {
    let mut it = settled_demo();
    set(&mut it, "bats.0.label", "Other");
    assert_eq!(tells(&it)[0..3], [false; 3]);
    assert!(it.innings(0).is_none() && it.innings(1).is_some(), "the other bat is the same");
    it.apply(Action::Undo);
    assert_eq!(tells(&it)[0..2], [true; 2], "what was computed once is there at once");
    it.apply(Action::RemoveBat(0));
    assert_eq!(tells(&it)[0..2], [false; 2]);
    assert!(it.innings(0).is_none_or(|at| it.derived.bat_keys.contains(&at.key)));
    // With another fault in the text it is the same.
    it.apply(Action::Undo);
    set(&mut it, "bats.3.mass", "heavy");
    assert!(it.derived.loaded.is_some());
    it.apply(Action::RemoveBat(0));
    assert!(it.derived.is_stale() && it.derived.loaded.is_none());
}

#[test]
fn a_bat_taken_away_leaves_the_others_chosen_as_they_were() {
    let mut it = demo();
    it.apply(Action::SecondBat(3));
    it.apply(Action::FirstBat(2));
    it.apply(Action::BenchBat(1));
    let chosen = |it: &Studio| it.playback.bats.map(|bat| it.label(bat));
    let before = chosen(&it);
    it.apply(Action::RemoveBat(0));
    assert_eq!((chosen(&it), it.label(it.bench_bat)), (before, "Big edges".to_owned()));
}

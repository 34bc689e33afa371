//! Work in the background: it comes, it is marked while it is old, it can be stopped; and what is kept of what came.

use std::sync::Arc;
use std::sync::mpsc::channel;
use std::time::{Duration, Instant};

use backlift::files::fault::Fault;
use backlift::innings::played::StrokeNow;

use super::{pass_until, pull_demo, searched_demo, settle, settled_demo};
use crate::outcome::Stop;
use crate::studio::action::{Action, View};
use crate::studio::answers::Answers;
use crate::studio::work::{Question, Wake};

#[test]
fn the_innings_of_both_bats_come_by_themselves_and_are_old_after_a_change() {
    let mut it = pull_demo();
    pass_until(&mut it, |it| !it.is_pending(0) && !it.is_pending(1));
    let innings = it.innings(0).unwrap().it;
    let pull = innings.stroke("pull").unwrap();
    let fresh = innings.at(pull, 0.0, StrokeNow::bat_speed_m_s).unwrap();
    let late = innings.at(pull, 50.0, StrokeNow::bat_speed_m_s).unwrap();
    // Nobody is tired at nought: one swing, found from three starts to 1e-8 of its time.
    assert!(fresh.high - fresh.low < 1e-6 && fresh.low <= fresh.best && fresh.best <= fresh.high);
    assert!(late.low < late.best && late.best < late.high && late.high < fresh.best);
    it.apply(Action::Set("bats.0.mass".into(), "2 lb 4 oz".into()));
    assert!(it.is_pending(0) && !it.is_pending(1));
    pass_until(&mut it, |it| !it.is_pending(0));
    it.apply(Action::Undo);
    it.apply(Action::Set("bats.0.mass".into(), "2 lb 5 oz".into()));
    assert!(it.is_pending(0));
    assert!(it.innings(0).is_some(), "the old figures stay on the screen meanwhile");
    it.apply(Action::Undo);
    assert!(!it.is_pending(0), "what was computed once is there at once");
}

#[test]
fn a_search_can_be_stopped_and_leaves_nothing_behind() {
    let mut it = settled_demo();
    let (told, ends) = channel();
    // Only what comes to an end calls at once.
    it.work.wake = Wake::new(move |within| {
        let _ = within.is_zero().then(|| told.send(()));
    });
    it.apply(Action::View(View::Map));
    assert!(it.work.job(Question::Fit).is_some());
    it.apply(Action::CancelFit);
    assert!(it.work.job(Question::Fit).is_none());
    ends.recv_timeout(Duration::from_secs(60)).unwrap();
    settle(&mut it);
    assert!(it.fitted().is_none());
}

#[test]
fn the_search_gives_a_card_and_figures_in_the_same_picture_within_the_stated_error() {
    let mut it = searched_demo();
    assert!(!it.is_fit_stale());
    let fitted = it.fitted().unwrap().it;
    let ordered = fitted.fitting.ordered_on_map();
    let error_share = fitted.fitting.surrogate_error();
    // A dragged bat answers before anybody notices, a slow machine included; other facts swing on threads of theirs.
    let own = rayon::ThreadPoolBuilder::new().num_threads(2).build().unwrap();
    let started = Instant::now();
    let live = fitted.fitting.bat_at(ordered.bat.mass_kg(), ordered.bat.balance_m());
    let live = own.install(|| live.and_then(|it| fitted.fitting.on_map(it))).unwrap();
    assert!(started.elapsed() < Duration::from_millis(100), "{:?}", started.elapsed());
    assert_eq!([live.pull_error_share, live.worth_error_share], [error_share; 2]);
    // The bat to order has a swing moment of its own, a little off that of the usual spread of mass.
    let (live_m_s, truth_m_s) = (live.pull_m_s.unwrap(), ordered.pull_m_s.unwrap());
    assert!((live_m_s / truth_m_s - 1.0).abs() < 0.02, "{live_m_s} for {truth_m_s} m/s");
    let apart_m_s = live.worth.mean_m_s() - ordered.worth.mean_m_s();
    assert!(apart_m_s.abs() < 0.02 * ordered.worth.mean_m_s(), "{apart_m_s}");
    it.apply(Action::Set("player.grip_top".into(), "24 kg".into()));
    assert!(it.is_fit_stale());
}

fn take(it: &mut Answers, question: Question, key: u64) {
    it.take(question, key, Ok(Arc::new(key)));
}

#[test]
fn the_oldest_answer_goes_first_and_the_last_to_each_question_stays() {
    let mut it = Answers::default();
    take(&mut it, Question::Innings(1), 0);
    let most = Question::Innings(0).most_kept() as u64;
    (1..=2 * most).for_each(|key| take(&mut it, Question::Innings(0), key));
    assert_eq!(it.get::<u64>(0), Some(&0), "it is the last of the second bat");
    let kept: Vec<u64> = (1..=2 * most).filter(|key| it.has(*key)).collect();
    assert_eq!(kept, (most + 2..=2 * most).collect::<Vec<_>>());
    assert_eq!(it.last::<u64>(Question::Innings(0)).map(|it| it.key), Some(2 * most));
}

#[test]
fn a_fault_leaves_the_answer_that_there_was_and_a_new_answer_ends_it() {
    let mut it = Answers::default();
    take(&mut it, Question::Fit, 1);
    it.take(Question::Fit, 2, Err(Stop::NoAnswer(Fault::new("no bat can be made"))));
    assert_eq!((it.get::<u64>(1), it.faults(2).len()), (Some(&1), 1));
    assert_eq!(it.last::<u64>(Question::Fit).map(|it| it.key), Some(1));
    it.take(Question::Fit, 3, Err(Stop::Cancelled));
    assert!(!it.has(3));
    take(&mut it, Question::Fit, 2);
    assert!(it.faults(2).is_empty() && it.get::<u64>(2).is_some());
}

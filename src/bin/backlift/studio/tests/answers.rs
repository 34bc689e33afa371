//! What came of questions, and what is kept of it.

use std::sync::Arc;

use backlift::files::fault::Fault;

use crate::outcome::Stop;
use crate::studio::answers::Answers;
use crate::studio::work::Question;

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

//! Answers that came, each with what it hangs on, so that an old one is known for what it is: one of an earlier text may
//! stand on the screen only while the hands and the bats it names are still those that the screen names.

use std::any::Any;
use std::collections::VecDeque;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::sync::Arc;

use backlift::files::document::TextFile;
use backlift::files::fault::{Fault, Faults};
use backlift::files::scenario::ScenarioV1;
use backlift::measurement::person::{Handed, Sex};
use backlift::questions::loaded::Loaded;

use super::work::{Answer, Question};
use crate::outcome::Stop;

/// An answer with what it hangs on.
pub struct Keyed<'a, T> {
    pub key: u64,
    pub it: &'a T,
}

/// All that came of questions, the oldest first.
#[derive(Clone, Default)]
pub struct Answers {
    kept: VecDeque<Kept>,
    whose: Whose,
}

/// What came of one question.
#[derive(Clone)]
struct Kept {
    question: Question,
    whose: Whose,
    key: u64,
    came: Result<Answer, Vec<Fault>>,
}

impl Answers {
    /// Whose answers are shown and taken in from now on; whether those that come of work under way still are such.
    pub fn turn_to(&mut self, whose: Whose) -> bool {
        let goes_on = self.whose.may_stand_for(&whose);
        self.whose = whose;
        goes_on
    }

    /// Takes in what came of a question. A search that was stopped leaves no trace.
    pub fn take(&mut self, question: Question, key: u64, came: Result<Answer, Stop>) {
        let came = match came {
            Err(Stop::Cancelled) => return,
            came => came.map_err(told),
        };
        // Both tell of the same innings.
        let question = match question {
            Question::Finer(bat) => Question::Innings(bat),
            other => other,
        };
        let new = Kept { question, whose: self.whose.clone(), key, came };
        self.kept.retain(|it| it.key != key || !it.gives_way_to(&new));
        self.kept.push_back(new);
        if let Some(oldest) = self.too_many(question) {
            self.kept.remove(oldest);
        }
    }

    /// The oldest of a kind of which there are too many. The last answer to a question stays: it may be on the screen.
    fn too_many(&self, question: Question) -> Option<usize> {
        let kind = std::mem::discriminant(&question);
        let alike = |it: &Kept| std::mem::discriminant(&it.question) == kind;
        if self.kept.iter().filter(|it| alike(it)).count() <= question.most_kept() {
            return None;
        }
        let is_answered_since = |(n, it): (usize, &Kept)| {
            let mut since = self.kept.iter().skip(n + 1);
            alike(it) && since.any(|new| new.question == it.question && it.gives_way_to(new))
        };
        self.kept.iter().enumerate().position(is_answered_since)
    }

    /// Whether there is an answer, or why there is none.
    pub fn has(&self, key: u64) -> bool {
        self.kept.iter().any(|it| it.key == key)
    }

    pub fn get<T: Any>(&self, key: u64) -> Option<&T> {
        self.kept.iter().filter(|it| it.key == key).find_map(Kept::answer)
    }

    /// The same to be worked with on another thread.
    pub fn shared<T: Any + Send + Sync>(&self, key: u64) -> Option<Arc<T>> {
        let found = self.kept.iter().filter(|it| it.key == key);
        found.filter_map(|it| Arc::clone(it.came.as_ref().ok()?).downcast().ok()).next()
    }

    /// The last answer to a question, whatever figures it hangs on; of another player or other bats it is none.
    pub fn last<T: Any>(&self, question: Question) -> Option<Keyed<'_, T>> {
        let is_theirs =
            |it: &Kept| !question.is_of_scenario() || it.whose.may_stand_for(&self.whose);
        let all = self.kept.iter().rev().filter(|it| it.question == question);
        let mut asked = all.filter(|it| is_theirs(it));
        asked.find_map(|it| Some(Keyed { key: it.key, it: it.answer()? }))
    }

    pub fn faults(&self, key: u64) -> &[Fault] {
        let found = self.kept.iter().filter(|it| it.key == key);
        found.filter_map(|it| it.came.as_ref().err()).next().map_or(&[], Vec::as_slice)
    }

    /// That there was no answer does not stand in the way of asking again.
    pub fn retry(&mut self, key: u64) {
        self.kept.retain(|it| it.key != key || it.came.is_ok());
    }

    pub fn forget(&mut self, which: impl Fn(Question) -> bool) {
        self.kept.retain(|it| !which(it.question));
    }
}

impl Kept {
    fn answer<T: Any>(&self) -> Option<&T> {
        self.came.as_ref().ok()?.downcast_ref()
    }

    /// Whether it is of no use beside what came now: a fault leaves the answer that there was.
    fn gives_way_to(&self, new: &Self) -> bool {
        new.came.is_ok() || self.came.is_err()
    }
}

/// The player and the bats as they are called.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Whose {
    title: String,
    /// Age, years, sex, stature, m, and batting hand; none where it was never understood.
    player: Option<(f64, Sex, f64, Handed)>,
    labels: Vec<String>,
}

impl Whose {
    /// Those of a document; of the player what was last understood.
    pub fn of(document: &TextFile<ScenarioV1>, loaded: Option<&Loaded>) -> Self {
        let player = loaded.map(|it| {
            let who = &it.scenario.player;
            (who.age_y, who.sex, who.stature_m, who.handed)
        });
        Self {
            title: document.at("title"),
            player,
            labels: (0..document.bat_count()).map(|bat| document.label(bat)).collect(),
        }
    }

    /// Whether an answer about these may be shown where `now` is on the screen: every bat it may name is still in its
    /// place. One that was added since is not named in it.
    pub fn may_stand_for(&self, now: &Self) -> bool {
        let is_same = self.player == now.player && self.title == now.title;
        is_same && now.labels.starts_with(&self.labels)
    }
}

/// Why there is no answer, as faults.
pub fn told(stop: Stop) -> Vec<Fault> {
    match stop {
        Stop::WrongInput(Faults(faults)) => faults,
        Stop::NoAnswer(fault) => vec![fault],
        Stop::Cancelled => Vec::new(),
        Stop::OurMistake(what) => {
            vec![Fault::new(what).help("this is a mistake in Backlift, not in what you gave it")]
        }
    }
}

/// The key of what hangs on these; its first word says what it is a key of.
pub fn key(of: impl Hash) -> u64 {
    let mut hasher = DefaultHasher::new();
    of.hash(&mut hasher);
    hasher.finish()
}

/// The key of a value that cannot be hashed: values that print alike are alike. Printing takes its time, so this is asked
/// where the value changes and not in every picture.
pub fn key_of(it: &impl std::fmt::Debug) -> u64 {
    key(format!("{it:?}"))
}

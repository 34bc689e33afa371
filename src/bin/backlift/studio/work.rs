//! Long work on threads of its own: asked with a plain question, answered with a plain answer, told of
//! as it goes, stopped when nobody waits for it any more. A thread that has something to tell calls a window that sleeps.

use std::any::Any;
use std::ops::ControlFlow;
use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::time::Duration;

use backlift::questions::Progress;

use crate::outcome::Stop;

/// How far work has come is shown within so long.
const TOLD_WITHIN: Duration = Duration::from_millis(100);

/// How a window is called; nobody where there is none.
#[derive(Clone)]
pub struct Wake(Arc<dyn Fn(Duration) + Send + Sync>);

impl Wake {
    /// `call` shows another picture within so long.
    pub fn new(call: impl Fn(Duration) + Send + Sync + 'static) -> Self {
        Self(Arc::new(call))
    }

    /// Shows what there is at once.
    pub fn now(&self) {
        self.within(Duration::ZERO);
    }

    /// Shows it within so long, with what else there may be by then.
    pub fn within(&self, so_long: Duration) {
        (self.0)(so_long);
    }
}

impl Default for Wake {
    fn default() -> Self {
        Self::new(|_| {})
    }
}

/// What can be asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Question {
    /// A bat through the innings, by its place.
    Innings(usize),
    /// More scores of it.
    Finer(usize),
    /// Two bats and every difference between them.
    Compare([usize; 2]),
    /// In which time each stroke is asked for, s: the same for every bat in these hands.
    AskedTimes,
    /// Which of today's bats to use.
    Today,
    /// What an ounce costs along a bat, by its place.
    Ounce(usize),
    /// The map and the bat to order.
    Fit,
    CardPicture,
    CardFiles,
    /// A clip or a page.
    Pictures,
    /// Shapes that meet a card.
    Carve,
    /// Templates and solid of a described bat.
    WoodFiles,
}

impl Question {
    /// Answers of its kind that are kept, so that undo has its figures at once.
    pub fn most_kept(self) -> usize {
        match self {
            Self::Innings(_) | Self::Finer(_) | Self::Compare(_) | Self::Ounce(_) => 32,
            _ => 1,
        }
    }

    /// Whether it is asked of the player and the bats of the scenario.
    pub fn is_of_scenario(self) -> bool {
        !matches!(self, Self::Carve | Self::WoodFiles)
    }

    /// Whether its answer is files that were written.
    pub fn is_for_files(self) -> bool {
        matches!(self, Self::CardFiles | Self::Pictures | Self::WoodFiles)
    }

    /// Whether what came of it has a place of its own on the screen.
    pub fn has_a_place(self) -> bool {
        !self.is_for_files() && !matches!(self, Self::Fit | Self::CardPicture | Self::Carve)
    }
}

/// What a view asks for before what every view asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Need {
    /// The map and the bat to order, once it is looked at.
    Fit,
    CardPicture,
    /// Which bat to use today, before the innings.
    Today,
    /// What an ounce costs along the first bat.
    Ounces,
    /// What is sure of the difference of the two bats, before the advice on today's.
    Pair,
    /// The planing plan.
    Plan,
}

/// What comes back: to each question a value of its own kind.
pub type Answer = Arc<dyn Any + Send + Sync>;

/// Files that were written.
pub struct Written {
    pub files: usize,
    pub folder: PathBuf,
}

/// Work under way.
pub struct Job {
    pub question: Question,
    /// What the answer hangs on.
    pub key: u64,
    pub doing: String,
    /// Share of it that is done.
    pub share: f64,
    number: u64,
    cancelled: Arc<AtomicBool>,
}

/// Something that came from a thread.
pub struct Report {
    pub question: Question,
    pub key: u64,
    pub answer: Result<Answer, Stop>,
}

enum Word {
    Doing(String, f64),
    Part(Answer),
    Done(Result<Answer, Stop>),
}

/// All work under way.
pub struct Work {
    /// Called when there is something to tell.
    pub wake: Wake,
    jobs: Vec<Job>,
    next: u64,
    /// Each with the number of its job.
    sender: Sender<(u64, Word)>,
    receiver: Receiver<(u64, Word)>,
}

impl Default for Work {
    fn default() -> Self {
        let (sender, receiver) = channel();
        Self { wake: Wake::default(), jobs: Vec::new(), next: 0, sender, receiver }
    }
}

impl Work {
    /// Starts a task, which may tell of parts of its answer before; work on the same question for another key is
    /// stopped.
    pub fn start<T: Any + Send + Sync>(
        &mut self,
        question: Question,
        key: u64,
        task: impl FnOnce(&dyn Progress, &dyn Fn(T)) -> Result<T, Stop> + Send + 'static,
    ) {
        if self.job(question).is_some_and(|it| it.key == key) {
            return;
        }
        self.cancel(|it| it == question);
        let (number, cancelled) = (self.next, Arc::new(AtomicBool::new(false)));
        self.next += 1;
        let doing = "starting".to_owned();
        let stop = Arc::clone(&cancelled);
        self.jobs.push(Job { question, key, doing, share: 0.0, number, cancelled: stop });
        let (words, told) = (self.sender.clone(), self.sender.clone());
        let (wake, soon) = (self.wake.clone(), self.wake.clone());
        let progress = move |doing: &str, share: f64| {
            if cancelled.load(Ordering::Relaxed) {
                return ControlFlow::Break(());
            }
            // The window is gone when nobody listens.
            let _ = told.send((number, Word::Doing(doing.to_owned(), share)));
            soon.within(TOLD_WITHIN);
            ControlFlow::Continue(())
        };
        std::thread::spawn(move || {
            let work = || {
                let answered = task(&progress, &|part| {
                    let _ = words.send((number, Word::Part(Arc::new(part))));
                    wake.now();
                });
                answered.map(|it| Arc::new(it) as Answer)
            };
            let answered = std::panic::catch_unwind(std::panic::AssertUnwindSafe(work))
                .unwrap_or_else(|_| Err(Stop::OurMistake("the work broke off".to_owned())));
            let _ = words.send((number, Word::Done(answered)));
            wake.now();
        });
    }

    pub fn cancel(&mut self, which: impl Fn(Question) -> bool) {
        let stopped = self.jobs.extract_if(.., |it| which(it.question));
        stopped.for_each(|it| it.cancelled.store(true, Ordering::Relaxed));
    }

    pub fn job(&self, question: Question) -> Option<&Job> {
        self.jobs.iter().find(|it| it.question == question)
    }

    pub fn is_idle(&self) -> bool {
        self.jobs.is_empty()
    }

    /// What came since the last time.
    pub fn reports(&mut self) -> Vec<Report> {
        let mut reports = Vec::new();
        while let Ok((number, word)) = self.receiver.try_recv() {
            // What nobody waits for any more is let fall.
            let Some(job) = self.jobs.iter_mut().find(|it| it.number == number) else { continue };
            let (question, key) = (job.question, job.key);
            match word {
                Word::Doing(doing, share) => (job.doing, job.share) = (doing, share),
                Word::Part(part) => reports.push(Report { question, key, answer: Ok(part) }),
                Word::Done(answer) => {
                    self.jobs.retain(|it| it.number != number);
                    reports.push(Report { question, key, answer });
                }
            }
        }
        reports
    }
}

/// A window that closes leaves no work behind.
impl Drop for Work {
    fn drop(&mut self) {
        self.cancel(|_| true);
    }
}

//! Long work on threads of its own: asked with a plain question, answered with a plain answer, told of
//! as it goes, stopped when nobody waits for it any more.

use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, Sender, channel};

use super::card::CardPicture;
use super::innings::{Before, Innings};
use super::today::Advice;
use crate::outcome::Stop;
use crate::progress::Progress;
use backlift::questions::Progress as _;
use backlift::questions::compared::Shown;
use backlift::questions::fitted::Fitted;
use backlift::questions::loaded::Loaded;
use backlift::questions::ounces::Ounces;

/// What can be asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Question {
    /// A bat through the innings, by its place.
    Innings(usize),
    /// More scores of it.
    Finer(usize),
    /// Two bats and every difference between them.
    Compare([usize; 2]),
    /// Which of today's bats to use.
    Today,
    /// What an ounce costs along a bat, by its place.
    Ounce(usize),
    /// The map and the bat to order.
    Fit,
    /// The card as a picture.
    CardPicture,
    /// The files of a card.
    CardFiles,
    /// A clip or a page.
    Pictures,
    /// Shapes that meet a card.
    Carve,
    /// Templates and solid of a described bat.
    WoodFiles,
}

/// What comes back.
#[derive(Clone)]
pub enum Answer {
    /// To [`Question::Innings`]; more of it may follow.
    Innings(Arc<Innings>),
    /// To [`Question::Compare`].
    Compared(Arc<Shown>),
    /// To [`Question::Today`].
    Today(Arc<Advice>),
    /// To [`Question::Ounce`].
    Ounces(Arc<Ounces>),
    /// To [`Question::Fit`].
    Fitted(Arc<Fitted>),
    /// To [`Question::CardPicture`].
    Picture(Arc<CardPicture>),
    /// To [`Question::Carve`].
    Carved(Arc<backlift::workshop::to_card::ToCard>),
    /// To questions for files: how many, and where.
    Written(usize, PathBuf),
}

/// Work with an answer; it may tell of parts of it before.
pub type Task = Box<dyn FnOnce(&Progress, &dyn Fn(Answer)) -> Result<Answer, Stop> + Send>;

/// Work under way.
pub struct Job {
    /// What was asked.
    pub question: Question,
    /// What the answer hangs on.
    pub key: u64,
    /// What is being done.
    pub doing: String,
    /// Share of it that is done.
    pub share: f64,
    number: u64,
    cancelled: Arc<AtomicBool>,
}

/// Something that came from a thread.
pub struct Report {
    /// What was asked.
    pub question: Question,
    /// What the answer hangs on.
    pub key: u64,
    /// The answer, or why there is none.
    pub answer: Result<Answer, Stop>,
}

enum Word {
    Doing(u64, String, f64),
    Part(u64, Answer),
    Done(u64, Result<Answer, Stop>),
}

/// All work under way.
pub struct Work {
    jobs: Vec<Job>,
    next: u64,
    sender: Sender<Word>,
    receiver: Receiver<Word>,
}

impl Default for Work {
    fn default() -> Self {
        let (sender, receiver) = channel();
        Self { jobs: Vec::new(), next: 0, sender, receiver }
    }
}

impl Work {
    /// Starts what is asked of a scenario.
    pub fn ask(&mut self, question: Question, key: u64, loaded: Arc<Loaded>) {
        self.ask_on(question, key, loaded, Before::default());
    }

    /// The same, going on from what is known.
    pub fn ask_on(&mut self, question: Question, key: u64, loaded: Arc<Loaded>, before: Before) {
        let task = move |progress: &Progress, part: &dyn Fn(Answer)| {
            answer(question, &loaded, &before, progress, part)
        };
        self.start(question, key, Box::new(task));
    }

    /// Starts a task; work on the same question for another key is stopped.
    pub fn start(&mut self, question: Question, key: u64, task: Task) {
        if self.job(question).is_some_and(|it| it.key == key) {
            return;
        }
        self.cancel(question);
        let (number, cancelled) = (self.next, Arc::new(AtomicBool::new(false)));
        self.next += 1;
        let doing = "starting".to_owned();
        let stop = Arc::clone(&cancelled);
        self.jobs.push(Job { question, key, doing, share: 0.0, number, cancelled: stop });
        let (words, told) = (self.sender.clone(), self.sender.clone());
        let listener = move |doing: &str, share: f64| {
            // The window is gone when nobody listens.
            let _ = told.send(Word::Doing(number, doing.to_owned(), share));
        };
        std::thread::spawn(move || {
            let progress = Progress::told(cancelled, Box::new(listener));
            let work = || {
                task(&progress, &|part| {
                    let _ = words.send(Word::Part(number, part));
                })
            };
            let answered = std::panic::catch_unwind(std::panic::AssertUnwindSafe(work))
                .unwrap_or_else(|_| Err(Stop::OurMistake("the work broke off".to_owned())));
            let _ = words.send(Word::Done(number, answered));
        });
    }

    /// Stops.
    pub fn cancel(&mut self, question: Question) {
        self.jobs.retain(|it| {
            let stays = it.question != question;
            if !stays {
                it.cancelled.store(true, Ordering::Relaxed);
            }
            stays
        });
    }

    /// Work under way on a question.
    pub fn job(&self, question: Question) -> Option<&Job> {
        self.jobs.iter().find(|it| it.question == question)
    }

    /// Whether anything is under way.
    pub fn is_idle(&self) -> bool {
        self.jobs.is_empty()
    }

    /// What came since the last time.
    pub fn reports(&mut self) -> Vec<Report> {
        let mut reports = Vec::new();
        while let Ok(word) = self.receiver.try_recv() {
            let (Word::Doing(number, ..) | Word::Part(number, _) | Word::Done(number, _)) = &word;
            // What nobody waits for any more is let fall.
            let Some(n) = self.jobs.iter().position(|it| it.number == *number) else { continue };
            let Some(job) = self.jobs.get_mut(n) else { continue };
            let (question, key) = (job.question, job.key);
            match word {
                Word::Doing(_, doing, share) => (job.doing, job.share) = (doing, share),
                Word::Part(_, part) => reports.push(Report { question, key, answer: Ok(part) }),
                Word::Done(_, answer) => {
                    self.jobs.remove(n);
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
        for it in &self.jobs {
            it.cancelled.store(true, Ordering::Relaxed);
        }
    }
}

fn answer(
    question: Question,
    loaded: &Arc<Loaded>,
    before: &Before,
    progress: &Progress,
    part: &dyn Fn(Answer),
) -> Result<Answer, Stop> {
    match question {
        Question::Innings(bat) | Question::Finer(bat) => {
            let tell = |it: Innings| part(Answer::Innings(Arc::new(it)));
            Ok(Answer::Innings(Arc::new(Innings::play(loaded, bat, before, progress, &tell)?)))
        }
        Question::Compare(pair) => {
            let bats = pair.iter().filter_map(|it| loaded.bats.get(*it).cloned()).collect();
            Ok(Answer::Compared(Arc::new(backlift::questions::compared::compared(
                loaded, bats, progress,
            )?)))
        }
        Question::CardPicture
        | Question::CardFiles
        | Question::Pictures
        | Question::Carve
        | Question::WoodFiles => Err(Stop::OurMistake(
            "what follows from other answers is started on its own".to_owned(),
        )),
        Question::Today => {
            Ok(Answer::Today(Arc::new(Advice::of(loaded, before.advice.as_deref(), progress)?)))
        }
        Question::Ounce(bat) => {
            Ok(Answer::Ounces(Arc::new(ounces(loaded, bat, before, progress)?)))
        }
        Question::Fit => {
            let loaded = Loaded::clone(loaded);
            Ok(Answer::Fitted(Arc::new(backlift::questions::fitted::fitted(loaded, progress)?)))
        }
    }
}

/// What an ounce costs along a bat at fifty runs.
fn ounces(
    loaded: &Loaded,
    bat: usize,
    before: &Before,
    progress: &Progress,
) -> Result<Ounces, Stop> {
    let Some(weighed) = loaded.bats.get(bat) else {
        return Err(Stop::OurMistake(format!("there is no bat {bat}")));
    };
    progress.step("putting an ounce here and there", 0.0)?;
    let batter = loaded.batter(weighed, 1.0)?;
    let asked_time_s = match &before.asked_time_s {
        Some(known) => known.clone(),
        None => loaded.asked_times_s(&batter)?,
    };
    progress.step("putting an ounce here and there", 0.3)?;
    Ounces::at_fifty(loaded, weighed, &batter, &asked_time_s)
}

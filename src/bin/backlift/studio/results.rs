//! Answers that came, each with what it hangs on, so that an old one is known for what it is.

use std::collections::BTreeMap;
use std::path::PathBuf;
use std::sync::Arc;

use backlift::files::fault::Fault;

use super::card::CardPicture;
use super::derived::told;
use super::innings::Innings;
use super::today::Advice;
use super::work::{Answer, Question, Report};
use crate::outcome::Stop;
use backlift::questions::compared::Shown;
use backlift::questions::fitted::Fitted;
use backlift::questions::ounces::Ounces;

/// An answer with what it hangs on.
pub struct Keyed<T> {
    /// What it hangs on.
    pub key: u64,
    /// The answer.
    pub it: Arc<T>,
}

impl<T> Clone for Keyed<T> {
    fn clone(&self) -> Self {
        Self { key: self.key, it: Arc::clone(&self.it) }
    }
}

/// Answers so far.
#[derive(Default)]
pub struct Results {
    innings: BTreeMap<u64, Arc<Innings>>,
    lately: BTreeMap<usize, Keyed<Innings>>,
    /// For the player last swung, in which time each stroke is asked for, s.
    asked: Option<(u64, Vec<f64>)>,
    /// The pair compared last.
    pub compared: Option<Keyed<Shown>>,
    /// Which pair that was.
    pub compared_bats: [usize; 2],
    ounces: BTreeMap<u64, Arc<Ounces>>,
    /// The last advice on today's bats.
    pub today: Option<Keyed<Advice>>,
    /// The last fitting.
    pub fitted: Option<Keyed<Fitted>>,
    /// The card as a picture.
    pub picture: Option<Keyed<CardPicture>>,
    /// Files of a card that were written, not yet told: how many, and where.
    pub written: Option<(usize, PathBuf)>,
    /// Questions without an answer, by what they hang on.
    pub failed: BTreeMap<u64, Vec<Fault>>,
}

/// Innings kept, so that undo has its figures at once.
const MOST: usize = 32;

impl Results {
    /// Takes an answer in. A search that was stopped leaves no trace.
    pub fn take(&mut self, report: Report) {
        let key = report.key;
        match (report.question, report.answer) {
            (Question::Innings(bat) | Question::Finer(bat), Ok(Answer::Innings(it))) => {
                if self.innings.len() >= MOST {
                    self.innings.pop_first();
                }
                self.innings.insert(key, Arc::clone(&it));
                self.lately.insert(bat, Keyed { key, it });
            }
            (Question::Compare(pair), Ok(Answer::Compared(it))) => {
                self.compared = Some(Keyed { key, it });
                self.compared_bats = pair;
            }
            (Question::Ounce(_), Ok(Answer::Ounces(it))) => {
                if self.ounces.len() >= MOST {
                    self.ounces.pop_first();
                }
                self.ounces.insert(key, it);
            }
            (Question::Today, Ok(Answer::Today(it))) => self.today = Some(Keyed { key, it }),
            (Question::Fit, Ok(Answer::Fitted(it))) => self.fitted = Some(Keyed { key, it }),
            (_, Ok(Answer::Picture(it))) => self.picture = Some(Keyed { key, it }),
            (_, Ok(Answer::Written(files, folder))) => self.written = Some((files, folder)),
            (_, Err(Stop::Cancelled)) => {}
            (_, Err(stop)) => {
                self.failed.insert(key, told(stop));
            }
            _ => {}
        }
    }

    /// Remembers the times in which a player's strokes are asked for.
    pub fn learn_asked(&mut self, player_key: u64, asked_time_s: &[f64]) {
        if self.asked.as_ref().is_none_or(|it| it.0 != player_key) {
            self.asked = Some((player_key, asked_time_s.to_vec()));
        }
    }

    /// The times in which this player's strokes are asked for, if known.
    pub fn asked_time_s(&self, player_key: u64) -> Option<Vec<f64>> {
        self.asked.as_ref().filter(|it| it.0 == player_key).map(|it| it.1.clone())
    }

    /// The innings that hangs on this.
    pub fn innings(&self, key: u64) -> Option<&Arc<Innings>> {
        self.innings.get(&key)
    }

    /// What an ounce costs along the bat that hangs on this.
    pub fn ounces(&self, key: u64) -> Option<&Arc<Ounces>> {
        self.ounces.get(&key)
    }

    /// The innings of a bat: the one that hangs on `key`, else the last one there was.
    pub fn innings_shown(&self, bat: usize, key: Option<u64>) -> Option<Keyed<Innings>> {
        let exact =
            key.and_then(|key| Some(Keyed { key, it: Arc::clone(self.innings.get(&key)?) }));
        exact.or_else(|| self.lately.get(&bat).cloned())
    }

    /// Nothing of another player is shown.
    pub fn forget(&mut self) {
        self.lately.clear();
        self.compared = None;
        self.today = None;
        self.fitted = None;
        self.picture = None;
    }
}

//! What is asked for, and when: once a picture, and when another view is looked at.

use std::sync::Arc;

use backlift::files::fault::Faults;
use backlift::questions::any_score::{Before, Innings};
use backlift::questions::fitted::fitted;
use backlift::questions::loaded::Loaded;

use super::action::{View, Which};
use super::panels::row;
use super::paper::OnDesk;
use super::state::Studio;
use super::work::{Need, Question, Report, Written};
use crate::outcome::Stop;

impl Studio {
    /// Time runs on, answers are taken in, what is missing is asked for, unsaved work is kept.
    pub fn tick(&mut self, passed_s: f64) {
        let length_s = self.length_s();
        if self.filming.is_none() {
            self.playback.advance(passed_s, length_s);
        }
        for report in self.work.reports() {
            self.take(report);
        }
        self.ask_for_what_is_missing();
        for which in [Which::Scenario, Which::Bat] {
            if let Err(fault) = self.paper_mut(which).keep_unsaved() {
                self.say_fault(&fault);
            }
        }
        if self.look != self.kept_look {
            self.kept_look = self.look.clone();
            self.recovery.keep_look(&self.look);
        }
    }

    /// Looks at another view, and asks for what it needs once.
    pub(super) fn look_at(&mut self, view: View) {
        self.wood.paper.let_go();
        self.view = view;
        match view {
            View::Pickup => self.show_pair(self.pair),
            _ => self.leave_pair(),
        }
        if row(view).needs.contains(&Need::Fit) && self.fitted().is_none() {
            self.fit();
        }
    }

    pub(super) fn fit(&mut self) {
        let Some(loaded) = self.derived.loaded.clone().filter(|_| !self.derived.is_stale()) else {
            return self.refuse("the fit needs a scenario without faults", "see the bench");
        };
        let key = self.derived.fit_key;
        self.answers.retry(key);
        self.work
            .start(Question::Fit, key, move |progress, _| fitted(Loaded::clone(&loaded), progress));
    }

    fn take(&mut self, report: Report) {
        let Report { question, key, answer } = report;
        if let Ok(answer) = &answer {
            if let Some(it) = answer.downcast_ref::<Written>() {
                let files =
                    if it.files == 1 { "1 file".to_owned() } else { format!("{} files", it.files) };
                return self.say(format!("Wrote {files} into {}", it.folder.display()));
            }
            let innings = answer.downcast_ref::<Innings>();
            if let Some(it) = innings.filter(|_| self.derived.bat_keys.contains(&key)) {
                self.learn_asked(it.asked_time_s.clone());
            }
        }
        self.answers.take(question, key, answer.map_err(|it| self.stop_in_words(it)));
        if question == Question::Fit {
            self.blade_follows();
        }
        // What has no place of its own on the screen is said.
        if !question.has_a_place() {
            for fault in self.answers.faults(key).to_vec() {
                self.say_fault(&fault);
            }
        }
    }

    /// Why there is no answer, in the window's words.
    fn stop_in_words(&self, stop: Stop) -> Stop {
        match stop {
            Stop::WrongInput(Faults(all)) => {
                Stop::WrongInput(Faults(all.iter().map(|it| self.told(it)).collect()))
            }
            Stop::NoAnswer(it) => Stop::NoAnswer(self.told(&it)),
            other => other,
        }
    }

    fn ask_for_what_is_missing(&mut self) {
        let needs = row(self.view).needs;
        if needs.contains(&Need::Plan) {
            self.follow_plan();
        }
        let Some(loaded) = self.derived.loaded.clone().filter(|_| !self.derived.is_stale()) else {
            return;
        };
        if needs.contains(&Need::CardPicture) {
            self.ask_for_picture();
        }
        if needs.contains(&Need::Today) && self.ask_for_today(&loaded) {
            return;
        }
        if self.fit_awaited && self.is_advised() {
            self.fit_awaited = false;
            self.fit();
        }
        // Both bats a little, then what is sure of their difference, then both bats closely.
        for bat in self.playback.bats {
            self.ask_about(bat, Question::Innings(bat), &loaded);
        }
        if self.playback.bats.iter().any(|bat| self.is_pending(*bat)) {
            return;
        }
        if needs.contains(&Need::Ounces) {
            self.ask_for_ounces(&loaded);
        }
        // Where two bats are held against each other their difference is the first thing to be known.
        let is_waited_for = match needs.contains(&Need::Pair) {
            true => self.ask_for_pair(&loaded) || self.ask_for_today(&loaded),
            false => self.ask_for_today(&loaded) || self.ask_for_pair(&loaded),
        };
        if is_waited_for {
            return;
        }
        for bat in self.playback.bats {
            self.ask_about(bat, Question::Finer(bat), &loaded);
        }
    }

    fn ask_about(&mut self, bat: usize, question: Question, loaded: &Arc<Loaded>) {
        let Some(key) = self.derived.bat_keys.get(bat).copied() else { return };
        let known = self.answers.shared::<Innings>(key);
        let is_finer = matches!(question, Question::Finer(_));
        let enough = match is_finer {
            true => known.as_ref().is_none_or(|it| it.is_complete()),
            false => known.as_ref().is_some_and(|it| it.has_first()),
        };
        if enough || !self.answers.faults(key).is_empty() {
            return;
        }
        let is_shown = self.answers.last::<Innings>(Question::Innings(bat)).is_some();
        let before = Before {
            innings: known.filter(|_| is_finer),
            asked_time_s: self.asked_time_s(),
            together: is_shown && !is_finer,
        };
        let loaded = Arc::clone(loaded);
        self.work.start(question, key, move |progress, tell| {
            Innings::play(&loaded, bat, &before, progress, tell)
        });
    }
}

//! What each action does to the state.

use std::path::{Path, PathBuf};

use backlift::files::fault::{Fault, Faults};

use super::action::{Action, View};
use super::derived::Derived;
use super::document::Document;
use super::film_out::Into;
use super::leaving::Paper;
use super::look::TEXT_SCALES;
use super::playback::{Orbit, Playback, STEP_S};
use super::state::{Ask, Studio};
use super::wood::action::WoodAction;
use super::work::Question;

impl Studio {
    /// Does it.
    pub fn apply(&mut self, action: Action) {
        self.act(action);
        // A question whose reason is gone is not asked any more, nor answered later by something else.
        if self.waiting.as_ref().is_some_and(|it| self.in_the_way(it).is_none()) {
            self.stay();
        }
    }

    fn act(&mut self, action: Action) {
        match action {
            Action::Demo | Action::New | Action::Maker | Action::Open(_) | Action::Close => {
                self.leave(action);
            }
            Action::Dropped(path) => self.dropped(path),
            Action::AskOpen => self.asks.push_back(Ask::Open),
            Action::AskCard => self.asks.push_back(Ask::CardFolder),
            Action::AskCheck => self.asks.push_back(Ask::CardFile),
            Action::AskSave => self.asks.push_back(Ask::SaveAs),
            Action::Save if self.document.path().is_none() => self.asks.push_back(Ask::SaveAs),
            Action::Save => self.save(None),
            Action::SaveAs(path) => self.save(Some(&path)),
            Action::Keep(keep) => self.decide(keep),
            Action::Rescue => self.rescue(),
            Action::DropRescued => {
                if let Some(rescued) = self.rescued.take() {
                    self.recovery.forget_rescued(&rescued);
                }
            }
            Action::Dismiss(n) if n < self.notices.len() => {
                self.notices.remove(n);
            }
            Action::Set(..)
            | Action::Saw(_)
            | Action::ForgetSeen
            | Action::AddBat
            | Action::DuplicateBat(_)
            | Action::RemoveBat(_)
            | Action::AddTried
            | Action::UseTaps => self.change(&action),
            Action::Undo if self.view == View::Wood => self.travel_wood(false),
            Action::Redo if self.view == View::Wood => self.travel_wood(true),
            Action::Undo => self.travel(false),
            Action::Redo => self.travel(true),
            Action::Wood(it) => self.do_wood(it),
            Action::View(view) => self.look_at(view),
            Action::Pair(pair) => self.show_pair(pair),
            Action::Fit => self.fit(),
            Action::CancelFit => self.work.cancel(Question::Fit),
            Action::WriteCard(folder) => self.write_card(&folder),
            Action::Check(path) => self.check_against_file(&path),
            Action::CheckHere => self.check_here(),
            Action::AskClip => self.asks.push_back(Ask::Clip),
            Action::AskPage => self.asks.push_back(Ask::Page),
            Action::WriteClip(path) => self.film(Into::Clip(path)),
            Action::WritePage(path) => self.film(Into::Page(path)),
            Action::CancelFilm => self.stop_filming(),
            other => self.adjust(other),
        }
    }

    /// What changes only how things are shown or swung.
    fn adjust(&mut self, action: Action) {
        let last = self.document.bat_count().saturating_sub(1);
        let playback = &mut self.playback;
        match action {
            Action::FirstBat(bat) => playback.bats[0] = bat.min(last),
            Action::SecondBat(bat) => {
                playback.bats[1] = bat.min(last);
                playback.second = true;
            }
            Action::ShowSecond(on) => playback.second = on,
            Action::Stroke(name) => (playback.stroke, playback.time_s) = (name, 0.0),
            Action::Score(runs) => playback.runs = runs.min(100),
            Action::Camera(camera) => {
                (playback.camera, playback.orbit) = (camera, Orbit::default());
            }
            Action::Orbit(turn_rad, raise_rad) => self.orbit().drag(turn_rad, raise_rad),
            Action::Nearer(times) => self.orbit().come_nearer(times),
            Action::Overlay(on) => playback.overlay = on,
            Action::Play => play(playback),
            Action::Pause => playback.playing = false,
            Action::Scrub(time_s) if time_s.is_finite() => {
                (playback.time_s, playback.playing) = (time_s.max(0.0), false);
            }
            Action::Step(steps) => {
                playback.time_s = (playback.time_s + STEP_S * f64::from(steps)).max(0.0);
                playback.playing = false;
            }
            Action::Rate(rate) if rate.is_finite() => playback.rate = rate.clamp(0.02, 1.0),
            Action::Loop(on) => playback.looping = on,
            Action::ColourBy(by) => self.colour_by = by,
            Action::Try(mass_kg, balance_m) => self.tried = Some([mass_kg, balance_m]),
            Action::Ounce(share) if share.is_finite() => self.ounce_at = share.clamp(0.0, 1.0),
            Action::Untry => self.tried = None,
            Action::BenchBat(bat) => {
                self.bench_bat = bat.min(last);
                self.taps.clear();
            }
            Action::Tap(at_s) => self.taps.tap(at_s),
            Action::ClearTaps => self.taps.clear(),
            Action::Si(on) => {
                use backlift::units::Units::{Si, Trade};
                self.look.units = if on { Si } else { Trade };
            }
            Action::Dark(on) => self.look.dark = on,
            Action::TextScale(scale) if scale.is_finite() => {
                self.look.text_scale = scale.clamp(TEXT_SCALES[0], TEXT_SCALES[1]);
            }
            Action::ReducedMotion(on) => self.look.reduced_motion = on,
            Action::ReducedDetail(on) => self.look.reduced_detail = on,
            // Waiting and pictures are the script runner's; a number that is none changes nothing.
            _ => {}
        }
    }

    fn look_at(&mut self, view: View) {
        self.wood.let_go();
        self.view = view;
        if view == View::Pickup {
            self.show_pair(self.pair);
        }
        if matches!(view, View::Map | View::Card) && self.results.fitted.is_none() {
            self.fit();
        }
    }

    fn fit(&mut self) {
        let Some(loaded) = self.derived.loaded.clone().filter(|_| !self.derived.is_stale()) else {
            self.say_fault(
                &Fault::new("the fit needs a scenario without faults").help("see the bench"),
            );
            return;
        };
        self.results.failed.remove(&self.derived.fit_key);
        self.work.ask(Question::Fit, self.derived.fit_key, loaded);
    }

    fn dropped(&mut self, path: PathBuf) {
        match (says(&path, backlift::files::card::SCHEMA), self.view) {
            (true, View::Wood) => self.do_wood(WoodAction::Card(path)),
            (true, _) => self.check_against_file(&path),
            _ if says(&path, backlift::files::shape::VERSION) => {
                self.look_at(View::Wood);
                self.do_wood(WoodAction::Open(path));
            }
            _ => self.leave(Action::Open(path)),
        }
    }

    /// What a drag on the scene turns.
    fn orbit(&mut self) -> &mut Orbit {
        match self.view {
            View::Wood => &mut self.wood.orbit,
            _ => &mut self.playback.orbit,
        }
    }

    pub(super) fn go(&mut self, action: Action) {
        let let_go = std::mem::take(&mut self.let_go);
        if let_go.contains(&Paper::Scenario) {
            self.recovery.forget(self.document.path(), self.rescued.as_ref());
        }
        if let_go.contains(&Paper::Bat) {
            self.wood.forget_unsaved();
        }
        let document = match &action {
            Action::Demo => Document::demo(),
            Action::New => Document::starter(),
            Action::Maker => Document::maker(),
            Action::Open(path) => Document::open(path),
            Action::Wood(it) => return self.go_to_wood(it),
            _ => {
                self.closed = true;
                return;
            }
        };
        match document {
            Ok(document) => self.take_up(document, &action),
            Err(Faults(faults)) => {
                faults.iter().for_each(|it| self.say_fault(it));
                // What is still here is unsaved as before.
                self.kept.clear();
            }
        }
    }

    fn take_up(&mut self, document: Document, by: &Action) {
        self.document = document;
        self.kept = self.document.text().to_owned();
        self.history = Default::default();
        self.results.forget();
        for question in [Question::Fit, Question::Today] {
            self.work.cancel(question);
        }
        (self.tried, self.check) = (None, None);
        self.taps.clear();
        self.playback.bats = [0, 1];
        self.playback.second = true;
        self.follow();
        if let Action::Open(path) = by {
            self.recovery.used(path);
            self.recent = self.recovery.recent();
        }
        let found = self.recovery.found(self.document.path());
        self.rescued = found.filter(|it| it.text != self.document.text());
        if self.wood.is_untouched() {
            self.go_to_wood(&WoodAction::New);
        }
        let view = match by {
            Action::New => View::Bench,
            Action::Maker => View::Pickup,
            _ => View::Swing,
        };
        self.look_at(view);
    }

    pub(super) fn save(&mut self, path: Option<&Path>) {
        let old = self.document.path().map(Path::to_path_buf);
        let saved = match path {
            Some(path) => self.document.save_as(path),
            None => self.document.save(),
        };
        match saved {
            Ok(()) => {
                for path in [old.as_deref(), self.document.path()] {
                    self.recovery.forget(path, self.rescued.as_ref());
                }
                self.kept = self.document.text().to_owned();
                self.say(format!("Saved {}", self.document.name()));
                if let Some(path) = self.document.path() {
                    self.recovery.used(path);
                }
                self.recent = self.recovery.recent();
                self.go_on();
            }
            Err(fault) => {
                self.stay();
                self.say_fault(&fault);
            }
        }
    }

    fn rescue(&mut self) {
        let Some(rescued) = self.rescued.take() else { return };
        let before = self.document.text().to_owned();
        match self.document.with_text(&rescued.text) {
            Ok(document) => {
                self.document = document;
                self.history.changed(before, "take up unsaved work".to_owned());
                self.follow();
            }
            Err(Faults(faults)) => faults.iter().for_each(|it| self.say_fault(it)),
        }
    }

    /// Changes the document, and remembers how it was.
    fn change(&mut self, action: &Action) {
        let before = self.document.text().to_owned();
        match self.changed(action) {
            Ok(()) if self.document.text() == before => {}
            Ok(()) => {
                self.history.changed(before, words(action));
                self.follow();
            }
            Err(fault) => self.say_fault(&fault),
        }
    }

    fn changed(&mut self, action: &Action) -> Result<(), Fault> {
        match action {
            Action::Set(path, value) => self.put(path, value),
            Action::Saw(how_often) => self.saw(how_often),
            Action::ForgetSeen => self.document.forget_seen(0),
            Action::AddBat => {
                self.document.add_bat(None)?;
                self.bench_bat = self.document.bat_count() - 1;
                Ok(())
            }
            Action::DuplicateBat(bat) => self.document.add_bat(Some(*bat)),
            Action::RemoveBat(bat) => self.remove_bat(*bat),
            Action::AddTried => self.add_tried(),
            Action::UseTaps => self.use_taps(),
            _ => Ok(()),
        }
    }

    /// Everything that hangs on the text.
    pub(super) fn follow(&mut self) {
        self.derived = Derived::of(&self.document, &self.derived);
        self.bats_in_range();
        self.check = None;
    }

    fn travel(&mut self, forward: bool) {
        let now = self.document.text().to_owned();
        let Some(text) = self.history.travel(&now, forward) else { return };
        match self.document.with_text(&text) {
            Ok(document) => {
                self.document = document;
                self.follow();
            }
            Err(Faults(faults)) => faults.iter().for_each(|it| self.say_fault(it)),
        }
    }
}

/// Whether a file says of itself, near its start, what it is.
fn says(path: &Path, schema: &str) -> bool {
    use std::io::Read;
    // A pipe would be waited for.
    if !path.is_file() {
        return false;
    }
    let mut start = Vec::new();
    let read = std::fs::File::open(path).and_then(|it| it.take(4096).read_to_end(&mut start));
    read.is_ok() && String::from_utf8_lossy(&start).contains(schema)
}

fn play(playback: &mut Playback) {
    playback.playing = true;
}

/// A change in a few words, for the undo button.
fn words(action: &Action) -> String {
    match action {
        Action::Set(path, value) if value.trim().is_empty() => format!("take away {path}"),
        Action::Set(path, value) => format!("{path} = {value}"),
        Action::Saw(how_often) => format!("in time: {how_often}"),
        Action::ForgetSeen => "clear what was seen".to_owned(),
        Action::AddBat => "add a bat".to_owned(),
        Action::DuplicateBat(_) => "copy a bat".to_owned(),
        Action::RemoveBat(_) => "take a bat away".to_owned(),
        Action::AddTried => "add the tried bat".to_owned(),
        _ => "use the pendulum time".to_owned(),
    }
}

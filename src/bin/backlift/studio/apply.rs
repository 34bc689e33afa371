//! What each action does to the state.

use std::path::{Path, PathBuf};

use backlift::files::document::TextFile;
use backlift::files::fault::Fault;
use backlift::files::scenario::ScenarioV1;

use super::action::{Action, View};
use super::look::TEXT_SCALES;
use super::paper::of_field;
use super::playback::{Orbit, STEP_S};
use super::state::{Ask, Into, Studio};
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
        use WoodAction as Wood;
        let which = action.which();
        match action {
            Action::Demo | Action::Maker | Action::Close => self.leave(action),
            Action::New | Action::Wood(Wood::New) => self.leave(action),
            Action::Open(_) | Action::Wood(Wood::Open(_)) => self.leave(action),
            Action::AskOpen | Action::Wood(Wood::AskOpen) => self.asks.push_back(Ask::Open(which)),
            Action::AskSave | Action::Wood(Wood::AskSave) => {
                self.asks.push_back(Ask::SaveAs(which));
            }
            Action::Save | Action::Wood(Wood::Save) => self.save(which),
            Action::SaveAs(path) | Action::Wood(Wood::SaveAs(path)) => {
                self.save_as(which, Some(&path));
            }
            Action::Rescue | Action::Wood(Wood::Rescue) => self.rescue(which),
            Action::DropRescued | Action::Wood(Wood::DropRescued) => {
                self.paper_mut(which).drop_rescued();
            }
            Action::Undo => self.travel(self.view.paper(), false),
            Action::Redo => self.travel(self.view.paper(), true),
            Action::Dropped(path) => self.dropped(path),
            Action::AskCard => self.asks.push_back(Ask::CardFolder),
            Action::AskCheck => self.asks.push_back(Ask::CardFile),
            Action::Given(path) => self.answer(path),
            Action::Withdraw => self.withdraw(),
            Action::Keep(keep) => self.decide(keep),
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
            | Action::UseTaps => self.change(action),
            Action::Wood(it) => self.do_wood(it),
            Action::View(view) => self.look_at(view),
            Action::Pair(pair) => self.show_pair(pair),
            Action::Fit => self.fit(),
            Action::CancelFit => {
                self.fit_awaited = false;
                self.work.cancel(|it| it == Question::Fit);
            }
            Action::Way(step) => self.go_to(step),
            Action::Onward => self.onward(),
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
        if matches!(action, Action::FirstBat(_) | Action::SecondBat(_)) {
            self.bats_before = None;
        }
        let last = self.document.bat_count().saturating_sub(1);
        let playback = &mut self.playback;
        match action {
            // What was second and becomes the first changes places with it.
            Action::FirstBat(bat) if playback.second && playback.bats[1] == bat => {
                playback.bats.swap(0, 1);
            }
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
            Action::Play => playback.playing = true,
            Action::Pause => playback.playing = false,
            Action::Scrub(time_s) if time_s.is_finite() => {
                (playback.time_s, playback.playing) = (time_s.max(0.0), false);
            }
            Action::Step(steps) => {
                playback.time_s = (playback.time_s + STEP_S * f64::from(steps)).max(0.0);
                playback.playing = false;
            }
            Action::Rate(rate) if rate.is_finite() => playback.rate = rate.clamp(0.02, 1.0),
            Action::Slows(on) => playback.slows = on,
            Action::Loop(on) => playback.looping = on,
            Action::SameTime(on) => (playback.same_time, playback.time_s) = (on, 0.0),
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

    fn dropped(&mut self, path: PathBuf) {
        match (says(&path, backlift::files::card::SCHEMA), self.view) {
            (true, View::Wood) => self.do_wood(WoodAction::Card(path)),
            (true, _) => self.check_against_file(&path),
            _ if says(&path, backlift::files::shape::VERSION) => {
                self.look_at(View::Wood);
                self.leave(Action::Wood(WoodAction::Open(path)));
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

    /// Changes the scenario, and remembers how it was.
    fn change(&mut self, action: Action) {
        let stroke = self.lead_stroke();
        let card = self.fitted().map(|it| &it.it.card);
        let size = card.map(|it| (it.size.clone(), it.length_m));
        let (bat, tried, taps) = (self.bench_bat, self.tried, self.taps.clone());
        let by_hand = self.way.is_some();
        let edit = |it: &mut TextFile<ScenarioV1>| match &action {
            Action::Set(path, value) => it.set(path, value),
            Action::Saw(how_often) => it.saw(how_often, &stroke),
            Action::ForgetSeen => it.forget_seen(0),
            Action::AddBat if by_hand => {
                // Nothing stands there that could be taken for an entry.
                let place = it.bat_count();
                it.add_bat(None).and_then(|()| it.set(&format!("bats.{place}.label"), ""))
            }
            Action::AddBat => it.add_bat(None),
            Action::DuplicateBat(bat) => it.add_bat(Some(*bat)),
            Action::RemoveBat(bat) => it.remove_bat(*bat),
            Action::AddTried => match tried {
                Some(tried) => it.add_tried(tried, size.as_ref()),
                None => Err(Fault::new("no bat is tried on the map").help("click the map first")),
            },
            _ => it.time(bat, &taps),
        };
        let changed = self.document.change(self.change_words(&action), |it| Ok(edit(it)?));
        match changed {
            Ok(is_other) => self.changed_by(&action, is_other),
            Err(faults) => self.say_faults(&faults),
        }
    }

    /// What goes with a change of the scenario.
    fn changed_by(&mut self, action: &Action, is_other: bool) {
        let last = self.document.bat_count().saturating_sub(1);
        match action {
            Action::AddBat => self.bench_bat = last,
            // The others stay what they are.
            Action::RemoveBat(gone) if is_other => {
                let [a, b] = &mut self.playback.bats;
                for bat in [a, b, &mut self.bench_bat].into_iter().filter(|it| **it > *gone) {
                    *bat -= 1;
                }
            }
            Action::AddTried => {
                (self.playback.bats[1], self.playback.second) = (last, true);
                self.tried = None;
            }
            Action::UseTaps => self.taps.clear(),
            _ => {}
        }
        if is_other {
            self.follow();
        }
    }

    /// A change in a few words, for the undo button.
    fn change_words(&self, action: &Action) -> String {
        match action {
            Action::Set(path, value) => {
                of_field(&self.spoken(path).unwrap_or_else(|| path.clone()), value)
            }
            Action::Saw(how_often) => format!("in time: {how_often}"),
            Action::ForgetSeen => "clear what was seen".to_owned(),
            Action::AddBat => "add a bat".to_owned(),
            Action::DuplicateBat(_) => "copy a bat".to_owned(),
            Action::RemoveBat(_) => "take a bat away".to_owned(),
            Action::AddTried => "add the tried bat".to_owned(),
            _ => "use the pendulum time".to_owned(),
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

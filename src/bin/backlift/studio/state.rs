//! The whole state of the window as one plain struct.

use std::collections::VecDeque;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use backlift::card::returned_bat::Check;
use backlift::drawing::still::Still;
use backlift::files::document::TextFile;
use backlift::files::fault::{Fault, Faults};
use backlift::files::scenario::{DEMO, ScenarioV1};
use backlift::measurement::taps::Taps;
use backlift::questions::any_score::Innings;
use backlift::questions::fitted::Fitted;

use super::action::{Action, ColourBy, Pair, Step, View, Which};
use super::answers::{Answers, Keyed, key};
use super::derived::Derived;
use super::look::Look;
use super::paper::{OnDesk, Paper};
use super::playback::{Playback, USUAL_LENGTH_S};
use super::recovery::Recovery;
use super::wood::Wood;
use super::work::{Question, Work};

pub struct Studio {
    pub document: Paper<ScenarioV1>,
    pub derived: Derived,
    pub playback: Playback,
    pub look: Look,
    pub view: View,
    pub colour_by: ColourBy,
    /// A bat tried on the map: dead weight, kg, and balance point from the top, m.
    pub tried: Option<[f64; 2]>,
    pub pair: Pair,
    /// The bats that were swung before it was shown; none once others were chosen by hand.
    pub(super) bats_before: Option<[usize; 2]>,
    /// Where an ounce is put on the first bat, as a share of its length from the top of the handle.
    pub ounce_at: f64,
    pub bench_bat: usize,
    /// How far the coach's way is gone; none where the whole bench is shown.
    pub way: Option<Step>,
    /// The bat to order is searched for as soon as it is known which to use today.
    pub(super) fit_awaited: bool,
    pub taps: Taps,
    pub wood: Wood,
    pub answers: Answers,
    pub work: Work,
    /// The last check of a delivered bat.
    pub check: Option<Check>,
    /// What was said and not yet put away.
    pub notices: Vec<Notice>,
    /// Paths that are asked for, one after the other.
    pub asks: VecDeque<Ask>,
    /// How many of such questions were answered or put away.
    pub answered: u64,
    /// Whether the operating system has windows for files, as far as is known.
    pub has_chooser: bool,
    /// What waits until it is decided what becomes of unsaved changes.
    pub waiting: Option<Action>,
    /// Papers whose changes are lost when what waits is done.
    pub(super) let_go: Vec<Which>,
    pub recent: Vec<PathBuf>,
    pub filming: Option<Filming>,
    /// The window is to close.
    pub closed: bool,
    pub(super) recovery: Recovery,
    pub(super) kept_look: Look,
}

/// Pictures of the net under way.
pub struct Filming {
    pub into: Into,
    /// Instants to take, s from the top of the backlift.
    pub instants_s: Vec<f64>,
    pub stills: Vec<Still>,
    /// What was played before.
    pub before: Playback,
}

/// What becomes of the pictures.
pub enum Into {
    /// An animated GIF of the stroke.
    Clip(PathBuf),
    /// One page as PNG: what the two bats do, in words, figures and pictures.
    Page(PathBuf),
}

impl Filming {
    /// Share of it that is done.
    pub fn share(&self) -> f32 {
        self.stills.len() as f32 / self.instants_s.len().max(1) as f32
    }
}

/// Something said to the user.
#[derive(Clone, Debug, PartialEq)]
pub struct Notice {
    pub words: String,
    pub mend: Option<String>,
    pub is_fault: bool,
}

/// What a path is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ask {
    Open(Which),
    SaveAs(Which),
    CardFolder,
    /// A card to check against.
    CardFile,
    Clip,
    /// Where to keep a page of the comparison.
    Page,
    /// A card to hold the wood against.
    WoodCard,
    /// A folder for templates and solid.
    WoodFolder,
}

/// Where the ounce is first, as a share of the length: at the toe, where it costs most.
const FIRST_OUNCE_AT: f64 = 1.0;

impl Studio {
    /// The demo, or a file, with what earlier windows left in `recovery`.
    pub fn new(path: Option<&Path>, recovery: Recovery) -> Result<Self, Faults> {
        let document = match path {
            Some(path) => TextFile::open(path)?,
            None => TextFile::of("the demo", DEMO)?,
        };
        let document = Paper::new(document, recovery.clone(), recovery.found(path));
        if let Some(path) = path {
            recovery.used(path);
        }
        let view = if path.is_some() { View::Swing } else { View::Start };
        let look = recovery.look().unwrap_or_default();
        let derived = Derived::of(&document, &Derived::default());
        let size = derived.loaded.as_ref().and_then(|it| it.bats.first()).map(|it| it.size.clone());
        let mut it = Self {
            wood: Wood::new(size.as_deref(), recovery.for_bats())?,
            derived,
            document,
            playback: Playback::default(),
            kept_look: look.clone(),
            look,
            view,
            colour_by: ColourBy::default(),
            tried: None,
            pair: Pair::default(),
            bats_before: None,
            ounce_at: FIRST_OUNCE_AT,
            bench_bat: 0,
            way: None,
            fit_awaited: false,
            taps: Taps::default(),
            answers: Answers::default(),
            work: Work::default(),
            check: None,
            notices: Vec::new(),
            asks: VecDeque::new(),
            answered: 0,
            has_chooser: true,
            waiting: None,
            let_go: Vec::new(),
            recent: recovery.recent(),
            filming: None,
            closed: false,
            recovery,
        };
        it.turn_to_them();
        it.bats_in_range();
        Ok(it)
    }

    /// The bats that can be chosen are those there are.
    pub(super) fn bats_in_range(&mut self) {
        let last = self.document.bat_count().saturating_sub(1);
        for bat in &mut self.playback.bats {
            *bat = (*bat).min(last);
        }
        self.bench_bat = self.bench_bat.min(last);
        if last == 0 {
            self.playback.second = false;
        }
        self.stroke_there();
    }

    /// A stroke that the scenario no longer swings gives way to the one that leads.
    fn stroke_there(&mut self) {
        let Some(loaded) = &self.derived.loaded else { return };
        if loaded.strokes.iter().all(|it| it.name != self.playback.stroke)
            && let Some(lead) = loaded.strokes.get(loaded.lead())
        {
            (self.playback.stroke, self.playback.time_s) = (lead.name.clone(), 0.0);
        }
    }

    pub fn paper(&self, which: Which) -> &dyn OnDesk {
        match which {
            Which::Scenario => &self.document,
            Which::Bat => &self.wood.paper,
        }
    }

    pub(super) fn paper_mut(&mut self, which: Which) -> &mut dyn OnDesk {
        match which {
            Which::Scenario => &mut self.document,
            Which::Bat => &mut self.wood.paper,
        }
    }

    /// The paper whose changes an action would lose, and of which nothing was decided yet.
    pub fn in_the_way(&self, action: &Action) -> Option<Which> {
        let lost: &[Which] = match action {
            Action::Close => &[Which::Scenario, Which::Bat],
            Action::Wood(_) => &[Which::Bat],
            _ => &[Which::Scenario],
        };
        let is_lost = |it: &&Which| self.paper(**it).is_changed() && !self.let_go.contains(it);
        lost.iter().find(is_lost).copied()
    }

    /// Everything that hangs on the text.
    pub(super) fn follow(&mut self) {
        self.derived = Derived::of(&self.document, &self.derived);
        self.turn_to_them();
        self.bats_in_range();
        self.check = None;
        self.blade_follows();
    }

    /// Answers about another player or other bats are shown no more, and not waited for.
    fn turn_to_them(&mut self) {
        if !self.answers.turn_to(self.derived.whose.clone()) {
            self.work.cancel(|it| it.is_of_scenario() && !it.is_for_files());
        }
    }

    /// Whether everything that was asked for is there.
    pub fn is_settled(&self) -> bool {
        self.work.is_idle() && self.filming.is_none()
    }

    /// How many bats are shown.
    pub fn slots(&self) -> usize {
        let both = self.playback.second && self.playback.bats[0] != self.playback.bats[1];
        if both { 2 } else { 1 }
    }

    /// Whether the stroke shown answers the short ball.
    pub fn answers_short_ball(&self) -> bool {
        let strokes = self.derived.loaded.iter().flat_map(|it| &it.strokes);
        strokes.filter(|it| it.name == self.playback.stroke).any(|it| it.answers_short_ball)
    }

    /// Length of the longer of the strokes shown, s.
    pub fn length_s(&self) -> f64 {
        let times = (0..self.slots()).filter_map(|slot| self.stroke_time_s(slot));
        times.reduce(f64::max).unwrap_or(USUAL_LENGTH_S)
    }

    /// Time of the stroke with the first or the second bat at the score shown, s.
    pub fn stroke_time_s(&self, slot: usize) -> Option<f64> {
        Some(self.reel(self.innings(slot)?.it)?.contact_s())
    }

    /// The innings with the first or the second bat; perhaps of an earlier text.
    pub fn innings(&self, slot: usize) -> Option<Keyed<'_, Innings>> {
        let bat = *self.playback.bats.get(slot)?;
        let now = self.derived.bat_keys.get(bat);
        let exact = now.and_then(|key| Some(Keyed { key: *key, it: self.answers.get(*key)? }));
        exact.or_else(|| self.answers.last(Question::Innings(bat)))
    }

    /// Whether what is shown of a bat is of an earlier text, or not all there.
    pub fn is_pending(&self, bat: usize) -> bool {
        let key = self.derived.bat_keys.get(bat);
        let found = key.and_then(|key| self.answers.get::<Innings>(*key));
        !found.is_some_and(Innings::has_first)
    }

    /// The last fitting, perhaps of an earlier text.
    pub fn fitted(&self) -> Option<Keyed<'_, Fitted>> {
        self.answers.last(Question::Fit)
    }

    /// Whether the map is of an earlier text.
    pub fn is_fit_stale(&self) -> bool {
        self.fitted().is_none_or(|it| it.key != self.derived.fit_key)
    }

    /// In which time each of this player's strokes is asked for, s, if it is known.
    pub(super) fn asked_time_s(&self) -> Option<Vec<f64>> {
        self.answers.get::<Vec<f64>>(key(("asked times", self.derived.player_key))).cloned()
    }

    /// Remembers it, as it was found first.
    pub(super) fn learn_asked(&mut self, asked_time_s: Vec<f64>) {
        if self.asked_time_s().is_none() {
            let key = key(("asked times", self.derived.player_key));
            self.answers.take(Question::AskedTimes, key, Ok(Arc::new(asked_time_s)));
        }
    }

    pub(super) fn say(&mut self, words: String) {
        self.notices.push(Notice { words, mend: None, is_fault: false });
    }

    pub(super) fn say_faults(&mut self, Faults(faults): &Faults) {
        faults.iter().for_each(|it| self.say_fault(it));
    }

    /// Says why something is not done, and what to do about it.
    pub(super) fn refuse(&mut self, why: &str, mend: &str) {
        self.say_fault(&Fault::new(why).help(mend));
    }

    /// Says what went wrong; once, however often it does.
    pub(super) fn say_fault(&mut self, fault: &Fault) {
        let Fault { message: words, help: mend, .. } = self.told(fault);
        let notice = Notice { words, mend, is_fault: true };
        if !self.notices.contains(&notice) {
            self.notices.push(notice);
        }
    }
}

//! The maker's wood on the screen: a described bat, what follows from it, and what it is held against.

mod act;
pub mod action;
mod carving;
mod dragged;
mod planing;

use std::sync::Arc;

use backlift::bat::laws::Limits;
use backlift::bat::shape::BatShape;
use backlift::bat::shaped::ShapedBat;
use backlift::bat::sizes::Size;
use backlift::card::Card;
use backlift::files::assets::{limits, sizes};
use backlift::files::document::TextFile;
use backlift::files::fault::{Fault, Faults, Source};
use backlift::files::shape::{LoadedShape, ShapeV1, load_text};
use backlift::files::shape_text;
use backlift::questions::placed::described_bat;
use backlift::workshop::grab::{Grab, grabs};
use backlift::workshop::plane::{DrawnOn, Finish, PickupMoments, Plan, Region, ThinEdge};

use super::answers::key_of;
use super::paper::{OnDesk, Paper};
use super::playback::Orbit;
use super::recovery::Recovery;
use action::{Face, Holdable, Part, Work};

pub struct Wood {
    pub paper: Paper<ShapeV1>,
    /// The bat as of the last description without a fault.
    pub worked: Option<Arc<Worked>>,
    /// The bat as it was saved last, or began.
    pub before: Option<Arc<Worked>>,
    /// What is wrong with the description now.
    pub faults: Vec<Fault>,
    /// Where and why a drag goes no further.
    pub stop: Option<Stop>,
    /// What the solid hangs on.
    pub key: u64,
    pub work: Work,
    /// What stays as it is when the blade is carved to a card.
    pub held: Vec<Holdable>,
    /// The card that was opened; else the fitting's own is the target.
    pub card: Option<Opened>,
    /// What is on the part-made bat already.
    pub on: Finish,
    pub planned: Option<Planned>,
    /// Passes that are shown as done.
    pub done: usize,
    pub seen: Face,
    pub orbit: Orbit,
    sizes: Vec<Size>,
    limits: Limits,
}

pub struct Opened {
    pub key: u64,
    pub card: Card,
}

/// A described bat with everything that follows from it.
pub struct Worked {
    pub loaded: LoadedShape,
    pub bat: ShapedBat,
    /// What hangs on what was read and done to it.
    pub log_key: u64,
    /// What hangs on its card, if it has one.
    pub card_key: Option<u64>,
}

/// Where a drag goes no further.
#[derive(Clone, Debug, PartialEq)]
pub struct Stop {
    pub path: String,
    /// The last figure that the blade allows, SI.
    pub value: f64,
    pub why: &'static str,
    /// Whether what lies above it is what is not allowed.
    is_most: bool,
}

/// Whether the field is a share; else a length.
pub fn is_share(path: &str) -> bool {
    path == "blade.hollow"
}

impl Stop {
    /// Whether it is in the way of dragging a field to a figure.
    fn holds(&self, path: &str, to: f64) -> bool {
        let beyond = if self.is_most { to >= self.value } else { to <= self.value };
        self.path == path && beyond
    }
}

/// A plan with what it was made from.
pub struct Planned {
    pub key: u64,
    /// The bat as it lies on the bench.
    pub shape: BatShape,
    pub drawn_on: DrawnOn,
    /// Its readings.
    pub now: PickupMoments,
    /// What goes on it after the plane.
    pub to_come: PickupMoments,
    /// The plan, or why there is none.
    pub plan: Result<Plan, String>,
    /// Of each pass, the edge that it leaves thinner than makers of the size leave it.
    pub thin_edges: Vec<Option<ThinEdge>>,
}

impl Planned {
    /// The bat after so many passes.
    pub fn after(&self, passes: usize) -> &BatShape {
        self.plan.as_ref().map_or(&self.shape, |it| it.after(&self.shape, passes))
    }

    /// The whole bat to expect if the plane stopped after so many passes: what goes on is on.
    pub fn whole_after(&self, passes: usize) -> PickupMoments {
        let last = passes.checked_sub(1).and_then(|n| self.plan.as_ref().ok()?.passes.get(n));
        last.map_or(self.now, |it| it.then) + self.to_come
    }

    /// What the passes after the first `done` take, place by place.
    pub fn regions(&self, done: usize) -> Vec<Region> {
        self.plan.as_ref().map_or_else(|_| Vec::new(), |it| it.regions(&self.shape, done))
    }
}

impl Wood {
    /// A blade of a size, with what earlier windows left.
    pub fn new(size: Option<&str>, recovery: Recovery) -> Result<Self, Faults> {
        let (sizes, limits) = (sizes().map_err(Fault::new)?, limits().map_err(Fault::new)?);
        let file = started(size)?;
        let rescued = recovery.found(None).or_else(|| recovery.any());
        let mut it = Self {
            paper: Paper::new(file, recovery, rescued),
            worked: None,
            before: None,
            faults: Vec::new(),
            stop: None,
            key: 0,
            work: Work::default(),
            held: Vec::new(),
            card: None,
            // Bats in a scenario are whole ones; what is still to go on is unticked.
            on: Finish::ALL,
            planned: None,
            done: 0,
            seen: Face::default(),
            orbit: Orbit::default(),
            sizes,
            limits,
        };
        it.begin();
        Ok(it)
    }

    /// Whether the blade is given by measured sections.
    pub fn has_sections(&self) -> bool {
        !self.paper.fields().blade.stations.is_empty()
    }

    /// The card in the bat's own file: that bat is made for no other.
    pub fn own_card(&self) -> Option<&Card> {
        self.worked.as_ref()?.loaded.log.card.as_ref()
    }

    /// What can be dragged on the solid.
    pub fn grabs(&self, shape: &BatShape) -> Vec<Grab> {
        // Measured sections have their places from the toe: their length stays.
        let fixed = |it: &Grab| it.path == "blade.length" && self.has_sections();
        grabs(shape).into_iter().filter(|it| !fixed(it)).collect()
    }

    pub fn about<'a>(&'a self, path: &'a str) -> impl Iterator<Item = &'a Fault> {
        self.faults.iter().filter(move |it| it.field.as_deref() == Some(path))
    }

    /// From the start of another document, with nothing of the one before.
    pub(super) fn begin_anew(&mut self) {
        (self.worked, self.before, self.planned) = (None, None, None);
        self.held.clear();
        self.begin();
    }

    /// From the start of a document, or a save.
    pub(super) fn begin(&mut self) {
        self.follow();
        self.before = self.worked.clone().filter(|_| self.faults.is_empty());
    }

    fn change(
        &mut self,
        words: String,
        edit: impl FnOnce(&mut TextFile<ShapeV1>) -> Result<(), Faults>,
    ) -> Result<(), Faults> {
        if self.paper.change(words, edit)? {
            self.follow();
        }
        Ok(())
    }

    /// Everything that hangs on the text.
    pub(super) fn follow(&mut self) {
        match self.work_out(self.paper.text()) {
            Ok(worked) => {
                self.key = key_of(&worked.bat.shape);
                (self.worked, self.faults) = (Some(Arc::new(worked)), Vec::new());
            }
            Err(Faults(faults)) => self.faults = faults,
        }
    }

    fn work_out(&self, text: &str) -> Result<Worked, Faults> {
        let loaded = load_text(Source::new(&self.paper.name(), text), &[], &self.sizes)?;
        let bat = described_bat(&loaded, &self.limits)?;
        let log_key = key_of(&(&loaded.log.entries, &loaded.log.card));
        let card_key = loaded.log.card.as_ref().map(key_of);
        Ok(Worked { loaded, bat, log_key, card_key })
    }

    /// Puts a part on or takes it off; of grips so many as the card asks.
    fn put_on(&mut self, part: Part, on: bool, grips: u32) {
        let it = &mut self.on;
        match part {
            Part::Twine => it.bound = on,
            // A grip goes over the twine.
            Part::Grip if on => (it.grips, it.bound) = (grips.max(1), true),
            Part::Grip => it.grips = 0,
            Part::ToeGuard => it.toe_guard = on,
            Part::Labels => it.labels = on,
            Part::Oil => it.oiled = on,
        }
    }
}

/// A blade of a size, as in its reference bat.
pub(super) fn started(size: Option<&str>) -> Result<TextFile<ShapeV1>, Faults> {
    let size = size.unwrap_or("short handle");
    let title = format!("A blade of size {size}");
    TextFile::of(&title, &shape_text::started(&title, size)?)
}

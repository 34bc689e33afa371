//! The maker's wood on the screen: a described bat, what follows from it, and what it is held against.

mod act;
pub mod action;
mod carving;
pub mod grab;
mod planing;

use std::sync::Arc;

use backlift::bat::laws::Limits;
use backlift::bat::shape::BatShape;
use backlift::bat::shaped::{ShapedBat, shaped};
use backlift::bat::sizes::Size;
use backlift::card::Card;
use backlift::files::assets::{AssetFault, limits, sizes};
use backlift::files::fault::{Fault, Faults, Source};
use backlift::files::shape::{LoadedShape, ShapeV1, load_text};
use backlift::files::shape_text;
use backlift::workshop::plane::Finish;

use super::derived::{key, path_of};
use super::playback::Orbit;
use super::recovery::{Recovery, Rescued};
use super::text_file::TextFile;
use super::undo::History;
use action::{Face, Holdable, Work};
pub use carving::Carved;
use grab::{Grab, grabs};
pub use planing::{DrawnOn, PLANING_SD, Planned, Region};

/// Everything at the maker's bench.
pub struct Wood {
    /// The described bat.
    pub file: TextFile<ShapeV1>,
    /// Steps back and forward.
    pub history: History,
    /// The bat as of the last description without a fault.
    pub worked: Option<Arc<Worked>>,
    /// The bat as it was saved last, or began.
    pub before: Option<Arc<Worked>>,
    /// What is wrong with the description now.
    pub faults: Vec<Fault>,
    /// What the solid hangs on.
    pub key: u64,
    /// What is being done.
    pub work: Work,
    /// What stays as it is when the blade is carved to a card.
    pub held: Vec<Holdable>,
    /// The card that was opened; else the fitting's own is the target.
    pub card: Option<Arc<Card>>,
    /// Shapes that meet the card.
    pub carved: Option<Carved>,
    /// What is on the part-made bat already.
    pub on: Finish,
    /// The planing plan, and what it hangs on.
    pub planned: Option<Planned>,
    /// Passes that are shown as done.
    pub done: usize,
    /// From where the bat is seen.
    pub seen: Face,
    /// Dragged from there.
    pub orbit: Orbit,
    /// Unsaved work of an earlier window.
    pub rescued: Option<Rescued>,
    pub(super) recovery: Recovery,
    pub(super) kept: String,
    dragged: Option<(String, String)>,
    sizes: Vec<Size>,
    limits: Limits,
}

/// A described bat with everything that follows from it.
pub struct Worked {
    /// As it was described.
    pub loaded: LoadedShape,
    /// What follows.
    pub bat: ShapedBat,
}

impl Wood {
    /// A blade of a size, with what earlier windows left.
    pub fn new(size: Option<&str>, recovery: Recovery) -> Result<Self, Faults> {
        let broken = |it: AssetFault| Faults(vec![Fault::new(it.to_string())]);
        let (sizes, limits) = (sizes().map_err(broken)?, limits().map_err(broken)?);
        let file = started(size)?;
        let rescued = recovery.found(None).or_else(|| recovery.any());
        let rescued = rescued.filter(|it| it.text != file.text());
        let mut it = Self {
            kept: file.text().to_owned(),
            file,
            history: History::default(),
            worked: None,
            before: None,
            faults: Vec::new(),
            key: 0,
            work: Work::default(),
            held: Vec::new(),
            card: None,
            carved: None,
            // Bats in a scenario are whole ones; what is still to go on is unticked.
            on: Finish::ALL,
            planned: None,
            done: 0,
            seen: Face::default(),
            orbit: Orbit::default(),
            rescued,
            recovery,
            dragged: None,
            sizes,
            limits,
        };
        it.begin();
        Ok(it)
    }

    /// What to call it.
    pub fn name(&self) -> String {
        let title = self.file.fields().title.as_ref().map(|it| it.0.clone());
        self.file.file_name().or(title).unwrap_or_else(|| "A blade".to_owned())
    }

    /// Whether nobody has put a hand to it.
    pub fn is_untouched(&self) -> bool {
        self.file.path().is_none() && !self.file.is_changed() && self.rescued.is_none()
    }

    /// Whether the blade is given by measured sections.
    pub fn has_sections(&self) -> bool {
        !self.file.fields().blade.stations.is_empty()
    }

    /// What can be dragged on the solid.
    pub fn grabs(&self, shape: &BatShape) -> Vec<Grab> {
        // Measured sections have their places from the toe: their length stays.
        let fixed = |it: &Grab| it.path == "blade.length" && self.has_sections();
        grabs(shape).into_iter().filter(|it| !fixed(it)).collect()
    }

    /// Faults about the field at a path.
    pub fn about<'a>(&'a self, path: &'a str) -> impl Iterator<Item = &'a Fault> {
        self.faults.iter().filter(move |it| path_of(it) == Some(path))
    }

    /// Another document, with nothing of the one before.
    fn take_up(&mut self, file: TextFile<ShapeV1>) {
        self.file = file;
        self.kept = self.file.text().to_owned();
        self.history = History::default();
        (self.carved, self.planned, self.dragged) = (None, None, None);
        (self.worked, self.before) = (None, None);
        self.held.clear();
        self.begin();
        let found = self.recovery.found(self.file.path());
        self.rescued = found.filter(|it| it.text != self.file.text());
    }

    /// From the start of a document, or a save.
    fn begin(&mut self) {
        self.follow();
        self.before = self.worked.clone().filter(|_| self.faults.is_empty());
    }

    /// Everything that hangs on the text.
    fn follow(&mut self) {
        match self.work_out(self.file.text()) {
            Ok(worked) => {
                self.key = key(&worked.bat.shape);
                (self.worked, self.faults) = (Some(Arc::new(worked)), Vec::new());
            }
            Err(Faults(faults)) => self.faults = faults,
        }
    }

    fn work_out(&self, text: &str) -> Result<Worked, Faults> {
        let loaded = load_text(Source::new(&self.name(), text), &[], &self.sizes)?;
        let bat = shaped(&loaded.title, &loaded.described, &loaded.size, &self.limits);
        match bat {
            Ok(bat) => Ok(Worked { loaded, bat }),
            Err(faults) => Err(backlift::questions::placed::shape_faults(&loaded.places, &faults)),
        }
    }
}

/// A blade of a size, as in its reference bat.
fn started(size: Option<&str>) -> Result<TextFile<ShapeV1>, Faults> {
    let size = size.unwrap_or("short handle");
    let title = format!("A blade of size {size}");
    let text = shape_text::started(&title, size).map_err(|it| Faults(vec![it]))?;
    TextFile::of(&title, &text)
}

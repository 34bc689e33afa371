//! The log of a bat on the bench: from cleft to grip, each stage weighed and timed.

mod fault;
pub mod forecast;
pub mod moment;
pub mod steps;
pub mod waiting;

pub use fault::{LogFault, Misplaced};
pub use moment::Moment;

use super::season::Air;
use crate::bat::sizes::Size;
use crate::measurement::bench::{BatReading, PendulumReading};

/// One stage of the making. The order is common practice, no source; oil, binding and grip change places
/// from maker to maker.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// The seasoned willow as it came.
    Cleft,
    /// Face pressed.
    Pressed,
    /// Cut to the blade's outline, handle not yet in.
    Roughed,
    /// Splice cut, handle glued in.
    Spliced,
    /// Swell, edges and shoulders cut.
    Shaped,
    /// Sanded and polished.
    Sanded,
    /// First oil, or the face sheet in its place.
    Oiled,
    /// Handle bound with twine.
    Bound,
    /// Grip, toe guard and labels on.
    Gripped,
}

impl Stage {
    /// All of them, in their usual order.
    pub const ALL: [Self; 9] = [
        Self::Cleft,
        Self::Pressed,
        Self::Roughed,
        Self::Spliced,
        Self::Shaped,
        Self::Sanded,
        Self::Oiled,
        Self::Bound,
        Self::Gripped,
    ];

    /// Its name, as written in a log.
    pub fn name(self) -> &'static str {
        match self {
            Self::Cleft => "cleft",
            Self::Pressed => "pressed",
            Self::Roughed => "roughed",
            Self::Spliced => "spliced",
            Self::Shaped => "shaped",
            Self::Sanded => "sanded",
            Self::Oiled => "oiled",
            Self::Bound => "bound",
            Self::Gripped => "gripped",
        }
    }

    /// What to do to get there.
    pub fn task(self) -> &'static str {
        match self {
            Self::Cleft => "weigh the cleft",
            Self::Pressed => "press the face",
            Self::Roughed => "cut the blade",
            Self::Spliced => "glue the handle in",
            Self::Shaped => "shape",
            Self::Sanded => "sand",
            Self::Oiled => "oil",
            Self::Bound => "bind the handle",
            Self::Gripped => "grip, guard and labels",
        }
    }

    /// Place in the order; the three that end it share one.
    fn rank(self) -> usize {
        match self {
            Self::Oiled | Self::Bound | Self::Gripped => 6,
            other => Self::ALL.iter().position(|it| *it == other).unwrap_or(0),
        }
    }

    /// Whether something is put on, so that the bat may weigh more than before.
    pub fn adds(self) -> bool {
        matches!(self, Self::Spliced | Self::Oiled | Self::Bound | Self::Gripped)
    }

    /// Whether it has a handle, and so a balance point from its top.
    pub fn has_handle(self) -> bool {
        self.rank() >= Self::Spliced.rank()
    }
}

/// One line of a log.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// The stage it has come to.
    pub stage: Stage,
    /// When it was weighed, by the workshop's clock.
    pub at: Moment,
    /// Scale weight, kg.
    pub mass_kg: f64,
    /// Balance point, m from the top of the handle.
    pub balance_m: Option<f64>,
    /// Ten pendulum swings about the pickup axis, s.
    pub ten_swings_s: Option<f64>,
    /// Water in the wood by a meter, kg for each kg of dry wood.
    pub meter: Option<f64>,
    /// Air of the workshop.
    pub air: Option<Air>,
}

impl Entry {
    /// The ten swings as a pendulum test.
    pub fn pendulum(&self) -> Option<PendulumReading> {
        self.ten_swings_s.map(PendulumReading::ten)
    }

    /// The same as a reading of the bench, to be judged.
    fn reading(&self) -> BatReading {
        BatReading {
            balance_m: self.balance_m,
            pendulum: self.pendulum(),
            ..BatReading::weighed("", self.mass_kg)
        }
    }
}

/// What the bat shall come to.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Target {
    /// Dead weight, kg.
    pub mass_kg: Option<f64>,
    /// Balance point, m from the top of the handle.
    pub balance_m: Option<f64>,
    /// Ten swings about the pickup axis, s.
    pub ten_swings_s: Option<f64>,
}

/// The log of one bat.
#[derive(Clone, Debug, PartialEq)]
pub struct BatLog {
    /// Name by which the maker calls it.
    pub label: String,
    /// Trade size.
    pub size: String,
    /// What it shall come to.
    pub target: Target,
    /// Its stages so far, in the order of their making.
    pub entries: Vec<Entry>,
}

/// The log of a bench.
#[derive(Clone, Debug, PartialEq)]
pub struct BenchLog {
    /// The bats are made up, as in the examples.
    pub invented: bool,
    /// One or several bats.
    pub bats: Vec<BatLog>,
}

impl BatLog {
    /// The last stage it has come to.
    pub fn last(&self) -> Option<&Entry> {
        self.entries.last()
    }

    /// What is still to come, in the usual order; what was left out on the way is taken as done.
    pub fn pending(&self) -> Vec<Stage> {
        pending(&self.entries)
    }

    /// Everything in it that cannot be, each with the entry and the field to mend.
    pub fn faults(&self, size: &Size) -> Vec<Misplaced> {
        fault::faults(self, size)
    }
}

/// Stages still to come after some entries.
fn pending(entries: &[Entry]) -> Vec<Stage> {
    let reached = entries.last().map(|it| it.stage.rank());
    let has = |stage: Stage| entries.iter().any(|it| it.stage == stage);
    let shared = Stage::Gripped.rank();
    Stage::ALL
        .into_iter()
        .filter(|it| reached.is_none_or(|reached| it.rank() > reached) || it.rank() == shared)
        .filter(|it| !has(*it))
        .collect()
}

//! The log of a bat on the bench: from cleft to grip, each stage weighed and timed.

mod doubt;
mod fault;
pub mod forecast;
pub mod moment;
pub mod steps;
pub mod waiting;

pub use fault::{LogFault, Misplaced};
pub use moment::Moment;

use super::plane::additions::Part;
use super::plane::{Finish, Place};
use super::season::Air;
use crate::card::Card;
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
    /// Face and edges knocked in.
    Knocked,
}

impl Stage {
    /// All of them, in their usual order.
    pub const ALL: [Self; 10] = [
        Self::Cleft,
        Self::Pressed,
        Self::Roughed,
        Self::Spliced,
        Self::Shaped,
        Self::Sanded,
        Self::Oiled,
        Self::Bound,
        Self::Gripped,
        Self::Knocked,
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
            Self::Knocked => "knocked in",
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
            Self::Knocked => "knock in",
        }
    }

    /// Place in the order; oil, binding and grip share one.
    fn rank(self) -> usize {
        match self {
            Self::Oiled | Self::Bound | Self::Gripped => 6,
            Self::Knocked => 7,
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
    /// Another reading in the stage of the entry before: nothing was done since, or wood was planed off.
    pub again: bool,
    /// Where the plane took wood off since the entry before.
    pub planed: Option<Place>,
    /// How much the plan asked to take off there, kg.
    pub asked_kg: Option<f64>,
    /// What is on it, where it was written; else what its stages put on.
    pub on: Option<Finish>,
    /// When it was weighed, by the workshop's clock.
    pub at: Moment,
    /// Scale weight, kg.
    pub mass_kg: f64,
    /// Balance point, m from the top of the handle.
    pub balance_m: Option<f64>,
    /// Pendulum swings about the pickup axis.
    pub pendulum: Option<PendulumReading>,
    /// Diameter of the handle across at the bottom hand, m, over whatever is on it.
    pub handle_m: Option<f64>,
    /// How far to the left of the middle the blade balances along its length, m, seen from the face with the toe down.
    pub left_m: Option<f64>,
    /// Water in the wood by a meter, kg for each kg of dry wood.
    pub meter: Option<f64>,
    /// Grains across the face.
    pub grains: Option<u32>,
    /// Air of the workshop.
    pub air: Option<Air>,
    /// What else there is to say.
    pub note: Option<String>,
}

impl Entry {
    /// A bat that was put on the scale, and no more.
    pub fn weighed(stage: Stage, at: Moment, mass_kg: f64) -> Self {
        Self {
            stage,
            again: false,
            planed: None,
            asked_kg: None,
            on: None,
            at,
            mass_kg,
            balance_m: None,
            pendulum: None,
            handle_m: None,
            left_m: None,
            meter: None,
            grains: None,
            air: None,
            note: None,
        }
    }

    /// As a reading of the bench.
    pub fn reading(&self, label: &str) -> BatReading {
        BatReading {
            balance_m: self.balance_m,
            pendulum: self.pendulum,
            ..BatReading::weighed(label, self.mass_kg)
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

impl Target {
    /// What a card asks.
    pub fn of(card: &Card) -> Self {
        let swings = f64::from(card.pendulum_swings);
        Self {
            mass_kg: Some(card.mass_kg()),
            balance_m: Some(card.balance_m()),
            ten_swings_s: Some(10.0 / swings * card.pendulum_time_s.target),
        }
    }
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
    /// The card it is made for.
    pub card: Option<Card>,
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
        self.pending_after(self.entries.len())
    }

    /// The same as it was after so many entries. What the card does not want, or what is on already, does not come.
    fn pending_after(&self, entries: usize) -> Vec<Stage> {
        let entries = self.entries.get(..entries).unwrap_or(&self.entries);
        let reached = entries.last().map(|it| it.stage.rank());
        let has = |stage: Stage| entries.iter().any(|it| it.stage == stage);
        // A bat that was knocked in is played: nothing else is put on.
        let shared = if has(Stage::Knocked) { usize::MAX } else { Stage::Gripped.rank() };
        let mut out = Stage::ALL.to_vec();
        out.retain(|it| reached.is_none_or(|reached| it.rank() > reached) || it.rank() == shared);
        out.retain(|it| !has(*it));
        if let Some(card) = &self.card {
            let lacks = finish(entries).lacks(&Finish::of(card));
            let lacks = |any: &[Part]| lacks.iter().any(|(it, _)| any.contains(it));
            out.retain(|it| match it {
                Stage::Oiled => lacks(&[Part::Oil]),
                Stage::Bound => lacks(&[Part::Twine]),
                Stage::Gripped => lacks(&[Part::Grips, Part::ToeGuard, Part::Labels]),
                _ => true,
            });
        }
        out
    }

    /// What is on the bat by its last entry.
    pub fn finish(&self) -> Finish {
        finish(&self.entries)
    }
}

/// What is on a bat after some entries.
pub fn finish(entries: &[Entry]) -> Finish {
    entries.iter().fold(Finish::BARE, |on, it| {
        let mut on = it.on.unwrap_or(on);
        match it.stage {
            Stage::Oiled => on.oiled = true,
            Stage::Bound => on.bound = true,
            Stage::Gripped | Stage::Knocked => {
                let grips = on.grips.max(1);
                on = Finish { grips, ..Finish::ALL };
            }
            _ => {}
        }
        on
    })
}

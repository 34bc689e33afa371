//! What in a log cannot be.

use super::{BatLog, Entry, Moment, Stage, finish};
use crate::bat::pendulum::small_swing_period_s;
use crate::bat::sizes::Size;
use crate::measurement::absurd::{Absurd, judge_bat, judge_pendulum};
use crate::measurement::bench::SCALE_SD_KG;
use crate::measurement::out_of_range::OutOfRange;

/// A log that cannot be.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum LogFault {
    /// A stage that comes before the last one.
    #[error("{} comes before {}, which stands above it", stage.name(), before.name())]
    OutOfOrder {
        /// What was written.
        stage: Stage,
        /// The one above it.
        before: Stage,
    },
    /// A stage for the second time.
    #[error("{} stands in the log already", stage.name())]
    Twice {
        /// What was written.
        stage: Stage,
    },
    /// Time runs backwards.
    #[error("{at} is earlier than {before}, which stands above it")]
    Backwards {
        /// What was written.
        at: Moment,
        /// The one above it.
        before: Moment,
    },
    /// Heavier although nothing was put on.
    #[error(
        "{mass_kg} kg is more than the {before_kg} kg before it, and {} adds nothing", stage.name()
    )]
    Heavier {
        /// What was come to.
        stage: Stage,
        /// What was weighed, kg.
        mass_kg: f64,
        /// What it weighed before, kg.
        before_kg: f64,
    },
    /// A balance point or a pendulum where there is no handle to measure from.
    #[error("a {} has no handle to measure or hang it by", stage.name())]
    NoHandle {
        /// The stage.
        stage: Stage,
    },
    /// Ten swings that were timed without a balance point to make anything of them.
    #[error("ten swings say nothing without the balance point")]
    NoBalance,
    /// More water than wood in shops has.
    #[error("{:.0} % water is outside 1 to 30 %, what a meter reads in wood", 100.0 * .meter)]
    Meter {
        /// What was written, as a share.
        meter: f64,
    },
    /// A figure that no bat has.
    #[error(transparent)]
    Absurd(#[from] Absurd),
}

impl LogFault {
    /// The mend.
    pub fn mend(&self) -> &'static str {
        match self {
            Self::OutOfOrder { .. } => {
                "write the stages as they were made: cleft, pressed, roughed, spliced, shaped, sanded, then oiled, bound and gripped in any order"
            }
            Self::Twice { .. } => {
                "keep the later weighing and leave out the other; or leave its stage out, if it is another reading of it"
            }
            Self::Backwards { .. } => "check day and month: a date is year-month-day",
            Self::Heavier { .. } => "weigh again; is it another bat, or another scale?",
            Self::NoHandle { .. } => "leave it out until the handle is in",
            Self::NoBalance => "add the balance point of the same day",
            Self::Meter { .. } => "write it like \"11 %\", or leave it out",
            Self::Absurd(_) => "check the figure and its unit",
        }
    }
}

/// A fault with its place in the log.
#[derive(Clone, Debug, PartialEq)]
pub struct Misplaced {
    /// Which entry.
    pub entry: usize,
    /// Which field of it: "stage", "at", "mass", "balance", "ten_swings" or "meter".
    pub field: &'static str,
    /// What.
    pub fault: LogFault,
}

/// Lightest and heaviest wood without a handle, kg. Assumption, set wide.
const BLANK_KG: [f64; 2] = [0.2, 6.0];
/// How much heavier two weighings of one thing may be, kg: three standard deviations of their difference.
const SAME_KG: f64 = 3.0 * std::f64::consts::SQRT_2 * SCALE_SD_KG;

impl BatLog {
    /// Everything in it that cannot be, each with the entry and the field to mend.
    pub fn faults(&self, size: &Size) -> Vec<Misplaced> {
        let mut found = Vec::new();
        for (n, entry) in self.entries.iter().enumerate() {
            let mut keep = |field, fault| found.push(Misplaced { entry: n, field, fault });
            if let Some(before) = n.checked_sub(1).and_then(|it| self.entries.get(it)) {
                let earlier = self.entries.iter().take(n);
                if !entry.again && earlier.clone().any(|it| it.stage == entry.stage) {
                    keep("stage", LogFault::Twice { stage: entry.stage });
                } else if entry.stage.rank() < before.stage.rank() {
                    let (stage, before) = (entry.stage, before.stage);
                    keep("stage", LogFault::OutOfOrder { stage, before });
                }
                if entry.at < before.at {
                    keep("at", LogFault::Backwards { at: entry.at, before: before.at });
                }
                if !gone_through(before, entry).any(Stage::adds)
                    && finish(self.entries.get(..=n).unwrap_or_default())
                        == finish(self.entries.get(..n).unwrap_or_default())
                    && entry.mass_kg > before.mass_kg + SAME_KG
                {
                    let (stage, mass_kg) = (entry.stage, entry.mass_kg);
                    keep("mass", LogFault::Heavier { stage, mass_kg, before_kg: before.mass_kg });
                }
            }
            for (field, fault) in absurd(entry, size) {
                keep(field, fault);
            }
        }
        found
    }
}

/// Stages that were gone through from one entry to the next; none where it is the same stage again.
pub(super) fn gone_through(from: &Entry, to: &Entry) -> impl Iterator<Item = Stage> {
    let (from, to, again) = (from.stage, to.stage, to.again);
    let between = move |it: &Stage| it.rank() > from.rank() && it.rank() < to.rank();
    Stage::ALL.into_iter().filter(move |it| !again && (*it == to || between(it)))
}

fn absurd(entry: &Entry, size: &Size) -> Vec<(&'static str, LogFault)> {
    let mut found = Vec::new();
    if let Some(meter) = entry.meter.filter(|it| !(0.01..=0.30).contains(it)) {
        found.push(("meter", LogFault::Meter { meter }));
    }
    if !entry.stage.has_handle() {
        if let Some(it) = OutOfRange::check("mass", entry.mass_kg, "kg", BLANK_KG) {
            found.push(("mass", Absurd::Impossible(it).into()));
        }
        let stage = entry.stage;
        if entry.balance_m.is_some() {
            found.push(("balance", LogFault::NoHandle { stage }));
        }
        if entry.pendulum.is_some() {
            found.push(("ten_swings", LogFault::NoHandle { stage }));
        }
        return found;
    }
    if entry.pendulum.is_some() && entry.balance_m.is_none() {
        found.push(("ten_swings", LogFault::NoBalance));
    }
    let placed = |absurd: Absurd| {
        let field = match absurd.field() {
            "mass" => "mass",
            "balance" => "balance",
            _ => "ten_swings",
        };
        (field, LogFault::Absurd(absurd))
    };
    match judge_bat(&entry.reading("")) {
        Err(faults) => found.extend(faults.into_iter().map(placed)),
        Ok(_) => {
            if let Some(balance_m) = entry.balance_m {
                let pendulum = entry.pendulum;
                let timed = pendulum.as_ref().map(|it| (it, small_swing_period_s(it)));
                let judged = judge_pendulum(size.length_m(), balance_m, timed);
                found.extend(judged.err().map(placed));
            }
        }
    }
    found
}

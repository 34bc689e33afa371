//! The fatigue that a rest between balls does not take away, with a wide band.
//!
//! The three compartments recover between balls and give no fall from ten runs to fifty. Something
//! slower exists: four-compartment models have it (Front Physiol 2024, 15:1366172), their constants
//! were not seen. The one measured anchor is the leg: knee extensor torque −10 % over 42 balls with 6
//! sprints an over and −18 % with 12 (Christie et al. 2019, J Strength Cond Res 33:3056, read). Nothing
//! measured is known for trunk and arms, so the band runs from nothing to as much as the knee.

use crate::measurement::nets::Lasting;
use crate::source::{Source, Status};

/// Where the anchors come from.
pub const SOURCE: Source = Source {
    work: "Christie et al. 2019, J Strength Cond Res 33:3056 (knee extensors, 42 balls); carried over to trunk and arms by assumption",
    status: Status::Assumption,
};

/// Loss of logarithm of knee torque a run sprinted: `(ln 0.90 − ln 0.82)/(84 − 42 sprints)`, computed.
const PER_RUN_RUN: f64 = 0.002_216_4;
/// What 42 balls lose besides their 42 sprints, on the logarithm: `−ln 0.90 − 42 × the above`, computed.
const REST_OF_42_BALLS: f64 = 0.012_27;
/// How that remainder is divided: half by the balls faced, half by the time (assumption).
const BY_BALLS: f64 = 0.5;
/// Time of those 42 balls at 42 s a ball, h.
const HOURS_OF_42_BALLS: f64 = 42.0 * 42.0 / 3600.0;

/// How much of the knee's loss trunk and arms suffer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Band {
    /// None: as thirty greatest grips with 25 s rests showed no fall (Kramer & Knudson 1992, read).
    Low,
    /// A third: assumption, no source.
    Central,
    /// All of it.
    High,
}

impl Band {
    /// Share of the knee's loss, of a player of whom nothing is known.
    pub fn share_of_knee(self) -> f64 {
        let Lasting { low, central, high } = Lasting::UNKNOWN;
        match self {
            Self::Low => low,
            Self::Central => central,
            Self::High => high,
        }
    }
}

/// What an innings has asked so far.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exertion {
    /// Balls faced.
    pub balls_faced: f64,
    /// Lengths of the pitch run, own runs and the partner's.
    pub runs_run: f64,
    /// Time at the wicket, s.
    pub time_s: f64,
}

impl Exertion {
    /// Nothing yet.
    pub const NONE: Self = Self { balls_faced: 0.0, runs_run: 0.0, time_s: 0.0 };

    /// Share of the fresh capacity that is left, before what the compartments take; the same for every
    /// joint group.
    pub fn capacity(self, band: Band) -> f64 {
        self.capacity_with(band.share_of_knee())
    }

    /// The same with trunk and arms suffering this share of the knee's loss.
    pub fn capacity_with(self, share_of_knee: f64) -> f64 {
        let balls = BY_BALLS * self.balls_faced / 42.0;
        let hours = (1.0 - BY_BALLS) * self.time_s / 3600.0 / HOURS_OF_42_BALLS;
        let knee = PER_RUN_RUN * self.runs_run + REST_OF_42_BALLS * (balls + hours);
        libm::exp(-share_of_knee * knee)
    }
}

//! The fatigue that a rest between balls does not take away, with a wide band.
//!
//! The three compartments recover between balls and give no fall from ten runs to fifty. Something
//! slower exists: four-compartment models have it (Front Physiol 2024, 15:1366172), their constants
//! were not seen. The one measured anchor is the leg: knee extensor torque −10 % over 42 balls with 6
//! sprints an over and −18 % with 12 (Christie et al. 2019, J Strength Cond Res 33:3056, read). Nothing
//! measured is known for trunk and arms: it is carried over to them by assumption, and the band runs from nothing to as
//! much as the knee.

/// Loss of logarithm of knee torque a run sprinted: `(ln 0.90 − ln 0.82)/(84 − 42 sprints)`, computed.
const PER_RUN_RUN: f64 = 0.002_216_4;
/// What 42 balls lose besides their 42 sprints, on the logarithm: `−ln 0.90 − 42 × the above`, computed.
const REST_OF_42_BALLS: f64 = 0.012_27;
/// How that remainder is divided: half by the balls faced, half by the time (assumption).
const BY_BALLS: f64 = 0.5;
/// Time of those 42 balls at 42 s a ball, h.
const HOURS_OF_42_BALLS: f64 = 42.0 * 42.0 / 3600.0;

/// What an innings has asked so far.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Exertion {
    /// Balls faced.
    pub balls_faced: f64,
    /// Lengths of the pitch run, own runs and the partner's.
    pub runs_run: f64,
    /// Time at the wicket, s.
    pub time_s: f64,
}

impl Exertion {
    /// Share of the fresh capacity that is left, before what the compartments take, with trunk and arms suffering this
    /// share of the knee's loss ([`Lasting`](crate::measurement::nets::Lasting)); the same for every joint group.
    pub fn capacity(self, share_of_knee: f64) -> f64 {
        let balls = BY_BALLS * self.balls_faced / 42.0;
        let hours = (1.0 - BY_BALLS) * self.time_s / 3600.0 / HOURS_OF_42_BALLS;
        let knee = PER_RUN_RUN * self.runs_run + REST_OF_42_BALLS * (balls + hours);
        libm::exp(-share_of_knee * knee)
    }
}

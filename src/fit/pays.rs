//! Whether ordering a new bat pays, against the best of today's.

use crate::worth::constants::{BEYOND_DOUBT_SD, WORTH_ORDERING};
use crate::worth::expected::Worth;

/// Whether it pays.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pays {
    /// The gain is beyond its doubt and worth having.
    Yes,
    /// The gain is not worth having.
    No,
    /// It would be worth having, but lies within its doubt.
    Undecided,
}

/// What a new bat would gain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gain {
    /// Whether it pays.
    pub pays: Pays,
    /// Expected ball speed gained over the best of today's bats, m/s.
    pub gain_m_s: f64,
    /// One standard deviation of the gain over the possible players, m/s.
    pub gain_sd_m_s: f64,
}

/// A new bat against the best of today's; without a bat that may be used, ordering one pays.
pub fn gain(today: Option<&Worth>, new: &Worth) -> Gain {
    let [gain_m_s, gain_sd_m_s] = match today {
        Some(today) => today.to(new),
        None => [new.mean_m_s(), new.sd_m_s()],
    };
    let pays = if gain_m_s < WORTH_ORDERING.value {
        Pays::No
    } else if gain_m_s > BEYOND_DOUBT_SD.value * gain_sd_m_s {
        Pays::Yes
    } else {
        Pays::Undecided
    };
    Gain { pays, gain_m_s, gain_sd_m_s }
}

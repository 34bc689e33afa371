//! How long a share of the greatest strength can be held, and back.

/// Endurance of a steady hold, `t = b0 · f^b1`, f the share of the greatest strength.
///
/// Fitted to holds that last; at f = 1 it gives b0 (a third of a minute), which no one holds at full
/// strength: below about half a minute it only says "near the maximum".
///
/// Source: Frey Law & Avin 2010, Ergonomics 53:109, Table 2, power model (read second-hand).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Endurance {
    /// b0: time at full strength by the fit, s.
    pub time_at_full_s: f64,
    /// b1: exponent, negative.
    pub exponent: f64,
}

impl Endurance {
    /// Trunk.
    pub const TRUNK: Self = Self { time_at_full_s: 22.69, exponent: -2.27 };
    /// Shoulder.
    pub const SHOULDER: Self = Self { time_at_full_s: 14.86, exponent: -1.83 };
    /// Elbow.
    pub const ELBOW: Self = Self { time_at_full_s: 17.98, exponent: -2.21 };
    /// Grip and hand; stands in for the wrist, which has no row.
    pub const GRIP: Self = Self { time_at_full_s: 33.55, exponent: -1.61 };

    /// Time a share of the greatest strength can be held, s.
    pub fn hold_time_s(self, share: f64) -> f64 {
        self.time_at_full_s * libm::pow(share, self.exponent)
    }

    /// Share of the greatest strength that can be held for a time; at most 1.
    pub fn share_held(self, time_s: f64) -> f64 {
        libm::pow(time_s / self.time_at_full_s, 1.0 / self.exponent).min(1.0)
    }
}

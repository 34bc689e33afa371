//! Limits that no bat passes, and those that few do: the first are refused, the second questioned.
//!
//! Every limit here is an assumption, set wide; a fault names the field and both numbers.

use std::f64::consts::{FRAC_PI_2, PI};

use super::bench::{BatReading, PendulumReading};
use super::out_of_range::OutOfRange;
use crate::frames::STANDARD_GRAVITY_M_S2;

/// Without the binary dust of a converted unit: to the millionth.
pub(crate) fn tidy(value: &f64) -> f64 {
    libm::round(value * 1e6) / 1e6
}

/// A reading that cannot be true.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Absurd {
    /// Not a number, or infinite.
    #[error("{field} is {value}, which is not a number one can read off an instrument")]
    NotANumber {
        /// Field, as in a scenario.
        field: &'static str,
        /// What was given.
        value: f64,
    },
    /// Zero or negative.
    #[error("{field} is {} {unit}; it must be above zero", tidy(.value))]
    NotPositive {
        /// Field, as in a scenario.
        field: &'static str,
        /// What was given.
        value: f64,
        /// SI unit of the value.
        unit: &'static str,
    },
    /// Outside what any bat can be.
    #[error(
        "{} is {} {unit}; no bat lies outside {} to {} {unit}",
        .0.field, tidy(&.0.value), .0.low, .0.high, unit = .0.unit
    )]
    Impossible(OutOfRange),
    /// Balance point off the end of the bat.
    #[error(
        "balance point {} m lies beyond the toe: the bat is {} m long, measured from the top of the handle",
        tidy(.balance_m), tidy(.length_m)
    )]
    BalanceBeyondToe {
        /// Balance point from the top of the handle, m.
        balance_m: f64,
        /// Overall length, m.
        length_m: f64,
    },
    /// Edges thicker than the whole bat is deep.
    #[error(
        "the edges are {} m thick, more than the whole depth of {} m", tidy(.edge_m), tidy(.depth_m)
    )]
    EdgeThickerThanDepth {
        /// Edge thickness, m.
        edge_m: f64,
        /// Depth from face to spine, m.
        depth_m: f64,
    },
    /// The bat would not hang down.
    #[error(
        "the pivot, {} m from the top of the handle, must lie above the balance point, {} m from it",
        tidy(.pivot_m), tidy(.balance_m)
    )]
    PivotBelowBalance {
        /// Pivot from the top of the handle, m.
        pivot_m: f64,
        /// Balance point from the top of the handle, m.
        balance_m: f64,
    },
    /// Quicker than a bat whose whole mass sits at its balance point.
    #[error(
        "one swing in {period_s:.3} s is faster than physics allows: with this balance point and pivot no body swings in less than {shortest_s:.3} s"
    )]
    PendulumTooFast {
        /// Time of one swing, s.
        period_s: f64,
        /// Shortest possible, s.
        shortest_s: f64,
    },
    /// Slower than a bat whose whole mass sits at its two ends.
    #[error(
        "one swing in {period_s:.3} s is slower than physics allows: a bat of this length and balance point swings in less than {longest_s:.3} s"
    )]
    PendulumTooSlow {
        /// Time of one swing, s.
        period_s: f64,
        /// Longest possible, s.
        longest_s: f64,
    },
}

impl Absurd {
    /// The field to mend, as in a scenario.
    pub fn field(&self) -> &'static str {
        match self {
            Self::NotANumber { field, .. } | Self::NotPositive { field, .. } => field,
            Self::Impossible(it) => it.field,
            Self::BalanceBeyondToe { .. } => "balance",
            Self::EdgeThickerThanDepth { .. } => "edge",
            Self::PivotBelowBalance { .. } => "pendulum.pivot",
            Self::PendulumTooFast { .. } | Self::PendulumTooSlow { .. } => "pendulum.time",
        }
    }
}

/// Possible and usual range of one quantity of a bat, SI.
struct Range {
    field: &'static str,
    possible: [f64; 2],
    usual: [f64; 2],
    unit: &'static str,
}

const fn range(
    field: &'static str,
    possible: [f64; 2],
    usual: [f64; 2],
    unit: &'static str,
) -> Range {
    Range { field, possible, usual, unit }
}

const MASS: Range = range("mass", [0.2, 3.0], [0.5, 1.5], "kg");
const LENGTH: Range = range("length", [0.3, 1.2], [0.55, 0.9652], "m");
const BALANCE: Range = range("balance", [0.05, 1.2], [0.35, 0.62], "m");
const WIDTH: Range = range("width", [0.04, 0.2], [0.07, 0.11], "m");
const EDGE: Range = range("edge", [0.001, 0.1], [0.01, 0.042], "m");
const DEPTH: Range = range("depth", [0.01, 0.15], [0.03, 0.07], "m");
const HANDLE: Range = range("handle_diameter", [0.01, 0.08], [0.025, 0.045], "m");
const PIVOT: Range = range("pendulum.pivot", [0.0, 0.5], [0.0, 0.25], "m");
const AMPLITUDE: Range = range("pendulum.amplitude", [1e-3, FRAC_PI_2], [0.02, 0.36], "rad");
const SWINGS: Range = range("pendulum.swings", [1.0, 1000.0], [5.0, 100.0], "swings");
/// How long the pendulum takes is judged beside the bat, in [`judge_pendulum`].
const TIME: Range = range("pendulum.time", [0.0, f64::INFINITY], [0.0, f64::INFINITY], "s");

impl Range {
    /// The value, if it can be true but seldom is; `zero_is_fine` for a station that may be the top of the handle itself.
    fn judge(&self, value: f64, zero_is_fine: bool) -> Result<Option<OutOfRange>, Absurd> {
        let &Self { field, possible, usual, unit } = self;
        if !value.is_finite() {
            return Err(Absurd::NotANumber { field, value });
        }
        if value < 0.0 || (value == 0.0 && !zero_is_fine) {
            return Err(Absurd::NotPositive { field, value, unit });
        }
        if let Some(fault) = OutOfRange::check(field, value, unit, possible) {
            return Err(Absurd::Impossible(fault));
        }
        Ok(OutOfRange::check(field, value, unit, usual))
    }
}

/// Every reading of a bat that cannot be true, all at once; or else those that are merely unusual.
pub fn judge_bat(reading: &BatReading) -> Result<Vec<OutOfRange>, Vec<Absurd>> {
    let mut verdicts = vec![MASS.judge(reading.mass_kg, false)];
    let optional = [
        (&LENGTH, reading.length_m),
        (&BALANCE, reading.balance_m),
        (&WIDTH, reading.width_m),
        (&EDGE, reading.edge_m),
        (&DEPTH, reading.depth_m),
        (&HANDLE, reading.handle_diameter_m),
    ];
    verdicts
        .extend(optional.iter().filter_map(|(range, value)| Some(range.judge((*value)?, false))));
    if let Some(pendulum) = &reading.pendulum {
        verdicts.push(SWINGS.judge(f64::from(pendulum.swings), false));
        verdicts.push(AMPLITUDE.judge(pendulum.amplitude_rad, false));
        verdicts.push(PIVOT.judge(pendulum.pivot_from_top_m, true));
        verdicts.push(TIME.judge(pendulum.time_s, false));
    }
    let mut unusual = Vec::new();
    let mut absurd = Vec::new();
    for verdict in verdicts {
        match verdict {
            Ok(doubt) => unusual.extend(doubt),
            Err(fault) => absurd.push(fault),
        }
    }
    if let (Some(edge_m), Some(depth_m)) = (reading.edge_m, reading.depth_m)
        && edge_m > depth_m
    {
        absurd.push(Absurd::EdgeThickerThanDepth { edge_m, depth_m });
    }
    if absurd.is_empty() { Ok(unusual) } else { Err(absurd) }
}

/// Whether balance point and pendulum fit a bat of this length. `period_s` is the time of one small
/// swing. A body on a line from the top of the handle to the toe has a moment about its balance point
/// between nothing (all at one point) and `m d (L − d)` (all at the two ends).
pub fn judge_pendulum(
    length_m: f64,
    balance_m: f64,
    pendulum: Option<(&PendulumReading, f64)>,
) -> Result<(), Absurd> {
    if balance_m >= length_m {
        return Err(Absurd::BalanceBeyondToe { balance_m, length_m });
    }
    let Some((reading, period_s)) = pendulum else { return Ok(()) };
    let pivot_m = reading.pivot_from_top_m;
    let pivot_to_com_m = balance_m - pivot_m;
    if pivot_to_com_m <= 0.0 {
        return Err(Absurd::PivotBelowBalance { pivot_m, balance_m });
    }
    let period = |equivalent_m: f64| 2.0 * PI * libm::sqrt(equivalent_m / STANDARD_GRAVITY_M_S2);
    let shortest_s = period(pivot_to_com_m);
    let ends_m2 = balance_m * (length_m - balance_m);
    let longest_s = period(pivot_to_com_m + ends_m2 / pivot_to_com_m);
    if period_s <= shortest_s {
        Err(Absurd::PendulumTooFast { period_s, shortest_s })
    } else if period_s >= longest_s {
        Err(Absurd::PendulumTooSlow { period_s, longest_s })
    } else {
        Ok(())
    }
}

//! The three-compartment equations: resting, active and fatigued share of one joint group's muscle.

use crate::player::joints::Group;

/// Rates of fatigue and recovery. One row's three belong together.
///
/// Source: F, R: Frey-Law, Looft & Heitsman 2012, J Biomech 45:1803, Table 1; r: Looft, Herkert & Frey-Law 2018, J Biomech
/// 77:16, shoulder Looft & Frey-Law 2020 (read second-hand); trunk r: assumed that of the large joints.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rates {
    /// F: active muscle tires, 1/s.
    pub fatigue_per_s: f64,
    /// R: fatigued muscle recovers, 1/s.
    pub recovery_per_s: f64,
    /// r: recovery is this many times faster while the target load is zero.
    pub rest_multiplier: f64,
}

impl Rates {
    /// Trunk; no r was published for it, 15 is that of ankle, knee, elbow and shoulder.
    pub const TRUNK: Self =
        Self { fatigue_per_s: 0.00755, recovery_per_s: 0.00075, rest_multiplier: 15.0 };
    /// Shoulder.
    pub const SHOULDER: Self =
        Self { fatigue_per_s: 0.0182, recovery_per_s: 0.00168, rest_multiplier: 15.0 };
    /// Elbow.
    pub const ELBOW: Self =
        Self { fatigue_per_s: 0.00912, recovery_per_s: 0.00094, rest_multiplier: 15.0 };
    /// Grip and hand; stands in for forearm and wrist.
    pub const GRIP: Self =
        Self { fatigue_per_s: 0.0098, recovery_per_s: 0.00064, rest_multiplier: 30.0 };

    /// The row of a joint group.
    pub fn of(group: Group) -> Self {
        match group {
            Group::Trunk => Self::TRUNK,
            Group::TopShoulder | Group::BottomShoulder => Self::SHOULDER,
            Group::TopElbow | Group::BottomElbow => Self::ELBOW,
            Group::TopWrist | Group::BottomWrist => Self::GRIP,
        }
    }

    /// Share of the greatest strength that can be held without end, `R/(F + R)`.
    pub fn endless_share(self) -> f64 {
        self.recovery_per_s / (self.fatigue_per_s + self.recovery_per_s)
    }

    /// Time a steady share of the greatest strength can be held from fresh, s:
    /// `−ln(1 − R(1 − f)/(F f))/R`; infinite at or below [`endless_share`](Self::endless_share).
    pub fn hold_time_s(self, share: f64) -> f64 {
        let Self { fatigue_per_s: F, recovery_per_s: R, .. } = self;
        let left = 1.0 - R * (1.0 - share) / (F * share);
        if left > 0.0 { -libm::log(left) / R } else { f64::INFINITY }
    }
}

/// Shares of one joint group's muscle; they add to 1.
///
/// `dM_A/dt = C − F·M_A`, `dM_F/dt = F·M_A − R'·M_F`, `dM_R/dt = R'·M_F − C`; R' = r·R while the target
/// load is zero, else R (the rule of Rakshit et al. 2021: under any load recovery is slow). The
/// controller C is without delay: it keeps the active share at the target while resting muscle is left,
/// and at whatever is left after that; between changes of the target both have a closed form, used here.
/// Xia & Frey-Law 2008, J Biomech 41:3046. Made for held or intermittent isometric effort: no source
/// ties it to the swing of a bat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Compartments {
    /// M_R.
    pub resting: f64,
    /// M_A.
    pub active: f64,
    /// M_F.
    pub fatigued: f64,
}

impl Compartments {
    /// Nothing active, nothing tired.
    pub const FRESH: Self = Self { resting: 1.0, active: 0.0, fatigued: 0.0 };

    /// Share of the greatest strength that is left: all that is not fatigued.
    pub fn capacity(self) -> f64 {
        1.0 - self.fatigued
    }

    /// The state after a target load, as a share of the greatest fresh strength, for a time.
    pub fn after(self, rates: Rates, target_share: f64, duration_s: f64) -> Self {
        let target = target_share.clamp(0.0, 1.0);
        let fatigued = fatigued_after(self.fatigued, rates, target, duration_s);
        let active = target.min(1.0 - fatigued);
        Self { resting: 1.0 - fatigued - active, active, fatigued }
    }
}

/// Value after `time_s` of a quantity that approaches `limit` at `rate_per_s`.
fn approach(from: f64, limit: f64, rate_per_s: f64, time_s: f64) -> f64 {
    limit + (from - limit) * libm::exp(-rate_per_s * time_s)
}

/// Time in which that quantity reaches `level`, s; infinite if it does not lie on the way.
fn time_to_reach(from: f64, limit: f64, rate_per_s: f64, level: f64) -> f64 {
    let ratio = (level - limit) / (from - limit);
    if ratio > 0.0 && ratio <= 1.0 { -libm::log(ratio) / rate_per_s } else { f64::INFINITY }
}

/// Fatigued share after a steady target. Two laws meet where the fatigued share is 1 − target: below it
/// the target is met (`F f − R M_F`), above it all that is left is active (`F (1 − M_F) − R M_F`). The
/// limits of both lie on the same side of the meeting point, so it is crossed at most once.
fn fatigued_after(from: f64, rates: Rates, target: f64, duration_s: f64) -> f64 {
    let Rates { fatigue_per_s: F, recovery_per_s: R, rest_multiplier } = rates;
    if target == 0.0 {
        return approach(from, 0.0, R * rest_multiplier, duration_s);
    }
    let met = (F * target / R, R);
    let failing = (F / (F + R), F + R);
    let edge = 1.0 - target;
    let (first, second) =
        if from < edge || (from == edge && met.0 < edge) { (met, failing) } else { (failing, met) };
    let crossing_s = time_to_reach(from, first.0, first.1, edge);
    if from == edge || crossing_s >= duration_s {
        return approach(from, first.0, first.1, duration_s);
    }
    approach(edge, second.0, second.1, duration_s - crossing_s)
}

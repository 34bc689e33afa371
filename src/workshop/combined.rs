//! All readings of a bat on the bench together: each tells a little, and what the plane took between two of them is
//! known, more or less. A Kalman filter on weight, first and second moment about the pickup axis.

use nalgebra::{Matrix3, Vector3};

use super::pickup_moments::PickupMoments;
use crate::bat::figures::WeighedBat;
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use crate::uncertain::Uncertain;

/// One reading of scale, pencil and pendulum.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Weight, kg.
    pub mass_kg: Uncertain,
    /// Balance point from the top of the handle, m.
    pub balance_m: Uncertain,
    /// Swing moment, kg m².
    pub swing_moment_kg_m2: Uncertain,
}

impl Reading {
    /// Of a bat as it was weighed up.
    pub fn of(it: &WeighedBat) -> Self {
        let (mass_kg, balance_m) = (it.mass_kg, it.balance_m);
        Self { mass_kg, balance_m, swing_moment_kg_m2: it.swing_moment_kg_m2 }
    }

    /// Moments about the pickup axis.
    pub fn moments(&self) -> PickupMoments {
        let swing_moment_kg_m2 = self.swing_moment_kg_m2.value;
        PickupMoments::of(self.mass_kg.value, self.balance_m.value, swing_moment_kg_m2)
    }
}

/// What was done between two readings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Between {
    /// Nothing.
    Nothing,
    /// Wood came off one place.
    Planed {
        /// What a kilogram of it takes along.
        per_kg: PickupMoments,
        /// What should come off, kg; none where nobody knows.
        asked_kg: Option<f64>,
    },
    /// Something else: the readings before say nothing of the bat after.
    Other,
}

/// What air and grip do to a bat between two readings, kg: assumption.
const DRIFT_KG: f64 = 0.001;
/// One standard deviation of what comes off where nobody knows how much, kg: as good as nothing.
const UNKNOWN_KG: f64 = 0.1;
/// One standard deviation of where on its place the wood came off, as a share of its moments: assumption.
const WHERE_SD: f64 = 0.05;

/// What all readings say of the bat as it is after the last of them; `between` has what was done before each but the
/// first; a plane is off by such a share, one standard deviation. Also how far the last reading lies from what those
/// before it foretold, in standard deviations of the weight; none where they foretold nothing.
pub fn combined(
    readings: &[Reading],
    between: &[Between],
    planing_sd: f64,
) -> Option<(Reading, Option<f64>)> {
    let mut state: Option<(Vector3<f64>, Matrix3<f64>)> = None;
    let mut apart = None;
    for (n, it) in readings.iter().enumerate() {
        let done = n.checked_sub(1).and_then(|n| between.get(n)).unwrap_or(&Between::Other);
        let foretold = state.and_then(|state| after(state, done, planing_sd));
        let (read, noise) = vector(it);
        apart = foretold
            .map(|(mean, spread)| (read.x - mean.x) / libm::sqrt(spread[(0, 0)] + noise[(0, 0)]));
        state = Some(match foretold {
            None => (read, noise),
            Some((mean, spread)) => {
                let gain = spread * (spread + noise).try_inverse()?;
                (mean + gain * (read - mean), (Matrix3::identity() - gain) * spread)
            }
        });
    }
    let (mean, spread) = state?;
    let arm_m = mean.y / mean.x;
    // Of the balance point, to first order in weight and first moment.
    let slope = Vector3::new(-arm_m, 1.0, 0.0) / mean.x;
    let sd = |of: Vector3<f64>| libm::sqrt((of.transpose() * spread * of).x.max(0.0));
    // What nobody measured stays estimated.
    let last = readings.last()?;
    let like = |it: &Uncertain, value: f64, sd: f64| Uncertain { value, sd, origin: it.origin };
    let reading = Reading {
        mass_kg: like(&last.mass_kg, mean.x, sd(Vector3::x())),
        balance_m: like(&last.balance_m, PICKUP_AXIS_FROM_TOP_M + arm_m, sd(slope)),
        swing_moment_kg_m2: like(&last.swing_moment_kg_m2, mean.z, sd(Vector3::z())),
    };
    Some((reading, apart))
}

/// Weight and moments of a reading, and their covariance.
fn vector(it: &Reading) -> (Vector3<f64>, Matrix3<f64>) {
    let Reading { mass_kg, balance_m, swing_moment_kg_m2 } = it;
    let arm_m = balance_m.value - PICKUP_AXIS_FROM_TOP_M;
    let read = Vector3::from(it.moments().array());
    let mass = mass_kg.sd * mass_kg.sd;
    let first = mass_kg.value * balance_m.sd;
    let swing = swing_moment_kg_m2.sd * swing_moment_kg_m2.sd;
    let noise = Matrix3::new(
        mass,
        mass * arm_m,
        0.0,
        mass * arm_m,
        mass * arm_m * arm_m + first * first,
        0.0,
        0.0,
        0.0,
        swing,
    );
    (read, noise)
}

fn after(
    (mean, spread): (Vector3<f64>, Matrix3<f64>),
    done: &Between,
    planing_sd: f64,
) -> Option<(Vector3<f64>, Matrix3<f64>)> {
    let (off_kg, per_kg) = match done {
        Between::Other => return None,
        Between::Nothing => {
            // Wherever it went: as the bat itself lies.
            (Uncertain::computed(0.0, 0.0), mean / mean.x)
        }
        Between::Planed { per_kg, asked_kg } => {
            let off = |it: f64| Uncertain::computed(it, planing_sd * it);
            let off = asked_kg.map_or(Uncertain::computed(0.0, UNKNOWN_KG), off);
            (off, Vector3::from(per_kg.array()))
        }
    };
    let where_ = Vector3::new(0.0, per_kg.y, per_kg.z) * (WHERE_SD * off_kg.value);
    let drift = DRIFT_KG * DRIFT_KG;
    let moved =
        per_kg * per_kg.transpose() * (off_kg.sd * off_kg.sd + drift) + where_ * where_.transpose();
    Some((mean - per_kg * off_kg.value, spread + moved))
}

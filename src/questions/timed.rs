//! What timing a bat's pendulum makes of its swing moment.

use super::loaded::Loaded;
use crate::bat::figures::weigh;
use crate::measurement::bench::{
    BatReading, PICKUP_AXIS_FROM_TOP_M, PendulumReading, USUAL_AMPLITUDE_RAD,
};
use crate::uncertain::Uncertain;

/// Numbers of swings for which the doubt is told.
const SWINGS: [u32; 7] = [1, 2, 5, 10, 15, 20, 30];

impl Loaded {
    /// The swing moment of a bat, kg m², had so many full swings taken so long, s; as estimated where none is timed.
    /// None where such a bat cannot be.
    pub fn timed(&self, reading: &BatReading, timed: Option<(u32, f64)>) -> Option<Uncertain> {
        let (pivot_from_top_m, amplitude_rad) =
            reading.pendulum.as_ref().map_or((PICKUP_AXIS_FROM_TOP_M, USUAL_AMPLITUDE_RAD), |it| {
                (it.pivot_from_top_m, it.amplitude_rad)
            });
        let test =
            |(swings, time_s)| PendulumReading { swings, time_s, pivot_from_top_m, amplitude_rad };
        let reading = BatReading { pendulum: timed.map(test), ..reading.clone() };
        Some(weigh(&reading, &self.sizes, &self.laws).ok()?.swing_moment_kg_m2)
    }

    /// Its doubt if so many swings of this period, s, were timed: swings, and one standard deviation as a share.
    pub fn doubt_by_swings(&self, reading: &BatReading, period_s: f64) -> Vec<(u32, f64)> {
        let doubt = |swings: u32| {
            let timed = Some((swings, period_s * f64::from(swings)));
            Some((swings, self.timed(reading, timed)?.relative_sd()))
        };
        SWINGS.into_iter().filter_map(doubt).collect()
    }
}

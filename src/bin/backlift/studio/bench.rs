//! The bench: the bat there weighed up, and what tapping would make of it.

use backlift::bat::figures::{WeighedBat, weigh};
use backlift::measurement::bench::{
    BatReading, PICKUP_AXIS_FROM_TOP_M, PendulumReading, USUAL_AMPLITUDE_RAD,
};
use backlift::uncertain::Uncertain;

use super::state::Studio;

/// Numbers of swings for which the doubt is told.
pub const SWINGS: [u32; 7] = [1, 2, 5, 10, 15, 20, 30];

/// Runs and short balls that are offered where it is said what was seen.
pub const SEEN_RUNS: [&str; 7] = ["0", "10", "20", "30", "50", "75", "100"];
pub const SEEN_BALLS: [&str; 6] = ["5", "10", "20", "30", "50", "100"];
impl Studio {
    /// Name of the stroke to the short ball that leads.
    pub fn lead_stroke(&self) -> String {
        let loaded = self.derived.loaded.as_ref();
        let lead = loaded.and_then(|it| it.strokes.get(it.lead()));
        lead.map_or_else(|| "pull".to_owned(), |it| it.name.clone())
    }

    /// The bat at the bench, weighed up; of an earlier text where the present one is at fault.
    pub fn at_bench(&self) -> Option<&WeighedBat> {
        self.derived.loaded.as_ref()?.bats.get(self.bench_bat)
    }

    /// Its swing moment as the taps so far have it.
    pub fn tapped_swing_moment(&self) -> Option<Uncertain> {
        let bat = self.at_bench()?;
        let swings = u32::try_from(self.taps.swings()).ok().filter(|it| *it > 0)?;
        self.weighed_again(&bat.reading, Some(swings), self.taps.time_s())
    }

    /// Its swing moment without any pendulum test.
    pub fn untimed_swing_moment(&self) -> Option<Uncertain> {
        self.weighed_again(&self.at_bench()?.reading, None, 0.0)
    }

    /// Doubt of its swing moment if so many swings were timed: swings, and one standard deviation as a
    /// share.
    pub fn doubt_by_swings(&self) -> Vec<(u32, f64)> {
        let Some(bat) = self.at_bench() else { return Vec::new() };
        let period_s = match (&bat.reading.pendulum, self.taps.swings()) {
            (_, swings @ 1..) => self.taps.time_s() / swings as f64,
            (Some(it), _) => it.time_s / f64::from(it.swings),
            (None, _) => return Vec::new(),
        };
        let doubt = |swings: u32| {
            let time_s = period_s * f64::from(swings);
            Some((swings, self.weighed_again(&bat.reading, Some(swings), time_s)?.relative_sd()))
        };
        SWINGS.into_iter().filter_map(doubt).collect()
    }

    fn weighed_again(
        &self,
        reading: &BatReading,
        swings: Option<u32>,
        time_s: f64,
    ) -> Option<Uncertain> {
        let loaded = self.derived.loaded.as_ref()?;
        let (pivot_from_top_m, amplitude_rad) =
            reading.pendulum.as_ref().map_or((PICKUP_AXIS_FROM_TOP_M, USUAL_AMPLITUDE_RAD), |it| {
                (it.pivot_from_top_m, it.amplitude_rad)
            });
        let test = |swings| PendulumReading { swings, time_s, pivot_from_top_m, amplitude_rad };
        let reading = BatReading { pendulum: swings.map(test), ..reading.clone() };
        Some(weigh(&reading, &loaded.sizes, &loaded.laws).ok()?.swing_moment_kg_m2)
    }
}

//! The bench: the bat there weighed up, and what tapping would make of it.

use backlift::bat::figures::WeighedBat;
use backlift::uncertain::Uncertain;

use super::state::Studio;

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
        let swings = u32::try_from(self.taps.swings()).ok().filter(|it| *it > 0)?;
        let timed = Some((swings, self.taps.time_s()));
        self.derived.loaded.as_ref()?.timed(&self.at_bench()?.reading, timed)
    }

    /// Its swing moment without any pendulum test.
    pub fn untimed_swing_moment(&self) -> Option<Uncertain> {
        self.derived.loaded.as_ref()?.timed(&self.at_bench()?.reading, None)
    }

    /// Doubt of its swing moment if so many swings were timed: swings, and one standard deviation as a
    /// share.
    pub fn doubt_by_swings(&self) -> Vec<(u32, f64)> {
        let (Some(loaded), Some(bat)) = (&self.derived.loaded, self.at_bench()) else {
            return Vec::new();
        };
        let period_s = match (&bat.reading.pendulum, self.taps.swings()) {
            (_, swings @ 1..) => self.taps.time_s() / swings as f64,
            (Some(it), _) => it.time_s / f64::from(it.swings),
            (None, _) => return Vec::new(),
        };
        loaded.doubt_by_swings(&bat.reading, period_s)
    }
}

//! What in a log can be, and still is not as it should be.

use super::fault::gone_through;
use super::{BatLog, Entry, Stage};
use crate::bat::described::SEASONED;

/// Wetter than this, willow is not seasoned, kg of water for each kg of dry wood: common practice, no source.
const UNSEASONED: f64 = 0.16;
/// A scale shows no less, kg.
const STEP_KG: f64 = 0.001;

impl Entry {
    /// Weight of a piece without a handle once it is seasoned, kg; of anything else as it was weighed.
    pub fn seasoned_kg(&self) -> f64 {
        let wet = self.meter.filter(|it| *it > SEASONED && !self.stage.has_handle());
        wet.map_or(self.mass_kg, |it| self.mass_kg * (1.0 + SEASONED) / (1.0 + it))
    }
}

impl BatLog {
    /// Everything in it that is odd, each in a sentence.
    pub fn doubts(&self) -> Vec<String> {
        let wet = self.entries.iter().filter_map(|it| {
            let meter = it.meter.filter(|meter| *meter > UNSEASONED)?;
            Some(format!(
                "{} at {:.0} % water is not seasoned: let it dry first; the forecast takes it as dried to {:.0} %",
                it.stage.name(),
                1e2 * meter,
                1e2 * SEASONED
            ))
        });
        let heavier = self.entries.windows(2).filter_map(|pair| {
            let [before, after] = pair else { return None };
            let more_kg = after.mass_kg - before.mass_kg;
            let stages: Vec<Stage> = gone_through(before, after).collect();
            let takes_off =
                |it: &Stage| matches!(it, Stage::Roughed | Stage::Shaped | Stage::Sanded);
            let only_off = !stages.is_empty() && stages.iter().all(takes_off);
            let off = only_off || after.planed.is_some();
            (off && more_kg > STEP_KG).then(|| {
                format!(
                    "{} weighs {:.0} g more than before, though wood came off: weigh again, or has it drawn water?",
                    after.stage.name(),
                    1e3 * more_kg
                )
            })
        });
        wet.chain(heavier).collect()
    }
}

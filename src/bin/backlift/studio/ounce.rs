//! An ounce put somewhere along the first bat: what it costs the late pull.

use std::sync::Arc;

use super::answers::key;
use super::state::Studio;
use super::work::Question;
use crate::loaded::Loaded;
use crate::ounce::Ounces;
use crate::outcome::Stop;
use crate::progress::Progress;

impl Studio {
    /// What it hangs on.
    pub fn ounce_key(&self, bat: usize) -> Option<u64> {
        Some(key(("ounce", self.derived.bat_keys.get(bat)?)))
    }

    /// What an ounce costs along the first bat, as it is now.
    pub fn ounces(&self) -> Option<&Ounces> {
        self.answers.get(self.ounce_key(self.playback.bats[0])?)
    }

    pub(super) fn ask_for_ounces(&mut self, loaded: &Arc<Loaded>) {
        let bat = self.playback.bats[0];
        let Some(key) = self.ounce_key(bat).filter(|it| !self.answers.has(*it)) else { return };
        let (loaded, asked_time_s) = (Arc::clone(loaded), self.asked_time_s());
        self.work.start(Question::Ounce(bat), key, move |progress, _| {
            ounces(&loaded, bat, asked_time_s, progress)
        });
    }
}

/// What an ounce costs along a bat at fifty runs.
fn ounces(
    loaded: &Loaded,
    bat: usize,
    asked_time_s: Option<Vec<f64>>,
    progress: &Progress,
) -> Result<Ounces, Stop> {
    let Some(weighed) = loaded.bats.get(bat) else {
        return Err(Stop::OurMistake(format!("there is no bat {bat}")));
    };
    progress.step("putting an ounce here and there", 0.0)?;
    let batter = loaded.batter(weighed, 1.0)?;
    let asked_time_s = match asked_time_s {
        Some(known) => known,
        None => loaded.asked_times_s(&batter)?,
    };
    progress.step("putting an ounce here and there", 0.3)?;
    Ounces::at_fifty(loaded, weighed, &batter, &asked_time_s)
}

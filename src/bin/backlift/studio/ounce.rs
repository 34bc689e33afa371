//! An ounce put somewhere along the first bat: what it costs the late pull.

use std::sync::Arc;

use backlift::questions::loaded::Loaded;
use backlift::questions::ounces::Ounces;

use super::answers::key;
use super::state::Studio;
use super::work::Question;

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
            Ounces::of(&loaded, bat, asked_time_s, progress)
        });
    }
}

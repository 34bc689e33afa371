//! An ounce put somewhere along the first bat: what it costs the late pull.

use std::sync::Arc;

use super::innings::Before;
use super::state::Studio;
use super::work::Question;
use backlift::questions::loaded::Loaded;
use backlift::questions::ounces::Ounces;

/// Where the ounce is first, as a share of the length: at the toe, where it costs most.
pub const FIRST_AT: f64 = 1.0;

impl Studio {
    /// What it hangs on.
    pub fn ounce_key(&self, bat: usize) -> Option<u64> {
        Some(self.derived.bat_keys.get(bat)?.rotate_left(41))
    }

    /// What an ounce costs along the first bat, as it is now.
    pub fn ounces(&self) -> Option<&Arc<Ounces>> {
        self.results.ounces(self.ounce_key(self.playback.bats[0])?)
    }

    pub(super) fn ask_for_ounces(&mut self, loaded: &Arc<Loaded>) {
        let bat = self.playback.bats[0];
        let Some(key) = self.ounce_key(bat) else { return };
        if self.results.ounces(key).is_some() || self.results.failed.contains_key(&key) {
            return;
        }
        let asked_time_s = self.results.asked_time_s(self.derived.player_key);
        let before = Before { asked_time_s, ..Before::default() };
        self.work.ask_on(Question::Ounce(bat), key, Arc::clone(loaded), before);
    }
}

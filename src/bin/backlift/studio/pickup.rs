//! Pickup against dead weight: the two bats that show it best, and what an ounce somewhere along the first costs the late
//! pull.

use std::sync::Arc;

use backlift::questions::loaded::Loaded;
use backlift::questions::ounces::Ounces;
use backlift::questions::pairs::most_telling;

use super::action::Pair;
use super::answers::key;
use super::state::Studio;
use super::work::Question;

impl Studio {
    /// Puts the two bats that show it best on the screen.
    pub(super) fn show_pair(&mut self, pair: Pair) {
        self.pair = pair;
        let on_scale = pair == Pair::SameScale;
        let bats = self.derived.loaded.as_ref().and_then(|it| most_telling(&it.bats, on_scale));
        if let Some(bats) = bats {
            self.bats_before.get_or_insert(self.playback.bats);
            (self.playback.bats, self.playback.second) = (bats, true);
        }
    }

    /// The bats that were swung before, unless others were chosen meanwhile.
    pub(super) fn leave_pair(&mut self) {
        if let Some(bats) = self.bats_before.take() {
            self.playback.bats = bats;
            self.bats_in_range();
        }
    }

    /// What the cost of an ounce hangs on.
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

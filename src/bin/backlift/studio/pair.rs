//! The maker's demonstration: which two bats show it best.

use backlift::questions::pairs::most_telling;

use super::action::Pair;
use super::state::Studio;

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
}

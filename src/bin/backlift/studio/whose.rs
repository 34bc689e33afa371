//! Whose hands and which bats an answer names: one of an earlier text may stand on the screen only while they are still
//! those that the screen names.

use backlift::files::document::TextFile;
use backlift::files::scenario::ScenarioV1;
use backlift::measurement::person::{Handed, Sex};
use backlift::questions::loaded::Loaded;

/// The player and the bats as they are called.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Whose {
    title: String,
    /// Age, years, sex, stature, m, and batting hand; none where it was never understood.
    player: Option<(f64, Sex, f64, Handed)>,
    labels: Vec<String>,
}

impl Whose {
    /// Those of a document; of the player what was last understood.
    pub fn of(document: &TextFile<ScenarioV1>, loaded: Option<&Loaded>) -> Self {
        let player = loaded.map(|it| {
            let who = &it.scenario.player;
            (who.age_y, who.sex, who.stature_m, who.handed)
        });
        Self {
            title: document.at("title"),
            player,
            labels: (0..document.bat_count()).map(|bat| document.label(bat)).collect(),
        }
    }

    /// Whether an answer about these may be shown where `now` is on the screen: every bat it may name is still in its
    /// place. One that was added since is not named in it.
    pub fn may_stand_for(&self, now: &Self) -> bool {
        let is_same = self.player == now.player && self.title == now.title;
        is_same && now.labels.starts_with(&self.labels)
    }
}

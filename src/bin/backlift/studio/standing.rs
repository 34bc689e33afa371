//! What must stand with everything shown of a player: that it is invented, and a junior's cautions.

use super::state::Studio;
use crate::beside::{Beside, INVENTED};

impl Studio {
    /// The words; none where nothing must be said.
    pub fn standing(&self) -> Vec<String> {
        let Some(loaded) = &self.derived.loaded else { return Vec::new() };
        let mut words = Vec::new();
        if loaded.scenario.invented {
            words.push(format!("{INVENTED}."));
        }
        words.extend(Beside::scenario(loaded).cautions);
        words
    }
}

//! What must stand with everything shown of a player: that it is invented, and a junior's cautions.

use super::state::Studio;

impl Studio {
    /// The words; none where nothing must be said.
    pub fn standing(&self) -> Vec<String> {
        let Some(loaded) = &self.derived.loaded else { return Vec::new() };
        let mut words = Vec::new();
        if loaded.scenario.invented {
            words.push("Invented player and bats.".to_owned());
        }
        if loaded.is_junior() {
            words.extend(crate::fit::told::cautions(loaded));
        }
        words
    }
}

//! What stands beside every result: the scenario's own note, the cautions, a junior's among them, and that it is of
//! invented data.

use backlift::card::Card;
use backlift::card::cautions::{JUNIOR_BELOW_Y, refit_stature_m, standing};
use backlift::questions::loaded::Loaded;
use serde_json::{Value, json};

use crate::json::joined;
use crate::paragraph::{dashed, paragraph};

/// Said of what an invented player or bats came to.
pub const INVENTED: &str = "Invented player and bats";

/// What stands beside a result.
#[derive(Clone, Debug, Default)]
pub struct Beside {
    note: Option<String>,
    /// What must be known with it.
    pub cautions: Vec<String>,
    /// What of it is invented, in words; empty where nothing is.
    invented: Vec<&'static str>,
}

/// What a junior must be told; nothing to a grown player.
fn junior(age_y: f64, refit_stature_m: Option<f64>) -> Vec<String> {
    if age_y < JUNIOR_BELOW_Y { standing(age_y, refit_stature_m) } else { Vec::new() }
}

impl Beside {
    /// Beside a result for the player of a scenario.
    pub fn scenario(loaded: &Loaded) -> Self {
        let it = &loaded.player;
        Self {
            note: loaded.scenario.note.clone(),
            cautions: junior(it.age_y, refit_stature_m(it.age_y, it.stature_m)),
            invented: Vec::new(),
        }
        .invented_besides(loaded.scenario.invented, INVENTED)
    }

    /// Beside a result for the player of a card.
    pub fn card(card: &Card) -> Self {
        let cautions = junior(card.player.age_y, card.refit_stature_m);
        Self { cautions, ..Self::default() }
            .invented_besides(card.invented, "The player of this card is invented")
    }

    /// With the result's own cautions before the others; none is said twice.
    pub fn after<S: Into<String>>(mut self, own: impl IntoIterator<Item = S>) -> Self {
        let mut all: Vec<String> = own.into_iter().map(Into::into).collect();
        self.cautions.retain(|it| !all.contains(it));
        all.append(&mut self.cautions);
        Self { cautions: all, ..self }
    }

    /// With what stands beside another result; nothing is said twice.
    pub fn and(self, other: Self) -> Self {
        let Self { note, cautions, mut invented } = self;
        for it in other.invented {
            if !invented.contains(&it) {
                invented.push(it);
            }
        }
        let both = Self { note: note.or(other.note), invented, cautions: other.cautions };
        both.after(cautions)
    }

    /// With something else that may be invented, in these words.
    pub fn invented_besides(mut self, is_invented: bool, words: &'static str) -> Self {
        self.invented.extend(is_invented.then_some(words));
        self
    }

    /// With a described bat, which may be invented.
    pub fn described(self, invented: bool) -> Self {
        self.invented_besides(invented, "The described bat is invented")
    }

    /// A result in words, all of it around them.
    pub fn told(&self, result: &str) -> String {
        let mut out = self.note.as_ref().map_or_else(String::new, |it| paragraph(it) + "\n\n");
        out += result.trim_end_matches('\n');
        out.push('\n');
        if !self.cautions.is_empty() {
            out += "\nTake care:\n";
            out += &dashed(&self.cautions);
        }
        for it in &self.invented {
            out += &format!("{it}\n");
        }
        out
    }

    /// A result for other programs.
    pub fn figures(&self, result: Value) -> Value {
        let beside = json!({ "invented": !self.invented.is_empty(), "cautions": self.cautions });
        joined([result, beside])
    }

    /// What a picture says, and whether what it shows is invented.
    pub fn sentence(&self, sentence: &str) -> String {
        let invented = self.invented.iter().map(|it| format!(". {it}"));
        std::iter::once(sentence.to_owned()).chain(invented).collect()
    }
}

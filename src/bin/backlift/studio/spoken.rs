//! What is said of fields, in the words of the window: a coach is not told where something stands in a file. And what
//! must stand with everything shown of a player.

use backlift::files::document::values::MISSING;
use backlift::files::fault::Fault;
use backlift::files::scenario::examples::Examples;
use backlift::measurement::person::Sex;

use super::derived::words;
use super::fields::{Line, name, named_alone};
use super::state::Studio;
use crate::beside::{Beside, INVENTED};
use crate::figure::lower;

impl Studio {
    /// A field as it is called: "Old faithful, dead weight"; none of what has no name.
    pub fn spoken(&self, path: &str) -> Option<String> {
        let bat = path.strip_prefix("bats.").and_then(|it| it.split('.').next()?.parse().ok());
        match (bat, name(path)) {
            (Some(bat), Some(name)) => Some(format!("{}, {}", self.label(bat), lower(name))),
            (Some(bat), None) => Some(self.label(bat)),
            (None, name) => name.map(str::to_owned),
        }
    }

    /// A sentence with every field in it called so.
    pub fn in_words(&self, sentence: &str) -> String {
        let is_of_path = |it: char| it.is_ascii_alphanumeric() || it == '_' || it == '.';
        let mut out = String::new();
        let mut rest = sentence;
        while let Some(start) = rest.find(is_of_path) {
            let (before, after) = rest.split_at(start);
            let end = after.find(|it| !is_of_path(it)).unwrap_or(after.len());
            let (word, left) = after.split_at(end);
            let path = word.trim_end_matches('.');
            out.push_str(before);
            let called = match path {
                it if it.contains('.') => self.spoken(it).map(|it| format!("“{it}”")),
                it if it.contains('_') => named_alone(it).map(lower),
                _ => None,
            };
            out.push_str(called.as_deref().unwrap_or(path));
            out.push_str(&word[path.len()..]);
            rest = left;
        }
        out + rest
    }

    /// What a fault says, with its field called as the window calls it: "Old faithful, dead weight: …".
    pub fn told(&self, fault: &Fault) -> Fault {
        let said = self.in_words(words(fault));
        let message = match fault.field.as_deref().map(|it| (it, self.spoken(it))) {
            Some((_, Some(field))) => format!("{field}: {said}"),
            Some((path, None)) => format!("{path}: {said}"),
            None => said,
        };
        let help = fault.help.as_deref().map(|it| self.in_words(it));
        Fault { message, help, ..fault.clone() }
    }

    /// Whether a fault is only that something is not filled in yet.
    pub fn is_to_come(&self, fault: &Fault) -> bool {
        let path = fault.field.as_deref();
        words(fault) == MISSING && path.is_some_and(|path| self.document.at(path).is_empty())
    }

    /// What may stand in a field of the player: of somebody of this age, where it hangs on age.
    pub fn like(&self, line: &Line) -> String {
        let [path, _, like, _] = line;
        let name = path.strip_prefix("player.");
        let example = name.and_then(|it| self.examples().of_field(it));
        example.map_or_else(|| (*like).to_owned(), |it| it.trade)
    }

    /// That the player is invented, and a junior's cautions; none where nothing must be said.
    pub fn standing(&self) -> Vec<String> {
        let Some(loaded) = &self.derived.loaded else { return Vec::new() };
        let mut words = Vec::new();
        if loaded.scenario.invented {
            words.push(format!("{INVENTED}."));
        }
        words.extend(Beside::scenario(loaded).cautions);
        words
    }

    /// Examples for the player as far as known; what was last understood counts where the text has a fault now.
    fn examples(&self) -> Examples {
        match &self.derived.loaded {
            Some(it) => Examples::beside(&it.scenario.player),
            None => {
                let age_y = self.document.at("player.age");
                let age_y = age_y.split_whitespace().next().and_then(|it| it.parse().ok());
                let sex = match self.document.at("player.sex").as_str() {
                    "female" => Some(Sex::Female),
                    "male" => Some(Sex::Male),
                    _ => None,
                };
                Examples::of(age_y, sex, None)
            }
        }
    }
}

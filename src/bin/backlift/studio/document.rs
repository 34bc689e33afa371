//! The scenario on the screen: its text, what the text says, and where it is kept.

use std::path::{Path, PathBuf};

use backlift::files::document::Document as _;
use backlift::files::fault::{Fault, Faults, Source};
use backlift::files::save;
use backlift::files::scenario::{DEMO, Given, ScenarioV1, edit, fields_of, set, text_of};

/// A scenario with a note at every field.
const STARTER: &str = include_str!("../../../../scenarios/starter.ron");

/// A maker's two pairs.
const MAKER: &str = include_str!("../../../../scenarios/maker.ron");

/// A scenario being worked on. Its text is the truth: notes written into the file stay.
#[derive(Clone, Debug, PartialEq)]
pub struct Document {
    text: String,
    fields: ScenarioV1,
    kept: String,
    path: Option<PathBuf>,
}

impl Document {
    /// The invented junior with four bats.
    pub fn demo() -> Result<Self, Faults> {
        Self::from_text("the demo", DEMO)
    }

    /// A player to be measured.
    pub fn starter() -> Result<Self, Faults> {
        Self::from_text("a new player", STARTER)
    }

    /// Two bats of one weight, and two of one pickup.
    pub fn maker() -> Result<Self, Faults> {
        Self::from_text("a maker's bench", MAKER)
    }

    fn from_text(name: &str, text: &str) -> Result<Self, Faults> {
        let fields = fields_of(Source::new(name, text))?;
        Ok(Self { text: text.to_owned(), fields, kept: text.to_owned(), path: None })
    }

    /// A file.
    pub fn open(path: &Path) -> Result<Self, Faults> {
        let source = text_of(&Given::File(path.to_owned()))?;
        let text = source.text().to_owned();
        let fields = fields_of(source)?;
        Ok(Self { kept: text.clone(), text, fields, path: Some(path.to_owned()) })
    }

    /// The same document with the text of an earlier or a later moment.
    pub fn with_text(&self, text: &str) -> Result<Self, Faults> {
        let fields = fields_of(Source::new(&self.name(), text))?;
        Ok(Self { text: text.to_owned(), fields, ..self.clone() })
    }

    /// As it would be saved.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Where it is kept; none for one that was never saved.
    pub fn path(&self) -> Option<&Path> {
        self.path.as_deref()
    }

    /// What to call it.
    pub fn name(&self) -> String {
        let file = self.path.as_deref().and_then(Path::file_name);
        let title = self.fields.title.as_ref().map(|it| it.0.clone());
        file.map(|it| it.to_string_lossy().into_owned())
            .or(title)
            .unwrap_or_else(|| "A fitting".to_owned())
    }

    /// Whether there is something that no file holds.
    pub fn is_changed(&self) -> bool {
        self.text != self.kept
    }

    /// The text at a path like `bats.1.mass`; empty where nothing is written.
    pub fn at(&self, path: &str) -> String {
        let steps: Vec<&str> = path.split('.').collect();
        let mut fields = self.fields.clone();
        let text = fields.at(&steps).and_then(|it| it.clone());
        text.map_or_else(String::new, |it| it.0)
    }

    /// Number of bats.
    pub fn bat_count(&self) -> usize {
        self.fields.bats.len()
    }

    /// Puts a value over a field, as `--set` does; an empty one takes the field away.
    pub fn put(&mut self, path: &str, value: &str) -> Result<(), Fault> {
        let value = value.trim();
        let mut fields = self.fields.clone();
        set(&mut fields, path, value)?;
        if !value.is_empty() {
            let text = edit::put(&self.text, path, value);
            return self.become_text(text, fields);
        }
        let steps: Vec<&str> = path.split('.').collect();
        if let Some(field) = fields.at(&steps) {
            *field = None;
        }
        self.become_text(edit::take(&self.text, path), fields)
    }

    /// One more bat, a copy of the one at that place or an empty one.
    pub fn add_bat(&mut self, like: Option<usize>) -> Result<(), Fault> {
        let mut fields = self.fields.clone();
        let mut bat = like.and_then(|it| fields.bats.get(it).cloned()).unwrap_or_default();
        let name = bat.label.as_ref().map_or("Bat", |it| it.0.as_str());
        let label = self.free_label(name);
        bat.label = Some(backlift::files::scenario::Text(label.clone()));
        fields.bats.push(bat);
        let text = match like {
            Some(like) => edit::written(&self.text, &format!("bats.{like}"))
                .and_then(|it| edit::put(&format!("(bats: [{it}])"), "bats.0.label", &label))
                .and_then(|it| edit::written(&it, "bats.0").map(str::to_owned))
                .and_then(|it| edit::add_bat(&self.text, &it)),
            None => edit::add_bat(&self.text, &format!("(label: {label:?})")),
        };
        self.become_text(text, fields)
    }

    /// Takes a bat away; the last one stays.
    pub fn remove_bat(&mut self, bat: usize) -> Result<(), Fault> {
        if self.fields.bats.len() < 2 || bat >= self.fields.bats.len() {
            return Err(Fault::new("the last bat stays").help("add another bat first"));
        }
        let mut fields = self.fields.clone();
        fields.bats.remove(bat);
        let text = edit::take(&self.text, &format!("bats.{bat}"));
        self.become_text(text, fields)
    }

    /// A label that no bat has yet.
    fn free_label(&self, like: &str) -> String {
        let taken = |it: &String| {
            let has = |bat: &backlift::files::scenario::BatV1| {
                bat.label.as_ref().is_some_and(|label| label.0.eq_ignore_ascii_case(it))
            };
            self.fields.bats.iter().any(has)
        };
        let base = like.trim_end_matches(|c: char| c.is_ascii_digit()).trim_end();
        let numbered = |n: usize| format!("{base} {n}");
        (self.fields.bats.len() + 1..).map(numbered).find(|it| !taken(it)).unwrap_or_default()
    }

    /// Takes the edited text if it says what the fields say; else the fields written anew.
    fn become_text(&mut self, text: Option<String>, fields: ScenarioV1) -> Result<(), Fault> {
        let says =
            |text: &String| fields_of(Source::new("edited", text)).is_ok_and(|it| it == fields);
        let text = match text.filter(says) {
            Some(text) => text,
            None => fields.to_ron()?,
        };
        (self.text, self.fields) = (text, fields);
        Ok(())
    }

    /// Writes it over its file.
    pub fn save(&mut self) -> Result<(), Fault> {
        let Some(path) = self.path.clone() else {
            return Err(Fault::new("it has no file yet").help("choose where to keep it"));
        };
        save::over(&path, self.text.as_bytes())?;
        self.kept = self.text.clone();
        Ok(())
    }

    /// Writes it into a file, which is its own from now on.
    pub fn save_as(&mut self, path: &Path) -> Result<(), Fault> {
        save::over(path, self.text.as_bytes())?;
        (self.path, self.kept) = (Some(path.to_owned()), self.text.clone());
        Ok(())
    }
}

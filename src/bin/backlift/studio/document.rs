//! The scenario on the screen.

use std::path::{Path, PathBuf};

use backlift::files::document::{Text, edit};
use backlift::files::fault::{Fault, Faults};
use backlift::files::scenario::{BatV1, DEMO, ScenarioV1};

use super::text_file::TextFile;

/// A scenario with a note at every field.
const STARTER: &str = include_str!("../../../../scenarios/starter.ron");

/// A maker's two pairs.
const MAKER: &str = include_str!("../../../../scenarios/maker.ron");

/// A scenario being worked on.
pub type Document = TextFile<ScenarioV1>;

impl TextFile<ScenarioV1> {
    /// The invented junior with four bats.
    pub fn demo() -> Result<Self, Faults> {
        Self::of("the demo", DEMO)
    }

    /// A player to be measured.
    pub fn starter() -> Result<Self, Faults> {
        Self::of("a new player", STARTER)
    }

    /// Two bats of one weight, and two of one pickup.
    pub fn maker() -> Result<Self, Faults> {
        Self::of("a maker's bench", MAKER)
    }

    /// What to call it.
    pub fn name(&self) -> String {
        let title = self.fields().title.as_ref().map(|it| it.0.clone());
        self.file_name().or(title).unwrap_or_else(|| "A fitting".to_owned())
    }

    /// Where strokes of the user's own are looked for.
    pub fn folder(&self) -> PathBuf {
        self.path().and_then(Path::parent).unwrap_or(Path::new("")).to_owned()
    }

    /// Number of bats.
    pub fn bat_count(&self) -> usize {
        self.fields().bats.len()
    }

    /// One more bat, a copy of the one at that place or an empty one.
    pub fn add_bat(&mut self, like: Option<usize>) -> Result<(), Fault> {
        let mut fields = self.fields().clone();
        let mut bat = like.and_then(|it| fields.bats.get(it).cloned()).unwrap_or_default();
        let name = bat.label.as_ref().map_or("Bat", |it| it.0.as_str());
        let label = self.free_label(name);
        bat.label = Some(Text(label.clone()));
        fields.bats.push(bat);
        let text = match like {
            Some(like) => edit::written(self.text(), &format!("bats.{like}"))
                .and_then(|it| edit::put(&format!("(bats: [{it}])"), "bats.0.label", &label))
                .and_then(|it| edit::written(&it, "bats.0").map(str::to_owned))
                .and_then(|it| edit::add_bat(self.text(), &it)),
            None => edit::add_bat(self.text(), &format!("(label: {label:?})")),
        };
        self.become_text(text, fields)
    }

    /// Takes a bat away; the last one stays.
    pub fn remove_bat(&mut self, bat: usize) -> Result<(), Fault> {
        if self.bat_count() < 2 || bat >= self.bat_count() {
            return Err(Fault::new("the last bat stays").help("add another bat first"));
        }
        let mut fields = self.fields().clone();
        fields.bats.remove(bat);
        let text = edit::take(self.text(), &format!("bats.{bat}"));
        self.become_text(text, fields)
    }

    /// Takes one of the things that were seen away.
    pub fn forget_seen(&mut self, n: usize) -> Result<(), Fault> {
        let mut fields = self.fields().clone();
        if n >= fields.seen.len() {
            return Ok(());
        }
        fields.seen.remove(n);
        // A list of nothing is not worth a line.
        let path = if fields.seen.is_empty() { "seen".to_owned() } else { format!("seen.{n}") };
        self.become_text(edit::take(self.text(), &path), fields)
    }

    /// Paths of the fields that name a bat by its label, and name this one.
    pub fn naming(&self, label: &str) -> Vec<String> {
        let fields = self.fields();
        let is_it = |it: &Option<Text>| {
            it.as_ref().is_some_and(|it| it.0.trim().eq_ignore_ascii_case(label.trim()))
        };
        let mut paths = Vec::new();
        if is_it(&fields.uses) {
            paths.push("uses".to_owned());
        }
        if is_it(&fields.player.wrist_hold_bat) {
            paths.push("player.wrist_hold_bat".to_owned());
        }
        let seen = fields.seen.iter().enumerate().filter(|(_, it)| is_it(&it.bat));
        paths.extend(seen.map(|(n, _)| format!("seen.{n}.bat")));
        paths
    }

    /// A label that no bat has yet.
    fn free_label(&self, like: &str) -> String {
        let taken = |it: &String| {
            let has = |bat: &BatV1| {
                bat.label.as_ref().is_some_and(|label| label.0.eq_ignore_ascii_case(it))
            };
            self.fields().bats.iter().any(has)
        };
        let base = like.trim_end_matches(|c: char| c.is_ascii_digit()).trim_end();
        let numbered = |n: usize| format!("{base} {n}");
        (self.bat_count() + 1..).map(numbered).find(|it| !taken(it)).unwrap_or_default()
    }
}

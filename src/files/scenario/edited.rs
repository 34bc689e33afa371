//! What can be changed of a scenario that is being worked on: fields, bats, what was seen.

use std::path::{Path, PathBuf};

use super::super::document::{Text, TextFile, edit};
use super::super::fault::Fault;
use super::{BatV1, ScenarioV1};
use crate::measurement::bench::bat_letter;
use crate::measurement::taps::Taps;

/// Short balls where no number is said.
const USUAL_BALLS: &str = "20";

impl TextFile<ScenarioV1> {
    /// Where strokes of the user's own are looked for.
    pub fn folder(&self) -> PathBuf {
        self.path().and_then(Path::parent).unwrap_or(Path::new("")).to_owned()
    }

    /// Number of bats.
    pub fn bat_count(&self) -> usize {
        self.fields().bats.len()
    }

    /// What a bat is called, everywhere.
    pub fn label(&self, bat: usize) -> String {
        let written = self.at(&format!("bats.{bat}.label"));
        if written.is_empty() { format!("bat {}", bat_letter(bat)) } else { written }
    }

    /// The bat that the player uses now.
    pub fn used_bat(&self) -> usize {
        let written = self.at("uses");
        let is_it = |bat: &usize| self.label(*bat).eq_ignore_ascii_case(written.trim());
        (0..self.bat_count()).find(is_it).unwrap_or(0)
    }

    /// Whether something was seen.
    pub fn is_seen(&self) -> bool {
        !self.fields().seen.is_empty()
    }

    /// Puts a value over a field; whatever names a bat by its label follows the label.
    ///
    /// # Errors
    /// If there is no such field.
    pub fn set(&mut self, path: &str, value: &str) -> Result<(), Fault> {
        let renamed = renamed(path).filter(|bat| *bat < self.bat_count());
        let naming = renamed.map_or_else(Vec::new, |bat| self.naming(&self.label(bat)));
        self.put(path, value)?;
        let Some(bat) = renamed else { return Ok(()) };
        let label = self.label(bat);
        naming.iter().try_for_each(|it| self.put(it, &label))
    }

    /// How often short balls were seen to be met in time: with the bat now used and this stroke, where nothing was
    /// said yet.
    ///
    /// # Errors
    /// If what was seen cannot be written down.
    pub fn saw(&mut self, how_often: &str, stroke: &str) -> Result<(), Fault> {
        if !self.is_seen() {
            let bat = self.label(self.used_bat());
            for (name, value) in [("bat", bat.as_str()), ("stroke", stroke), ("balls", USUAL_BALLS)]
            {
                self.put(&format!("seen.0.{name}"), value)?;
            }
        }
        self.put("seen.0.in_time", how_often)
    }

    /// Puts swings and time of the taps into a bat's pendulum test.
    ///
    /// # Errors
    /// If no swing was timed.
    pub fn time(&mut self, bat: usize, taps: &Taps) -> Result<(), Fault> {
        let swings = taps.swings();
        if swings == 0 {
            return Err(Fault::new("no swing is timed yet")
                .help("tap each time the bat comes back to the same side"));
        }
        let field = |name: &str| format!("bats.{bat}.pendulum.{name}");
        self.put(&field("swings"), &swings.to_string())?;
        self.put(&field("time"), &format!("{:.2} s", taps.time_s()))?;
        if self.at(&field("pivot")).is_empty() {
            self.put(&field("pivot"), "6 in")?;
        }
        Ok(())
    }

    /// One more bat of this weight and balance, kg and m; its size and length, m, where they are known.
    ///
    /// # Errors
    /// If the scenario cannot be put into words.
    pub fn add_tried(
        &mut self,
        [mass_kg, balance_m]: [f64; 2],
        size: Option<&(String, f64)>,
    ) -> Result<(), Fault> {
        self.add_bat(None)?;
        let bat = self.bat_count() - 1;
        let mut put = |name: &str, value: &str| self.put(&format!("bats.{bat}.{name}"), value);
        put("label", &format!("Tried {}", bat + 1))?;
        if let Some((size, length_m)) = size {
            put("size", size)?;
            put("length", &format!("{length_m:.3} m"))?;
        }
        put("mass", &format!("{mass_kg:.3} kg"))?;
        put("balance", &format!("{balance_m:.4} m"))
    }

    /// One more bat, a copy of the one at that place or an empty one.
    ///
    /// # Errors
    /// If the scenario cannot be put into words.
    pub fn add_bat(&mut self, like: Option<usize>) -> Result<(), Fault> {
        let mut fields = self.fields().clone();
        let mut bat = like.and_then(|it| fields.bats.get(it).cloned()).unwrap_or_default();
        let name = bat.label.as_ref().map_or("Bat", |it| it.0.as_str());
        let label = self.free_label(name);
        bat.label = Some(Text(label.clone()));
        fields.bats.push(bat);
        let written = match like {
            Some(like) => edit::written(self.text(), &format!("bats.{like}"))
                .and_then(|it| edit::put(&format!("(bats: [{it}])"), "bats.0.label", &label))
                .and_then(|it| edit::written(&it, "bats.0").map(str::to_owned)),
            None => Some(format!("(label: {label:?})")),
        };
        let place = format!("bats.{}", self.bat_count());
        let text = written.and_then(|it| edit::put_raw(self.text(), &place, &it));
        self.become_text(text, fields)
    }

    /// Takes a bat away, and what was said of it; the last one stays.
    ///
    /// # Errors
    /// If it is the last, or is not there.
    pub fn remove_bat(&mut self, bat: usize) -> Result<(), Fault> {
        if self.bat_count() < 2 || bat >= self.bat_count() {
            return Err(Fault::new("the last bat stays").help("add another bat first"));
        }
        let naming = self.naming(&self.label(bat));
        let mut fields = self.fields().clone();
        fields.bats.remove(bat);
        let text = edit::take(self.text(), &format!("bats.{bat}"));
        self.become_text(text, fields)?;
        // From the last on, so that the places of the others stay.
        for path in naming.iter().rev() {
            match path.strip_prefix("seen.").and_then(|it| it.split('.').next()?.parse().ok()) {
                Some(n) => self.forget_seen(n)?,
                None => self.put(path, "")?,
            }
        }
        Ok(())
    }

    /// Takes one of the things that were seen away.
    ///
    /// # Errors
    /// If the scenario cannot be put into words.
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
    fn naming(&self, label: &str) -> Vec<String> {
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

/// The bat whose label stands at a path.
fn renamed(path: &str) -> Option<usize> {
    path.strip_prefix("bats.")?.strip_suffix(".label")?.parse().ok()
}

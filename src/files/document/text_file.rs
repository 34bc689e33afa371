//! A document being worked on: its text, what the text says, and where it is kept.

use std::path::{Path, PathBuf};

use serde::Serialize;

use super::super::fault::{Fault, Faults, Source};
use super::super::save;
use super::{Document, edit, fields_of, overrides, still_holds, text_of_file};

/// The text is the truth: notes written into the file stay.
#[derive(Clone, Debug, PartialEq)]
pub struct TextFile<D> {
    text: String,
    fields: D,
    kept: String,
    path: Option<PathBuf>,
}

impl<D: Document + Clone + PartialEq + Serialize> TextFile<D> {
    /// A text that no file holds.
    ///
    /// # Errors
    /// If it is no such document.
    pub fn of(name: &str, text: &str) -> Result<Self, Faults> {
        let fields = fields_of(Source::new(name, text))?;
        Ok(Self { text: text.to_owned(), fields, kept: text.to_owned(), path: None })
    }

    /// A file.
    ///
    /// # Errors
    /// If the file cannot be read, or is no such document.
    pub fn open(path: &Path) -> Result<Self, Faults> {
        let source = text_of_file(path, &D::KIND)?;
        let text = source.text().to_owned();
        let fields = fields_of(source)?;
        Ok(Self { kept: text.clone(), text, fields, path: Some(path.to_owned()) })
    }

    /// The same document with another text, of an earlier or a later moment perhaps.
    ///
    /// # Errors
    /// If it is no such document.
    pub fn with_text(&self, text: &str) -> Result<Self, Faults> {
        let name = self.file_name().unwrap_or_else(|| D::KIND.noun.to_owned());
        let fields = fields_of(Source::new(&name, text))?;
        Ok(Self { text: text.to_owned(), fields, ..self.clone() })
    }

    /// As it would be saved.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// What it says.
    pub fn fields(&self) -> &D {
        &self.fields
    }

    /// Where it is kept; none for one that was never saved.
    pub fn path(&self) -> Option<&Path> {
        self.path.as_deref()
    }

    /// The name of its file.
    pub fn file_name(&self) -> Option<String> {
        let name = self.path.as_deref().and_then(Path::file_name);
        name.map(|it| it.to_string_lossy().into_owned())
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

    /// Puts a value over a field, as `--set` does; an empty one takes the field away.
    ///
    /// # Errors
    /// If there is no such field.
    pub fn put(&mut self, path: &str, value: &str) -> Result<(), Fault> {
        // Quotation marks are the file's, as on the command line.
        let value = value.trim().trim_matches('"').trim();
        let mut fields = self.fields.clone();
        overrides::put(&mut fields, path, value)?;
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

    /// Takes the edited text if it says what the fields say; else the fields written anew.
    ///
    /// # Errors
    /// If the fields cannot be put into words.
    pub fn become_text(&mut self, text: Option<String>, fields: D) -> Result<(), Fault> {
        let says = |text: &String| {
            fields_of::<D>(Source::new("edited", text)).is_ok_and(|it| it == fields)
        };
        let text = match text.filter(says) {
            Some(text) => text,
            None => fields.to_ron()?,
        };
        (self.text, self.fields) = (text, fields);
        Ok(())
    }

    /// Writes it over its file.
    ///
    /// # Errors
    /// If it has no file, or the file was changed by somebody else, which must not be lost, or cannot be written.
    pub fn save(&mut self) -> Result<(), Fault> {
        let Some(path) = self.path.clone() else {
            return Err(Fault::new("it has no file yet").help("choose where to keep it"));
        };
        if path.exists() && !still_holds(&path, &D::KIND, &self.kept).unwrap_or(false) {
            let message = format!("{} was changed since it was opened here", path.display());
            let help = "save under another name, or open it again and make your changes there";
            return Err(Fault::new(message).help(help));
        }
        self.save_as(&path)
    }

    /// Writes it into a file, which is its own from now on.
    ///
    /// # Errors
    /// If the file cannot be written.
    pub fn save_as(&mut self, path: &Path) -> Result<(), Fault> {
        save::over(path, self.text.as_bytes())?;
        (self.path, self.kept) = (Some(path.to_owned()), self.text.clone());
        Ok(())
    }
}

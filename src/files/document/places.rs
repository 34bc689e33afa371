//! Where each field was written: in the file, or in a `--set` that came over it.

use super::super::fault::{Fault, Source};
use super::super::outline::Outline;

/// The places of one document's fields.
#[derive(Clone, Debug)]
pub struct Places {
    source: Source,
    outline: Outline,
    set: Vec<(String, Source, usize)>,
}

impl Places {
    /// Places in one text.
    pub fn of(source: Source) -> Self {
        let outline = Outline::of(source.text());
        Self { source, outline, set: Vec::new() }
    }

    /// The text it was read from.
    pub fn source(&self) -> &Source {
        &self.source
    }

    /// Its outline.
    pub fn outline(&self) -> &Outline {
        &self.outline
    }

    /// From now on `path` stands in an argument whose value starts at that byte.
    pub(super) fn set(&mut self, path: &str, argument: Source, value_at: usize) {
        self.set.push((path.to_owned(), argument, value_at));
    }

    /// A fault about the field at a path like `bats.1.balance`, put in its place. A field that was
    /// not written is pointed at through the part it would stand in.
    pub fn fault(&self, path: &str, message: &str, help: &str) -> Fault {
        let fault = Fault::of(path, message).help(help);
        if let Some((_, argument, start)) = self.set.iter().rev().find(|(it, ..)| it == path) {
            return fault.at(argument, *start..argument.text().len());
        }
        let mut part = path;
        loop {
            if let Some(entry) = self.outline.find(part) {
                let span = match (part == path, &entry.name) {
                    (true, _) => entry.value.clone(),
                    (false, Some(name)) => name.clone(),
                    (false, None) => {
                        let start = entry.value.start;
                        start..(start + 1).min(self.source.text().len())
                    }
                };
                return fault.at(&self.source, span);
            }
            if part.is_empty() {
                return fault.at(&self.source, 0..0);
            }
            part = part.rsplit_once('.').map_or("", |(before, _)| before);
        }
    }

    /// The same as a warning.
    pub fn warning(&self, path: &str, message: &str, help: &str) -> Fault {
        self.fault(path, message, help).warning()
    }
}

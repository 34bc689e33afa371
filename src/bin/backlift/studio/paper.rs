//! A paper on the desk: a document being worked on, the steps back to how it was, and what becomes of changes
//! that no file holds.

use std::ops::Deref;
use std::path::Path;

use backlift::files::document::{Document, Text, TextFile};
use backlift::files::fault::{Fault, Faults};
use backlift::files::scenario::ScenarioV1;
use backlift::files::shape::ShapeV1;
use serde::Serialize;

use super::fields::name;
use super::recovery::{Recovery, Rescued};

/// The texts before and after the present one.
#[derive(Default)]
pub struct History {
    past: Vec<Step>,
    future: Vec<Step>,
}

/// A text, and in a few words the change that left it.
struct Step {
    text: String,
    change: String,
}

/// Steps kept.
const MOST: usize = 500;

impl History {
    fn changed(&mut self, before: String, change: String) {
        self.future.clear();
        self.past.push(Step { text: before, change });
        if self.past.len() > MOST {
            self.past.remove(0);
        }
    }

    /// The text after the change last undone, or before the last change.
    fn travel(&mut self, now: &str, forward: bool) -> Option<String> {
        let (from, to) = match forward {
            true => (&mut self.future, &mut self.past),
            false => (&mut self.past, &mut self.future),
        };
        let Step { text, change } = from.pop()?;
        to.push(Step { text: now.to_owned(), change });
        Some(text)
    }

    /// The change that the next undo takes back.
    pub fn last(&self) -> Option<&str> {
        self.past.last().map(|it| it.change.as_str())
    }

    /// The change that the next redo brings again.
    pub fn next(&self) -> Option<&str> {
        self.future.last().map(|it| it.change.as_str())
    }
}

/// A value put over a field, in a few words for the undo button.
pub fn of_field(name: &str, value: &str) -> String {
    match value.trim() {
        "" => format!("take away {name}"),
        _ => format!("{name}: {value}"),
    }
}

/// A document that can lie on the desk.
pub trait Titled: Document + Clone + PartialEq + Serialize {
    /// What one without a title is called.
    const NAMELESS: &'static str;
    /// What one that was never saved is of.
    const NEW: &'static str;
    /// The one that lies there.
    const HERE: &'static str;

    /// What it calls itself.
    fn title(&self) -> Option<&Text>;
}

impl Titled for ScenarioV1 {
    const NAMELESS: &'static str = "A fitting";
    const NEW: &'static str = "a new player";
    const HERE: &'static str = "the scenario";

    fn title(&self) -> Option<&Text> {
        self.title.as_ref()
    }
}

impl Titled for ShapeV1 {
    const NAMELESS: &'static str = "A blade";
    const NEW: &'static str = "a new blade";
    const HERE: &'static str = "the bat on the bench";

    fn title(&self) -> Option<&Text> {
        self.title.as_ref()
    }
}

/// A paper with any document on it. It is read as its text is; it is changed only here, so that every change can be
/// taken back.
pub struct Paper<D> {
    file: TextFile<D>,
    history: History,
    recovery: Recovery,
    /// Unsaved work of an earlier window, while it is offered.
    rescued: Option<Rescued>,
    /// The text for which unsaved work was looked after last.
    kept: String,
    drag: Option<Drag>,
}

/// A field that is dragged, and the text before it was.
struct Drag {
    path: String,
    before: String,
}

impl<D> Deref for Paper<D> {
    type Target = TextFile<D>;

    fn deref(&self) -> &TextFile<D> {
        &self.file
    }
}

impl<D: Titled> Paper<D> {
    /// Laid down first, with what an earlier window left of it.
    pub fn new(file: TextFile<D>, recovery: Recovery, rescued: Option<Rescued>) -> Self {
        Self {
            rescued: rescued.filter(|it| it.text != file.text()),
            kept: file.text().to_owned(),
            history: History::default(),
            drag: None,
            file,
            recovery,
        }
    }

    /// Another document in its place, with nothing of the one before.
    pub fn take_up(&mut self, file: TextFile<D>) {
        let rescued = self.recovery.found(file.path());
        *self = Self::new(file, self.recovery.clone(), rescued);
    }

    /// Changes the text, and remembers how it was; whether it is another now. What fails changes nothing.
    pub fn change(
        &mut self,
        words: String,
        edit: impl FnOnce(&mut TextFile<D>) -> Result<(), Faults>,
    ) -> Result<bool, Faults> {
        self.let_go();
        let mut file = self.file.clone();
        edit(&mut file)?;
        let is_other = file.text() != self.file.text();
        if is_other {
            self.history.changed(self.file.text().to_owned(), words);
            self.file = file;
        }
        Ok(is_other)
    }

    /// Drags a field to a value: one step back for all of it, when it is let go.
    pub fn drag(&mut self, path: &str, value: &str) -> Result<(), Fault> {
        // Another field without a word that the last was let go: two drags.
        if self.drag.as_ref().is_some_and(|it| it.path != path) {
            self.let_go();
        }
        let before = self.file.text().to_owned();
        self.file.put(path, value)?;
        self.drag.get_or_insert(Drag { path: path.to_owned(), before });
        Ok(())
    }
}

/// What can be done to a paper, whatever stands on it.
pub trait OnDesk {
    /// Whether there is something that no file holds.
    fn is_changed(&self) -> bool;
    fn name(&self) -> String;
    /// Where it is kept; none for one that was never saved.
    fn path(&self) -> Option<&Path>;
    fn history(&self) -> &History;
    /// On what unsaved work of an earlier window is offered.
    fn offered(&self) -> Option<String>;
    /// Whether nobody has put a hand to it.
    fn is_untouched(&self) -> bool {
        self.path().is_none() && !self.is_changed() && self.offered().is_none()
    }

    /// A drag that ends is one step back.
    fn let_go(&mut self);
    /// A step back or forward; whether there was one.
    fn travel(&mut self, forward: bool) -> Result<bool, Faults>;
    /// Writes it over its file, or into another that is its own from now on.
    fn save(&mut self, path: Option<&Path>) -> Result<(), Fault>;
    /// Keeps what no file holds, if it is another than was kept last; a drag when it ends. What an earlier window left
    /// and is still offered stays beside it.
    fn keep_unsaved(&mut self) -> Result<(), Fault>;
    /// What is unsaved is kept anew.
    fn keep_again(&mut self);
    /// Its changes are let go: nothing of it is kept any more, but for what is still offered.
    fn forget_unsaved(&self);
    /// Takes up what an earlier window left; whether there was anything.
    fn rescue(&mut self) -> Result<bool, Faults>;
    fn drop_rescued(&mut self);
}

impl<D: Titled> OnDesk for Paper<D> {
    fn is_changed(&self) -> bool {
        self.file.is_changed()
    }

    fn name(&self) -> String {
        let title = self.file.fields().title().map(|it| it.0.clone());
        self.file.file_name().or(title).unwrap_or_else(|| D::NAMELESS.to_owned())
    }

    fn path(&self) -> Option<&Path> {
        self.file.path()
    }

    fn history(&self) -> &History {
        &self.history
    }

    fn offered(&self) -> Option<String> {
        let path = self.rescued.as_ref()?.path.as_ref();
        Some(path.map_or(D::NEW.to_owned(), |it| it.to_string_lossy().into_owned()))
    }

    fn let_go(&mut self) {
        if let Some(Drag { path, before }) = self.drag.take()
            && before != self.file.text()
        {
            let words = of_field(name(&path).unwrap_or(&path), &self.file.at(&path));
            self.history.changed(before, words);
        }
    }

    fn travel(&mut self, forward: bool) -> Result<bool, Faults> {
        self.let_go();
        let Some(text) = self.history.travel(self.file.text(), forward) else { return Ok(false) };
        self.file = self.file.with_text(&text)?;
        Ok(true)
    }

    fn save(&mut self, path: Option<&Path>) -> Result<(), Fault> {
        self.let_go();
        let before = self.file.path().map(Path::to_path_buf);
        match path {
            Some(path) => self.file.save_as(path)?,
            None => self.file.save()?,
        }
        self.recovery.forget(before.as_deref(), self.rescued.as_ref());
        self.forget_unsaved();
        self.kept = self.file.text().to_owned();
        Ok(())
    }

    fn keep_unsaved(&mut self) -> Result<(), Fault> {
        if self.drag.is_some() || self.file.text() == self.kept {
            return Ok(());
        }
        self.kept = self.file.text().to_owned();
        if self.file.is_changed() {
            let is_beside = self.rescued.is_some();
            return self.recovery.keep(self.file.path(), self.file.text(), is_beside);
        }
        self.forget_unsaved();
        Ok(())
    }

    fn keep_again(&mut self) {
        self.kept.clear();
    }

    fn forget_unsaved(&self) {
        self.recovery.forget(self.file.path(), self.rescued.as_ref());
    }

    fn rescue(&mut self) -> Result<bool, Faults> {
        let Some(rescued) = self.rescued.clone() else { return Ok(false) };
        if rescued.path.as_deref() != self.file.path() {
            if self.file.is_changed() {
                let fault = Fault::new(format!("{} has unsaved changes", D::HERE));
                return Err(fault.help("save it first, then take the other up").into());
            }
            if let Some(path) = &rescued.path {
                self.take_up(TextFile::open(path)?);
            }
        }
        self.change("take up unsaved work".to_owned(), |it| {
            *it = it.with_text(&rescued.text)?;
            Ok(())
        })?;
        self.rescued = None;
        Ok(true)
    }

    fn drop_rescued(&mut self) {
        if let Some(rescued) = self.rescued.take() {
            self.recovery.forget_rescued(&rescued);
        }
    }
}

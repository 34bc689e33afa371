//! What outlives the window: unsaved work, the files used last, and how the window looked.

use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::{Path, PathBuf};

use backlift::files::fault::Fault;
use backlift::files::save;
use serde::{Deserialize, Serialize};

/// Files remembered.
const MOST_RECENT: usize = 8;

/// The folder where it is kept; none keeps nothing.
#[derive(Clone, Debug, Default)]
pub struct Recovery {
    folder: Option<PathBuf>,
}

/// Unsaved work of an earlier window.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Rescued {
    /// The file it belongs to; none if it never had one.
    pub path: Option<PathBuf>,
    /// The text.
    pub text: String,
}

impl Recovery {
    /// In this folder.
    #[cfg(test)]
    pub fn within(folder: Option<PathBuf>) -> Self {
        Self { folder }
    }

    /// The user's own folder for such things.
    pub fn usual() -> Self {
        let of =
            |name: &str| std::env::var_os(name).map(PathBuf::from).filter(|it| it.is_absolute());
        let folder = of("XDG_STATE_HOME")
            .or_else(|| of("LOCALAPPDATA"))
            .or_else(|| of("HOME").map(|it| it.join(".local").join("state")));
        Self { folder: folder.map(|it| it.join("backlift")) }
    }

    fn unsaved(&self, path: Option<&Path>) -> Option<PathBuf> {
        let name = match path {
            Some(path) => {
                let mut hasher = DefaultHasher::new();
                std::path::absolute(path).unwrap_or_else(|_| path.to_owned()).hash(&mut hasher);
                format!("unsaved-{:016x}.ron", hasher.finish())
            }
            None => "unsaved.ron".to_owned(),
        };
        Some(self.folder.as_ref()?.join(name))
    }

    /// Keeps unsaved work.
    pub fn keep(&self, path: Option<&Path>, text: &str) -> Result<(), Fault> {
        let Some(file) = self.unsaved(path) else { return Ok(()) };
        let it = Rescued { path: path.map(Path::to_path_buf), text: text.to_owned() };
        let written = ron::to_string(&it).map_err(|it| Fault::new(it.to_string()))?;
        self.write(&file, &written)
    }

    /// Nothing is unsaved any more.
    pub fn forget(&self, path: Option<&Path>) {
        if let Some(file) = self.unsaved(path) {
            // If it cannot be taken away it is offered once more, and says what is already saved.
            let _ = std::fs::remove_file(file);
        }
    }

    /// Unsaved work that belongs to this file, or to none.
    pub fn found(&self, path: Option<&Path>) -> Option<Rescued> {
        ron::from_str(&std::fs::read_to_string(self.unsaved(path)?).ok()?).ok()
    }

    /// Files used last, the latest first.
    pub fn recent(&self) -> Vec<PathBuf> {
        let read = |it: &PathBuf| std::fs::read_to_string(it.join("recent.ron")).ok();
        let text = self.folder.as_ref().and_then(read);
        let all: Vec<PathBuf> = text.and_then(|it| ron::from_str(&it).ok()).unwrap_or_default();
        all.into_iter().filter(|it| it.is_file()).collect()
    }

    /// A file was opened or saved.
    pub fn used(&self, path: &Path) {
        let Some(folder) = &self.folder else { return };
        let path = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
        let mut all = self.recent();
        all.retain(|it| *it != path);
        all.insert(0, path);
        all.truncate(MOST_RECENT);
        if let Ok(text) = ron::to_string(&all) {
            // A list of files that cannot be kept is no loss worth a word.
            let _ = self.write(&folder.join("recent.ron"), &text);
        }
    }

    fn write(&self, file: &Path, text: &str) -> Result<(), Fault> {
        if let Some(folder) = &self.folder {
            std::fs::create_dir_all(folder)
                .map_err(|it| Fault::new(format!("{} cannot be made: {it}", folder.display())))?;
        }
        save::over(file, text.as_bytes())
    }
}

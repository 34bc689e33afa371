//! What outlives the window: unsaved work, the files used last, and how the window looked.

use std::path::{Path, PathBuf};

use backlift::files::fault::Fault;
use backlift::files::save;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

use super::answers::key;
use super::look::{Look, TEXT_SCALES};

/// Files remembered.
const MOST_RECENT: usize = 8;

/// The folder where it is kept; none keeps nothing.
#[derive(Clone, Debug, Default)]
pub struct Recovery {
    folder: Option<PathBuf>,
    of_bats: bool,
}

/// Unsaved work of an earlier window.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Rescued {
    /// The file it belongs to; none if it never had one.
    pub path: Option<PathBuf>,
    pub text: String,
}

impl Recovery {
    #[cfg(test)]
    pub fn within(folder: PathBuf) -> Self {
        Self { folder: Some(folder), of_bats: false }
    }

    /// The user's own folder for such things.
    pub fn usual() -> Self {
        let of =
            |name: &str| std::env::var_os(name).map(PathBuf::from).filter(|it| it.is_absolute());
        let folder = of("XDG_STATE_HOME")
            .or_else(|| of("LOCALAPPDATA"))
            .or_else(|| of("HOME").map(|it| it.join(".local").join("state")));
        Self { folder: folder.map(|it| it.join("backlift")), of_bats: false }
    }

    pub fn for_bats(&self) -> Self {
        Self { of_bats: true, ..self.clone() }
    }

    /// How the names of its files begin.
    fn start(&self) -> &'static str {
        if self.of_bats { "bat-unsaved" } else { "unsaved" }
    }

    fn unsaved(&self, path: Option<&Path>, is_beside: bool) -> String {
        let name = match path {
            Some(path) => format!("{}-{:016x}", self.start(), key(absolute(path))),
            None => self.start().to_owned(),
        };
        let beside = if is_beside { "-later" } else { "" };
        format!("{name}{beside}.ron")
    }

    /// Keeps unsaved work; `is_beside` where that of an earlier window must stay.
    pub fn keep(&self, path: Option<&Path>, text: &str, is_beside: bool) -> Result<(), Fault> {
        let it = Rescued { path: path.map(Path::to_path_buf), text: text.to_owned() };
        self.write(&self.unsaved(path, is_beside), &it)
    }

    /// Nothing of this document is unsaved any more, but for what is still offered.
    pub fn forget(&self, path: Option<&Path>, offered: Option<&Rescued>) {
        self.take_away(self.kept_for(path), |it| offered != Some(it));
    }

    pub fn forget_rescued(&self, it: &Rescued) {
        self.take_away(self.kept_for(it.path.as_deref()), |other| other == it);
    }

    fn take_away(&self, all: Vec<(PathBuf, Rescued)>, which: impl Fn(&Rescued) -> bool) {
        for (file, _) in all.into_iter().filter(|it| which(&it.1)) {
            // If it cannot be taken away it is offered once more, and says what is already saved.
            let _ = std::fs::remove_file(file);
        }
    }

    /// Unsaved work that belongs to this file, or to none.
    pub fn found(&self, path: Option<&Path>) -> Option<Rescued> {
        self.kept_for(path).into_iter().next().map(|it| it.1)
    }

    pub fn any(&self) -> Option<Rescued> {
        self.kept().into_iter().next().map(|it| it.1)
    }

    /// Told by what stands in them: a later version may name its files otherwise.
    fn kept_for(&self, path: Option<&Path>) -> Vec<(PathBuf, Rescued)> {
        let of = |it: &Rescued| it.path.as_deref().map(absolute) == path.map(absolute);
        self.kept().into_iter().filter(|(_, it)| of(it)).collect()
    }

    fn kept(&self) -> Vec<(PathBuf, Rescued)> {
        let files = self.folder.as_ref().and_then(|it| std::fs::read_dir(it).ok());
        let named = |it: &PathBuf| {
            let name = it.file_name().map(|it| it.to_string_lossy().into_owned());
            name.is_some_and(|it| it.starts_with(self.start()) && it.ends_with(".ron"))
        };
        let all = files.into_iter().flatten().flatten().map(|it| it.path()).filter(named);
        all.filter_map(|file| read(&file).map(|it| (file, it))).collect()
    }

    pub fn look(&self) -> Option<Look> {
        let it: Look = read(&self.folder.as_ref()?.join("look.ron"))?;
        let [least, most] = TEXT_SCALES;
        let text_scale = if it.text_scale.is_finite() { it.text_scale } else { 1.0 };
        Some(Look { text_scale: text_scale.clamp(least, most), ..it })
    }

    /// Keeps how it looks; that it cannot is no loss worth a word.
    pub fn keep_look(&self, look: &Look) {
        let _ = self.write("look.ron", look);
    }

    /// Files used last, the latest first.
    pub fn recent(&self) -> Vec<PathBuf> {
        let all = self.folder.as_ref().and_then(|it| read(&it.join("recent.ron")));
        let all: Vec<PathBuf> = all.unwrap_or_default();
        all.into_iter().filter(|it| it.is_file()).collect()
    }

    /// A file was opened or saved.
    pub fn used(&self, path: &Path) {
        let path = absolute(path);
        let mut all = self.recent();
        all.retain(|it| *it != path);
        all.insert(0, path);
        all.truncate(MOST_RECENT);
        // A list of files that cannot be kept is no loss worth a word.
        let _ = self.write("recent.ron", &all);
    }

    fn write(&self, name: &str, it: &impl Serialize) -> Result<(), Fault> {
        let Some(folder) = &self.folder else { return Ok(()) };
        let text = ron::to_string(it).map_err(Fault::new)?;
        std::fs::create_dir_all(folder)
            .map_err(|it| Fault::new(format!("{} cannot be made: {it}", folder.display())))?;
        save::over(&folder.join(name), text.as_bytes())
    }
}

fn read<T: DeserializeOwned>(file: &Path) -> Option<T> {
    ron::from_str(&std::fs::read_to_string(file).ok()?).ok()
}

fn absolute(path: &Path) -> PathBuf {
    std::path::absolute(path).unwrap_or_else(|_| path.to_owned())
}

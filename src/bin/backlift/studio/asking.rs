//! A path that is asked for: what for, where it would lie, and what becomes of it.

use std::path::{Path, PathBuf};

use super::action::{Action, Which};
use super::state::{Ask, Studio};
use super::wood::action::WoodAction;

/// Which kind of path is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    Open,
    Save,
    Folder,
}

/// A question for a path, in words.
#[derive(Clone, Copy, Debug)]
pub struct Asked {
    pub title: &'static str,
    /// What is done with the path.
    pub does: &'static str,
    pub way: Way,
    pub kind: &'static str,
    /// How its name ends; folders have none.
    pub ending: &'static str,
}

impl Ask {
    pub fn asked(self) -> Asked {
        let open = |title, does, kind| Asked { title, does, way: Way::Open, kind, ending: "ron" };
        let folder = |title, does, kind| Asked { title, does, way: Way::Folder, kind, ending: "" };
        let does = "Save it there";
        let save = |title, kind, ending| Asked { title, does, way: Way::Save, kind, ending };
        match self {
            Self::Open(Which::Scenario) => open("Open a scenario", "Open it", "scenario"),
            Self::Open(Which::Bat) => open("Open a described bat", "Open it", "described bat"),
            Self::SaveAs(Which::Scenario) => save("Save the scenario", "scenario", "ron"),
            Self::SaveAs(Which::Bat) => save("Save the described bat", "described bat", "ron"),
            Self::CardFolder => folder("A folder for the card", "Write it there", "card"),
            Self::CardFile => open("The card the bat was ordered with", "Check against it", "card"),
            Self::Clip => save("Save the clip", "animated picture", "gif"),
            Self::Page => save("Save the page", "picture", "png"),
            Self::WoodCard => open("The card the bat is made for", "Take it", "card"),
            Self::WoodFolder => {
                folder("A folder for templates and solid", "Write them there", "templates")
            }
        }
    }

    pub fn action(self, path: PathBuf) -> Action {
        match self {
            Self::Open(which) => Action::Open(path).on(which),
            Self::SaveAs(which) => Action::SaveAs(path).on(which),
            Self::CardFolder => Action::WriteCard(path),
            Self::CardFile => Action::Check(path),
            Self::Clip => Action::WriteClip(path),
            Self::Page => Action::WritePage(path),
            Self::WoodCard => Action::Wood(WoodAction::Card(path)),
            Self::WoodFolder => Action::Wood(WoodAction::Write(path)),
        }
    }

    fn which(self) -> Which {
        match self {
            Self::Open(which) | Self::SaveAs(which) => which,
            Self::WoodCard | Self::WoodFolder => Which::Bat,
            Self::CardFolder | Self::CardFile | Self::Clip | Self::Page => Which::Scenario,
        }
    }
}

impl Studio {
    /// Where a path would lie that is asked for: beside the paper, else in the home folder.
    pub fn asked_folder(&self, ask: Ask) -> PathBuf {
        let path = self.paper(ask.which()).path().and_then(|it| std::path::absolute(it).ok());
        let beside = path.and_then(|it| it.parent().map(Path::to_path_buf));
        beside.or_else(home).unwrap_or_default()
    }

    /// The name it would have; none where a file is chosen that is there.
    pub fn asked_name(&self, ask: Ask) -> String {
        match ask {
            Ask::SaveAs(which) => file_name(&self.paper(which).name()),
            Ask::CardFolder => "card".to_owned(),
            Ask::WoodFolder => "templates".to_owned(),
            Ask::Clip => "swing.gif".to_owned(),
            Ask::Page => "swing.png".to_owned(),
            Ask::Open(_) | Ask::CardFile | Ask::WoodCard => String::new(),
        }
    }

    /// What was typed for a path that is asked for; none while nothing was.
    pub fn typed_path(&self, ask: Ask, text: &str) -> Option<PathBuf> {
        let path = understood(text, &self.asked_folder(ask), home().as_deref())?;
        let Asked { way, ending, .. } = ask.asked();
        Some(if way == Way::Save { ended(path, ending) } else { path })
    }

    pub(super) fn answer(&mut self, path: PathBuf) {
        if let Some(ask) = self.asks.pop_front() {
            self.answered += 1;
            self.apply(ask.action(path));
        }
    }

    pub(super) fn withdraw(&mut self) {
        if self.asks.pop_front().is_some() {
            self.answered += 1;
        }
    }
}

/// The same with the ending of its kind, where it has none.
pub fn ended(path: PathBuf, ending: &str) -> PathBuf {
    if path.extension().is_some() { path } else { path.with_extension(ending) }
}

/// A path as it is typed: `~` is the home folder, and what does not start at a root lies in `folder`. None where
/// nothing is typed.
fn understood(text: &str, folder: &Path, home: Option<&Path>) -> Option<PathBuf> {
    let text = text.trim();
    // As file managers copy it.
    let text = text.strip_prefix('"').and_then(|it| it.strip_suffix('"')).unwrap_or(text);
    if text.is_empty() {
        return None;
    }
    let below = text.strip_prefix('~').filter(|it| it.is_empty() || it.starts_with(['/', '\\']));
    Some(match (below, home) {
        (Some(below), Some(home)) => home.join(below.trim_start_matches(['/', '\\'])),
        _ => folder.join(text),
    })
}

fn home() -> Option<PathBuf> {
    std::env::home_dir().filter(|it| it.is_absolute())
}

/// What a paper is called, as the name of a file.
fn file_name(of: &str) -> String {
    let is_kept = |it: char| it.is_alphanumeric() || it == '.';
    let name: String = of.chars().map(|it| if is_kept(it) { it } else { '-' }).collect();
    if name.ends_with(".ron") { name } else { name + ".ron" }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_typed_path_may_start_at_the_root_at_home_or_in_the_folder_at_hand() {
        let (folder, home) = (Path::new("/kit"), Path::new("/players/ann"));
        let of = |text: &str| understood(text, folder, Some(home));
        assert_eq!(of("/a/b.ron"), Some(PathBuf::from("/a/b.ron")));
        assert_eq!(of(" b.ron "), Some(PathBuf::from("/kit/b.ron")));
        assert_eq!(of("~/b.ron"), Some(PathBuf::from("/players/ann/b.ron")));
        assert_eq!(of("~"), Some(PathBuf::from("/players/ann/")));
        // A file may be called so.
        assert_eq!(of("~b.ron"), Some(PathBuf::from("/kit/~b.ron")));
        assert_eq!(of("\"/a/two words.ron\""), Some(PathBuf::from("/a/two words.ron")));
        assert_eq!(of("  "), None);
        assert_eq!(understood("~/b", folder, None), Some(PathBuf::from("/kit/~/b")));
    }

    #[test]
    fn a_name_without_an_ending_gets_that_of_its_kind() {
        assert_eq!(ended(PathBuf::from("/a/swing"), "gif"), PathBuf::from("/a/swing.gif"));
        assert_eq!(ended(PathBuf::from("/a/swing.GIF"), "gif"), PathBuf::from("/a/swing.GIF"));
        assert_eq!(file_name("Ann's kit"), "Ann-s-kit.ron");
    }
}

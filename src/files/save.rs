//! Writing without leaving anything half done: a file is there whole, or not at all; of several, all or none.

mod stage;

use std::ffi::OsStr;
use std::io;
use std::path::{Path, PathBuf};

use super::fault::Fault;
use stage::{NotPlaced, Stage};

pub use stage::hold_saves;

/// Writes one new file. An existing file is refused and left as it is.
pub fn new_file(path: &Path, contents: &[u8]) -> Result<(), Fault> {
    new_files(&[(path, contents)])
}

/// Writes several new files; none when one of them is refused.
pub fn new_files(files: &[(&Path, &[u8])]) -> Result<(), Fault> {
    let mut written: Vec<&Path> = Vec::new();
    for (path, contents) in files {
        if let Err(fault) = one_new_file(path, contents) {
            for it in written {
                std::fs::remove_file(it).map_err(|error| unwritable(it, &error))?;
            }
            return Err(fault);
        }
        written.push(path);
    }
    Ok(())
}

/// Makes sure that a new file can be written there: nobody should wait for what cannot be kept.
pub fn check_new_file(path: &Path) -> Result<(), Fault> {
    if path.symlink_metadata().is_ok() {
        return Err(is_there(path));
    }
    Stage::enter(folder_of(path)).map(drop).map_err(|error| unwritable(path, &error))
}

fn one_new_file(path: &Path, contents: &[u8]) -> Result<(), Fault> {
    // A path that ends in a folder has no name of its own.
    let Some(name) = path.file_name().filter(|_| path.symlink_metadata().is_err()) else {
        return Err(is_there(path));
    };
    staged(folder_of(path), name, contents).and_then(|it| it.put_new(name)).map_err(|error| {
        match error.kind() == io::ErrorKind::AlreadyExists && path.symlink_metadata().is_ok() {
            true => is_there(path),
            false => unwritable(path, &error),
        }
    })
}

fn is_there(path: &Path) -> Fault {
    Fault::new(format!("{} is there already and was left as it is", path.display()))
        .help("choose another name, or move the old one away")
}

/// Writes one file over the one that is there: the old one stays whole until the new one is, and its owner and
/// permissions go over. A link stays, and what it leads to is written.
pub fn over(path: &Path, contents: &[u8]) -> Result<(), Fault> {
    let real = match path.canonicalize() {
        Err(error) if error.kind() != io::ErrorKind::NotFound => {
            return Err(unwritable(path, &error));
        }
        found => found.unwrap_or_else(|_| path.to_path_buf()),
    };
    let Some(name) = real.file_name().filter(|_| !real.is_dir()) else {
        return Err(is_a_folder(path));
    };
    staged(folder_of(&real), name, contents)
        .and_then(|it| it.put_over(name))
        .map_err(|error| unwritable(path, &error))
}

fn staged(folder: &Path, name: &OsStr, contents: &[u8]) -> io::Result<Stage> {
    let stage = Stage::enter(folder)?;
    stage.write(name, contents)?;
    Ok(stage)
}

/// The folder that a file stands in.
pub fn folder_of(path: &Path) -> &Path {
    path.parent().filter(|it| !it.as_os_str().is_empty()).unwrap_or(Path::new("."))
}

/// Brings to its end the save that a stopped run began in this folder, if one did.
pub(super) fn complete(folder: &Path) -> Result<(), Fault> {
    if !Stage::is_left_in(folder) {
        return Ok(());
    }
    Stage::enter(folder).map(drop).map_err(|error| {
        let help = "what a run put there is not whole: run it again into another folder";
        unwritable(folder, &error).help(help)
    })
}

/// Several files for one folder, held back until all are there. Dropped before [`Folder::commit`], it
/// leaves the disk as it was.
#[derive(Debug)]
pub struct Folder {
    path: PathBuf,
    files: Vec<(String, Vec<u8>)>,
}

impl Folder {
    /// Makes sure at once that the folder can be made and written into: nobody should wait for a fit
    /// whose card cannot be kept. What a stopped run began there is brought to its end.
    pub fn open(path: &Path) -> Result<Self, Fault> {
        let _made = Made::folder(path)?;
        Stage::enter(path).map_err(|error| unwritable(path, &error))?;
        Ok(Self { path: path.to_path_buf(), files: Vec::new() })
    }

    /// Keeps one file for its place.
    pub fn add(&mut self, name: &str, contents: &[u8]) -> Result<(), Fault> {
        let path = self.path.join(name);
        if path.is_dir() {
            return Err(is_a_folder(&path));
        }
        self.files.push((name.to_owned(), contents.to_vec()));
        Ok(())
    }

    /// Puts every file in its place, over older ones of the same name; none when one cannot be. Returns their paths.
    pub fn commit(self) -> Result<Vec<PathBuf>, Fault> {
        let mut made = Made::folder(&self.path)?;
        let stage = Stage::enter(&self.path).map_err(|error| unwritable(&self.path, &error))?;
        for (name, contents) in &self.files {
            let path = self.path.join(name);
            stage.write(OsStr::new(name), contents).map_err(|error| unwritable(&path, &error))?;
        }
        let names: Vec<&str> = self.files.iter().map(|(name, _)| name.as_str()).collect();
        stage.put_all(&names).map_err(|NotPlaced { path, error }| unwritable(&path, &error))?;
        made.top = None;
        Ok(names.iter().map(|it| self.path.join(it)).collect())
    }
}

/// Folders that were made for files; they go again if they are empty.
struct Made {
    path: PathBuf,
    /// The topmost of them.
    top: Option<PathBuf>,
}

impl Made {
    fn folder(path: &Path) -> Result<Self, Fault> {
        let top = path
            .ancestors()
            .take_while(|it| !it.as_os_str().is_empty() && !it.exists())
            .last()
            .map(Path::to_path_buf);
        // Before the first is made, so that what was made goes again when the next cannot be.
        let made = Self { path: path.to_path_buf(), top };
        std::fs::create_dir_all(path).map_err(|error| unwritable(path, &error))?;
        Ok(made)
    }
}

impl Drop for Made {
    fn drop(&mut self) {
        let Some(top) = &self.top else { return };
        for folder in self.path.ancestors().take_while(|it| it.starts_with(top)) {
            // Fails if something else was put there meanwhile, and then it stays.
            if std::fs::remove_dir(folder).is_err() && folder.exists() {
                return;
            }
        }
    }
}

fn is_a_folder(path: &Path) -> Fault {
    Fault::new(format!("{} is a folder: no file can take its place", path.display()))
        .help("move the folder away, or choose another place")
}

/// What went wrong on the disk, and what to do about it.
pub fn unwritable(path: &Path, error: &io::Error) -> Fault {
    use io::ErrorKind as Kind;
    if error.kind() == Kind::IsADirectory {
        return is_a_folder(path);
    }
    let (why, help) = match error.kind() {
        Kind::NotFound if path.parent().is_some_and(Path::is_dir) => {
            ("nothing may be written there".to_owned(), "choose a folder of your own")
        }
        Kind::PermissionDenied | Kind::ReadOnlyFilesystem => {
            ("nothing may be written there".to_owned(), "choose a folder of your own")
        }
        Kind::StorageFull | Kind::QuotaExceeded | Kind::FileTooLarge => {
            ("there is no room left".to_owned(), "make room, or choose another disk")
        }
        Kind::NotFound => {
            ("its folder is not there".to_owned(), "make the folder first, or choose another")
        }
        Kind::NotADirectory | Kind::AlreadyExists => {
            ("a file stands where a folder should be".to_owned(), "choose another folder")
        }
        _ => (error.to_string(), "choose another place"),
    };
    Fault::new(format!("{} cannot be written: {why}", path.display())).help(help)
}

//! Writing without leaving anything half done: a file is there whole, or not at all.

use std::io::{self, Write};
use std::path::{Path, PathBuf};

use atomic_write_file::AtomicWriteFile;

use super::fault::Fault;

/// Writes one new file. An existing file is refused and left as it is.
pub fn new_file(path: &Path, contents: &[u8]) -> Result<(), Fault> {
    if path.symlink_metadata().is_ok() {
        return Err(Fault::new(format!(
            "{} is there already and was left as it is",
            path.display()
        ))
        .help("choose another name, or move the old one away"));
    }
    stage(path, contents)?.commit().map_err(|error| unwritable(path, &error))
}

/// Writes one file over the one that is there: the old one stays whole until the new one is.
pub fn over(path: &Path, contents: &[u8]) -> Result<(), Fault> {
    stage(path, contents)?.commit().map_err(|error| unwritable(path, &error))
}

/// Several files for one folder, held back until all are there. Dropped before [`Folder::commit`], it
/// leaves the disk as it was.
#[derive(Debug)]
pub struct Folder {
    path: PathBuf,
    /// The topmost folder that was made for it.
    made: Option<PathBuf>,
    files: Vec<(PathBuf, AtomicWriteFile)>,
}

impl Folder {
    /// Opens a folder to write into, making it if need be, and makes sure at once that it can be
    /// written into: nobody should wait for a fit whose card cannot be kept.
    pub fn open(path: &Path) -> Result<Self, Fault> {
        let made = path
            .ancestors()
            .take_while(|it| !it.as_os_str().is_empty() && !it.exists())
            .last()
            .map(Path::to_path_buf);
        // Made first, so that what was made goes again when something below fails.
        let folder = Self { path: path.to_path_buf(), made, files: Vec::new() };
        std::fs::create_dir_all(path).map_err(|error| unwritable(path, &error))?;
        let trial = path.join("backlift.trial");
        let trial = stage(&trial, b"trial")?;
        trial.discard().map_err(|error| unwritable(path, &error))?;
        Ok(folder)
    }

    /// Writes one file beside its final place.
    pub fn add(&mut self, name: &str, contents: &[u8]) -> Result<(), Fault> {
        let path = self.path.join(name);
        let staged = stage(&path, contents)?;
        self.files.push((path, staged));
        Ok(())
    }

    /// Puts every file in its place, over older ones of the same name. Returns their paths.
    pub fn commit(mut self) -> Result<Vec<PathBuf>, Fault> {
        let mut written = Vec::new();
        for (path, staged) in std::mem::take(&mut self.files) {
            staged.commit().map_err(|error| unwritable(&path, &error))?;
            written.push(path);
        }
        self.made = None;
        Ok(written)
    }
}

impl Drop for Folder {
    /// Takes the staged files away, and the folders that were made for them if they are empty again.
    fn drop(&mut self) {
        self.files.clear();
        let Some(made) = &self.made else { return };
        for folder in self.path.ancestors().take_while(|it| it.starts_with(made)) {
            // Fails if something else was put there meanwhile, and then it stays.
            if std::fs::remove_dir(folder).is_err() && folder.exists() {
                return;
            }
        }
    }
}

fn stage(path: &Path, contents: &[u8]) -> Result<AtomicWriteFile, Fault> {
    if path.is_dir() {
        return Err(Fault::new(format!(
            "{} is a folder: no file can take its place",
            path.display()
        ))
        .help("move the folder away, or choose another place"));
    }
    let write = || {
        let mut file = AtomicWriteFile::open(path)?;
        file.write_all(contents)?;
        file.sync_all()?;
        Ok(file)
    };
    write().map_err(|error| unwritable(path, &error))
}

/// What went wrong on the disk, and what to do about it.
pub fn unwritable(path: &Path, error: &io::Error) -> Fault {
    use io::ErrorKind as Kind;
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

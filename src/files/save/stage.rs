//! Where files wait until all of them are whole: a folder beside their places, on the same disk.
//!
//! Once every file is whole a list of them is put beside them, and from then on they go to their places or, when
//! one of them cannot, all stay away. Who is stopped in between leaves the list, and the next run goes on with it;
//! what is left without a list is litter, and the next run clears it away.

use std::ffi::OsStr;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};

/// Name of the folder.
const NAME: &str = ".backlift";
/// Names of the files, a line each; there only when all of them are whole.
const LIST: &str = "list";
/// The files to come.
const NEW: &str = "new";
/// What stood in their places.
const OLD: &str = "old";

/// Whether anything was saved; locked while something is.
static SAVED: Mutex<bool> = Mutex::new(false);

/// Waits for a save that is under way and holds off the next ones: for who is about to end the program. Says
/// whether anything was saved.
pub fn hold_saves() -> MutexGuard<'static, bool> {
    SAVED.lock().unwrap_or_else(PoisonError::into_inner)
}

/// A file that could not be put in its place.
pub struct NotPlaced {
    pub path: PathBuf,
    pub error: io::Error,
}

/// The folder, while this program alone writes there.
pub struct Stage {
    folder: PathBuf,
    path: PathBuf,
    saved: MutexGuard<'static, bool>,
    _lock: Option<File>,
}

impl Stage {
    /// Waits for other programs that save into this folder, brings to its end what a stopped one began, and clears
    /// away what it left.
    pub fn enter(folder: &Path) -> io::Result<Self> {
        // Where a folder cannot be locked, two that save at once each leave whole files, of one or of the other.
        let lock = File::open(folder).ok().filter(|it| it.lock().is_ok());
        let path = folder.join(NAME);
        let stage = Self { folder: folder.to_path_buf(), path, saved: hold_saves(), _lock: lock };
        if stage.path.symlink_metadata().is_ok_and(|it| it.is_dir()) {
            // What cannot be placed goes back, and then the folder is as it was.
            if stage.place().is_err() && stage.path.join(LIST).exists() {
                return Err(io::Error::other("what a stopped run left there cannot be mended"));
            }
            fs::remove_dir_all(&stage.path)?;
        }
        fs::create_dir(&stage.path)?;
        fs::create_dir(stage.path.join(NEW))?;
        fs::create_dir(stage.path.join(OLD))?;
        Ok(stage)
    }

    /// Whether a stopped run left a list there.
    pub fn is_left_in(folder: &Path) -> bool {
        folder.join(NAME).join(LIST).is_file()
    }

    /// Writes one file, with owner and permissions of the one that it will replace, if there is one.
    pub fn write(&self, name: &OsStr, contents: &[u8]) -> io::Result<PathBuf> {
        let path = self.path.join(NEW).join(name);
        let mut file = File::create_new(&path)?;
        if let Ok(old) = fs::metadata(self.folder.join(name)) {
            become_like(&file, &old)?;
        }
        file.write_all(contents)?;
        file.sync_all()?;
        Ok(path)
    }

    /// Puts one written file in its place, over what is there.
    pub fn put_over(mut self, name: &OsStr) -> io::Result<()> {
        fs::rename(self.path.join(NEW).join(name), self.folder.join(name))?;
        settle(&self.folder);
        *self.saved = true;
        Ok(())
    }

    /// Puts one written file in its place if nothing is there; of two programs that do so at once, one is refused.
    pub fn put_new(mut self, name: &OsStr) -> io::Result<()> {
        let (new, place) = (self.path.join(NEW).join(name), self.folder.join(name));
        match fs::hard_link(&new, &place) {
            // Disks without links: programs of ours keep apart by the lock.
            Err(error)
                if error.kind() != io::ErrorKind::AlreadyExists
                    && place.symlink_metadata().is_err() =>
            {
                fs::rename(&new, &place)?;
            }
            linked => linked?,
        }
        settle(&self.folder);
        *self.saved = true;
        Ok(())
    }

    /// Puts every written file in its place, over older ones; when one cannot be, none is.
    pub fn put_all(mut self, names: &[&str]) -> Result<(), NotPlaced> {
        let listed = || {
            let part = self.path.join("list to be");
            let mut file = File::create_new(&part)?;
            file.write_all(names.join("\n").as_bytes())?;
            file.sync_all()?;
            settle(&self.path.join(NEW));
            fs::rename(part, self.path.join(LIST))?;
            settle(&self.path);
            Ok(())
        };
        listed().map_err(|error| NotPlaced { path: self.folder.clone(), error })?;
        self.place()?;
        *self.saved = true;
        Ok(())
    }

    /// Puts the files of the list in their places, those that are not yet; takes all back when one cannot be.
    fn place(&self) -> Result<(), NotPlaced> {
        let list = self.path.join(LIST);
        let Ok(names) = fs::read_to_string(&list) else { return Ok(()) };
        // Nobody's list leads out of its folder.
        let plain = |it: &&str| Path::new(it).file_name() == Some(OsStr::new(it));
        let names: Vec<&str> = names.lines().filter(plain).collect();
        let placed = names.iter().try_for_each(|name| self.place_one(name));
        let back = match placed {
            Ok(()) => Ok(()),
            Err(_) => names.iter().try_for_each(|name| self.take_back(name)),
        };
        let gone = back.and_then(|()| {
            settle(&self.folder);
            let error = |error| NotPlaced { path: self.folder.clone(), error };
            fs::remove_file(&list).map_err(error)
        });
        placed.and(gone)
    }

    /// The file to come, what stood in its place, the place.
    fn three(&self, name: &str) -> [PathBuf; 3] {
        [self.path.join(NEW).join(name), self.path.join(OLD).join(name), self.folder.join(name)]
    }

    fn place_one(&self, name: &str) -> Result<(), NotPlaced> {
        let [new, old, place] = self.three(name);
        let put = || {
            if !new.exists() {
                return Ok(());
            }
            if place.is_dir() {
                return Err(io::ErrorKind::IsADirectory.into());
            }
            if place.symlink_metadata().is_ok() {
                let _ = fs::remove_file(&old); // of a run that was stopped here
                fs::hard_link(&place, &old).or_else(|_| fs::rename(&place, &old))?;
            }
            fs::rename(&new, &place)
        };
        put().map_err(|error| NotPlaced { path: place.clone(), error })
    }

    fn take_back(&self, name: &str) -> Result<(), NotPlaced> {
        let [new, old, place] = self.three(name);
        let take = || {
            if !new.exists() {
                fs::rename(&place, &new)?;
            }
            match old.symlink_metadata().is_ok() && place.symlink_metadata().is_err() {
                true => fs::rename(&old, &place),
                false => Ok(()),
            }
        };
        take().map_err(|error| NotPlaced { path: place.clone(), error })
    }
}

impl Drop for Stage {
    /// Clears it away, unless there is something in it that the next run has to mend.
    fn drop(&mut self) {
        if !self.path.join(LIST).exists() {
            let _ = fs::remove_dir_all(&self.path);
        }
    }
}

/// Names in a folder outlast a failing power supply, where folders can be told to.
fn settle(folder: &Path) {
    let _ = File::open(folder).and_then(|it| it.sync_all());
}

#[cfg(unix)]
fn become_like(file: &File, old: &fs::Metadata) -> io::Result<()> {
    use std::os::unix::fs::{MetadataExt, fchown};
    // Only an administrator may give a file to somebody else.
    let _ = fchown(file, Some(old.uid()), Some(old.gid()));
    file.set_permissions(old.permissions())
}

#[cfg(not(unix))]
fn become_like(_: &File, _: &fs::Metadata) -> io::Result<()> {
    Ok(())
}

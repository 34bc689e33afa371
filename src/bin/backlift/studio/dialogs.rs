//! The operating system's own windows for files, each on a thread of its own.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::time::{Duration, Instant};

use super::action::Action;
use super::asking::{Asked, Way, ended};
use super::state::{Ask, Studio};
use super::work::Wake;

/// A window that is gone again so soon without a path was never there.
const SOON: Duration = Duration::from_secs(1);

/// Shows the system's window for a question, with the folder and the name a path would have; the path, unless none
/// was chosen.
pub type Chooser = Arc<dyn Fn(&Asked, &Path, &str) -> Option<PathBuf> + Send + Sync>;

/// Windows that are open, and what comes back from them.
pub struct Dialogs {
    chooser: Chooser,
    wake: Wake,
    /// For which question one was opened last.
    opened: Option<u64>,
    sender: Sender<Back>,
    receiver: Receiver<Back>,
}

struct Back {
    number: u64,
    ask: Ask,
    path: Option<PathBuf>,
    took: Duration,
}

impl Dialogs {
    /// Windows of this kind; the one with the panels is called when something was chosen.
    pub fn new(chooser: Chooser, wake: Wake) -> Self {
        let (sender, receiver) = channel();
        Self { chooser, wake, opened: None, sender, receiver }
    }

    /// Opens what is asked for, and does what was chosen.
    pub fn serve(&mut self, it: &mut Studio) {
        while let Ok(Back { number, ask, path, took }) = self.receiver.try_recv() {
            let is_asked = it.answered == number && !it.asks.is_empty();
            match path {
                Some(path) => {
                    it.has_chooser = true;
                    // A choice counts though the question was put away here.
                    it.apply(if is_asked { Action::Given(path) } else { ask.action(path) });
                }
                None if !is_asked => {}
                None if took < SOON => it.has_chooser = false,
                None => it.apply(Action::Withdraw),
            }
        }
        let Some(ask) = it.asks.front().copied() else { return };
        if self.opened == Some(it.answered) {
            return;
        }
        self.opened = Some(it.answered);
        let number = it.answered;
        let (folder, name) = (it.asked_folder(ask), it.asked_name(ask));
        let (chooser, sender, wake) =
            (Arc::clone(&self.chooser), self.sender.clone(), self.wake.clone());
        std::thread::spawn(move || {
            let started = Instant::now();
            let path = chooser(&ask.asked(), &folder, &name);
            let took = started.elapsed();
            // The window is gone when nobody listens.
            let _ = sender.send(Back { number, ask, path, took });
            wake.now();
        });
    }
}

/// The system's own.
pub fn chosen(asked: &Asked, folder: &Path, name: &str) -> Option<PathBuf> {
    let dialog = rfd::FileDialog::new().set_title(asked.title).set_directory(folder);
    match asked.way {
        Way::Open => dialog.add_filter(asked.kind, &[asked.ending]).pick_file(),
        Way::Folder => dialog.pick_folder(),
        Way::Save => {
            let dialog = dialog.add_filter(asked.kind, &[asked.ending]).set_file_name(name);
            Some(ended(dialog.save_file()?, asked.ending))
        }
    }
}

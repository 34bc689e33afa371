//! The window's state and panels without a window.
#![allow(clippy::unwrap_used, reason = "tests")]

mod apart;
mod bats;
mod display;
mod files;
mod own_file;
mod path;
mod paths;
mod picture;
mod playback;
mod scene;
mod script;
mod shortcuts;
mod sizes;
mod today;
mod undo;
mod way;
mod whose;
mod window;
mod wood;
mod words;
mod work;

use std::path::{Path, PathBuf};
use std::sync::OnceLock;
use std::time::{Duration, Instant};

use tempfile::{TempDir, tempdir};

use super::action::Action;
use super::answers::Answers;
use super::recovery::Recovery;
use super::state::Studio;

/// The demo, keeping nothing.
pub fn demo() -> Studio {
    Studio::new(None, Recovery::default()).unwrap()
}

/// A file with this text, in a folder that goes when it is dropped.
pub fn file_of(name: &str, text: &str) -> (TempDir, PathBuf) {
    let folder = tempdir().unwrap();
    let file = folder.path().join(name);
    std::fs::write(&file, text).unwrap();
    (folder, file)
}

/// Unsaved work of a window that is killed.
pub fn killed(path: Option<&Path>, recovery: &Recovery, work: impl FnOnce(&mut Studio)) {
    let mut it = Studio::new(path, recovery.clone()).unwrap();
    work(&mut it);
    it.tick(0.0);
    // The tests go on, its work must not.
    it.work.cancel(|_| true);
    std::mem::forget(it);
}

/// Puts a value over a field of the scenario.
pub fn set(it: &mut Studio, path: &str, value: &str) {
    it.apply(Action::Set(path.to_owned(), value.to_owned()));
}

/// Lets the window's pictures pass until something is there.
pub fn pass_until(it: &mut Studio, is_there: impl Fn(&Studio) -> bool) {
    let started = Instant::now();
    loop {
        it.tick(0.0);
        if is_there(it) {
            return;
        }
        assert!(started.elapsed() < Duration::from_secs(300), "the work does not come to an end");
        std::thread::sleep(Duration::from_millis(5));
    }
}

/// Lets them pass until nothing is computed any more.
pub fn settle(it: &mut Studio) {
    pass_until(it, Studio::is_settled);
}

/// The demo, settled; what is computed for it is computed for the first fact that asks.
pub fn settled_demo() -> Studio {
    static COMPUTED: OnceLock<Answers> = OnceLock::new();
    let answers = COMPUTED.get_or_init(|| settled(demo()));
    Studio { answers: answers.clone(), ..demo() }
}

/// The same with the bat to order.
pub fn searched_demo() -> Studio {
    static COMPUTED: OnceLock<Answers> = OnceLock::new();
    let answers = COMPUTED.get_or_init(|| {
        let mut it = settled_demo();
        it.apply(Action::Fit);
        settled(it)
    });
    Studio { answers: answers.clone(), ..demo() }
}

fn settled(mut it: Studio) -> Answers {
    settle(&mut it);
    it.answers
}

/// The demo where nothing but the pull is swung, for facts that are the same of any stroke.
pub fn pull_demo() -> Studio {
    let mut it = demo();
    set(&mut it, "innings.mix", "");
    set(&mut it, "strokes", "pull");
    it
}

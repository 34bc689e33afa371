//! The window's state and panels without a window.
#![allow(clippy::unwrap_used, reason = "tests")]

mod answers;
mod apart;
mod bats;
mod display;
mod files;
mod own_file;
mod path;
mod paths;
mod picture;
mod playback;
mod rest;
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

use std::time::{Duration, Instant};

use super::recovery::Recovery;
use super::state::Studio;

/// The demo, keeping nothing.
pub fn demo() -> Studio {
    Studio::new(None, Recovery::default()).unwrap()
}

/// Lets the window's pictures pass until nothing is computed any more.
pub fn settle(it: &mut Studio) {
    let started = Instant::now();
    loop {
        it.tick(0.0);
        if it.is_settled() {
            return;
        }
        assert!(started.elapsed() < Duration::from_secs(300), "the work does not come to an end");
        std::thread::sleep(Duration::from_millis(10));
    }
}

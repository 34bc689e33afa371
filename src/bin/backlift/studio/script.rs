//! `--script FILE`: actions replayed one after the other, with pictures taken between them.

use std::collections::VecDeque;
use std::path::Path;

use backlift::files::fault::{Fault, Source};

use super::action::Action;
use super::state::Studio;

/// A larger file is no script.
const LARGEST_BYTES: u64 = 1 << 20;

#[derive(Clone, Debug, Default, PartialEq)]
pub struct Script {
    rest: VecDeque<Action>,
}

/// What the window has to do before the script goes on.
#[derive(Clone, Debug, PartialEq)]
pub enum Next {
    /// Show another picture and ask again.
    Wait,
    /// Take a picture under this name, then ask again.
    Shot(String),
    /// Show so many pictures, tell how long they took, then ask again.
    Measure(u32),
    Done,
}

impl Script {
    /// Reads a list of actions, as RON.
    pub fn read(path: &Path) -> Result<Self, Fault> {
        let name = path.display().to_string();
        let cannot = |it: &dyn std::fmt::Display| {
            Fault::new(format!("{name} cannot be read: {it}"))
                .help("name a text file with a list of actions")
        };
        let about = std::fs::metadata(path).map_err(|it| cannot(&it))?;
        if !about.is_file() || about.len() > LARGEST_BYTES {
            return Err(cannot(&"it is no script"));
        }
        let text = std::fs::read_to_string(path).map_err(|it| cannot(&it))?;
        Self::of(&name, &text)
    }

    pub fn of(name: &str, text: &str) -> Result<Self, Fault> {
        let actions: Vec<Action> = ron::from_str(text).map_err(|error| {
            let start = error.span.start;
            let line = text.split_inclusive('\n').take(start.line.saturating_sub(1));
            let at: usize = line.map(str::len).sum::<usize>() + start.col.saturating_sub(1);
            let at = text.floor_char_boundary(at.min(text.len()));
            Fault::new(format!("this is not an action: {}", error.code))
                .at(&Source::new(name, text), at..at)
                .help("write a list like [View(Map), Wait, Shot(\"map.png\")]")
        })?;
        Ok(Self { rest: actions.into() })
    }

    /// Does what comes next, up to where the window has to do something.
    pub fn step(&mut self, it: &mut Studio) -> Next {
        while let Some(action) = self.rest.pop_front() {
            match action {
                Action::Wait => {
                    // What is missing is asked for before it is waited for.
                    it.tick(0.0);
                    if it.is_settled() {
                        continue;
                    }
                    self.rest.push_front(Action::Wait);
                    return Next::Wait;
                }
                Action::Shot(name) => return Next::Shot(name),
                Action::Measure(pictures) => return Next::Measure(pictures),
                // What an action sets going is under way before the script can wait for it.
                other => {
                    it.apply(other);
                    it.tick(0.0);
                }
            }
        }
        Next::Done
    }
}

//! The window itself.

use backlift::files::fault::Fault;

use super::script::{Next, Script};
use super::state::Studio;
use crate::outcome::{Outcome, Stop};

/// Replays a script on the state alone; a picture needs the window.
pub fn run(mut studio: Studio, script: Option<Script>) -> Result<Outcome, Stop> {
    let no_window = || {
        Fault::new("the window cannot be shown")
            .help("every figure is on the command line: `backlift --help`")
    };
    let mut script = script.ok_or_else(no_window)?;
    loop {
        studio.tick(0.0);
        match script.step(&mut studio) {
            Next::Wait => std::thread::sleep(std::time::Duration::from_millis(5)),
            Next::Shot(_) => return Err(no_window().into()),
            Next::Done => return Ok(Outcome::Done),
        }
    }
}

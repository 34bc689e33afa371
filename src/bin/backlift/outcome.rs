//! How a command ends: its exit code, and what is said on standard error.

use std::io::{IsTerminal, Write};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::process::ExitCode;

use backlift::files::fault::{Fault, Faults};

/// A command that came to its end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// It did what was asked.
    Done,
}

/// A command that could not.
#[derive(Debug)]
pub enum Stop {
    /// What was given is wrong, or cannot be read or written.
    WrongInput(Faults),
}

impl From<Fault> for Stop {
    fn from(fault: Fault) -> Self {
        Self::WrongInput(fault.into())
    }
}

impl From<Faults> for Stop {
    fn from(faults: Faults) -> Self {
        Self::WrongInput(faults)
    }
}

/// Exit code for wrong input.
const WRONG_INPUT: u8 = 2;
/// Exit code for a mistake of the program itself.
const OUR_MISTAKE: u8 = 255;

/// Runs a command, says what has to be said, and gives the exit code.
pub fn finish(command: impl FnOnce() -> Result<Outcome, Stop>) -> ExitCode {
    match catch_unwind(AssertUnwindSafe(command)) {
        Ok(Ok(Outcome::Done)) => ExitCode::SUCCESS,
        Ok(Err(Stop::WrongInput(faults))) => {
            say(&faults.drawn(width(), colour()));
            ExitCode::from(WRONG_INPUT)
        }
        Err(_) => {
            say("This is a mistake in Backlift, not in what you gave it. Nothing was written.\n");
            ExitCode::from(OUR_MISTAKE)
        }
    }
}

/// Writes to standard error; if even that is closed there is nobody left to tell.
fn say(text: &str) {
    let _ = std::io::stderr().write_all(text.as_bytes());
}

fn colour() -> bool {
    std::io::stderr().is_terminal() && std::env::var_os("NO_COLOR").is_none()
}

/// Narrow enough to read in a terminal; in a pipe wide enough that no sentence is broken.
fn width() -> usize {
    if std::io::stderr().is_terminal() { 80 } else { 400 }
}

//! How a command ends: its exit code, and what is said on standard error.

use std::io::{IsTerminal, Write};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::process::ExitCode;

use backlift::files::fault::Fault;
pub use backlift::questions::Stop;

/// A command that came to its end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// It did what was asked.
    Done,
    /// It did, and the verdict is no: a bat sent back, mechanics that disagree.
    NotAccepted,
}

/// Exit code of a verdict of no, and of a question without an answer.
const NO: u8 = 1;
/// Exit code for wrong input.
const WRONG_INPUT: u8 = 2;
/// Exit code after Ctrl-C, as shells have it: 128 and the number of the signal.
const CANCELLED: u8 = 130;
/// Exit code for a mistake of the program itself.
const OUR_MISTAKE: u8 = 255;

/// Runs a command, says what has to be said, and gives the exit code.
pub fn finish(command: impl FnOnce() -> Result<Outcome, Stop>) -> ExitCode {
    let (code, words) = match catch_unwind(AssertUnwindSafe(command)) {
        Ok(Ok(Outcome::Done)) => (0, String::new()),
        Ok(Ok(Outcome::NotAccepted)) => (NO, String::new()),
        Ok(Err(Stop::WrongInput(faults))) => (WRONG_INPUT, faults.drawn(width(), colour())),
        Ok(Err(Stop::NoAnswer(fault))) => (NO, fault.drawn(width(), colour())),
        Ok(Err(Stop::Cancelled)) => (CANCELLED, cancelled_words(false).to_owned()),
        Ok(Err(Stop::OurMistake(what))) => (OUR_MISTAKE, format!("{what}\n{OUR_MISTAKE_WORDS}")),
        Err(_) => (OUR_MISTAKE, OUR_MISTAKE_WORDS.to_owned()),
    };
    say(&words);
    ExitCode::from(code)
}

/// Ends the program after Ctrl-C.
pub fn cancel(saved: bool) -> ! {
    say(cancelled_words(saved));
    std::process::exit(CANCELLED.into())
}

fn cancelled_words(saved: bool) -> &'static str {
    match saved {
        true => "Cancelled; what was written stays\n",
        false => "Cancelled; nothing was written\n",
    }
}

const OUR_MISTAKE_WORDS: &str = "This is a mistake in Backlift, not in what you gave it\n";

/// Takes a result, and shows the warnings that came beside it.
pub fn warned<T>((result, warnings): (T, Vec<Fault>)) -> T {
    for warning in warnings {
        say(&warning.drawn(width(), colour()));
    }
    result
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

//! Progress on standard error, and Ctrl-C.

use std::io::{IsTerminal, Write};
use std::ops::ControlFlow;
use std::sync::OnceLock;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::Duration;

use backlift::files::save::hold_saves;
use backlift::questions::Progress as Heard;
use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};

use crate::outcome::cancel;

/// Work shorter than this shows nothing.
const QUIET: Duration = Duration::from_millis(250);
/// Where there is no terminal, a plain line is written when work turns out to be long, …
const FIRST_LINE: Duration = Duration::from_secs(1);
/// … and then this often.
const LINE_EVERY_S: u64 = 10;

/// The bar in the terminal, for Ctrl-C to clear away.
static BAR: OnceLock<ProgressBar> = OnceLock::new();

/// Hears Ctrl-C from now on. It ends the program at once, wherever the work is; only a save goes on to its end.
pub fn hear_ctrl_c() {
    // If none can be heard, Ctrl-C ends the process as it always does, and the next run mends what it left.
    let _ = ctrlc::set_handler(|| {
        let saved = hold_saves();
        if let Some(bar) = BAR.get() {
            bar.finish_and_clear();
        }
        cancel(*saved)
    });
}

/// Shows how far long work is: a bar in a terminal, else a plain line now and then.
pub struct Progress {
    bar: ProgressBar,
    shown: AtomicBool,
    /// Lines written where there is no terminal.
    lines: AtomicU64,
}

impl Progress {
    pub fn start() -> Self {
        let bar = ProgressBar::with_draw_target(Some(1000), ProgressDrawTarget::hidden());
        if let Ok(style) = ProgressStyle::with_template("{bar:24} {percent:>3} %  {msg}") {
            bar.set_style(style.progress_chars("━╸─"));
        }
        // A second one clears itself away.
        let _ = BAR.set(bar.clone());
        Self { bar, shown: AtomicBool::new(false), lines: AtomicU64::new(0) }
    }

    fn line(&self, doing: &str, share: f64) {
        let elapsed = self.bar.elapsed();
        if elapsed < FIRST_LINE {
            return;
        }
        let due = 1 + elapsed.as_secs() / LINE_EVERY_S;
        if self.lines.fetch_max(due, Ordering::Relaxed) < due {
            // A reader that has gone away wants no progress.
            let _ = writeln!(std::io::stderr(), "{:3.0} %  {doing}", 100.0 * share.clamp(0.0, 1.0));
        }
    }
}

impl Heard for Progress {
    fn report(&self, doing: &str, share: f64) -> ControlFlow<()> {
        if self.bar.elapsed() > QUIET && !self.shown.swap(true, Ordering::Relaxed) {
            self.bar.set_draw_target(ProgressDrawTarget::stderr());
        }
        if !std::io::stderr().is_terminal() {
            self.line(doing, share);
        }
        self.bar.set_message(doing.to_owned());
        self.bar.set_position((1000.0 * share.clamp(0.0, 1.0)) as u64);
        ControlFlow::Continue(())
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        self.bar.finish_and_clear();
    }
}

//! Progress on standard error, and Ctrl-C.

use std::io::{IsTerminal, Write};
use std::ops::ControlFlow;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::{Duration, Instant};

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};

/// Work shorter than this shows nothing.
const QUIET: Duration = Duration::from_millis(250);
/// Where there is no terminal, a plain line is written this often.
const LINE_EVERY_S: u64 = 2;

/// Shows how far long work is, and hears Ctrl-C: a bar in a terminal, else a plain line now and then.
pub struct Progress {
    bar: ProgressBar,
    started: Instant,
    shown: AtomicBool,
    cancelled: Arc<AtomicBool>,
    /// Lines written where there is no terminal.
    lines: AtomicU64,
}

impl Progress {
    /// Starts to listen; once a process.
    pub fn start() -> Self {
        let cancelled = Arc::new(AtomicBool::new(false));
        let heard = Arc::clone(&cancelled);
        // If there is a handler already, or none can be set, Ctrl-C ends the process as it always
        // does; what is staged was never in its final place.
        let _ = ctrlc::set_handler(move || heard.store(true, Ordering::Relaxed));
        let bar = ProgressBar::with_draw_target(Some(1000), ProgressDrawTarget::hidden());
        if let Ok(style) = ProgressStyle::with_template("{bar:24} {percent:>3} %  {msg}") {
            bar.set_style(style.progress_chars("━╸─"));
        }
        Self {
            bar,
            started: Instant::now(),
            shown: AtomicBool::new(false),
            cancelled,
            lines: AtomicU64::new(0),
        }
    }

    /// Says what is being done and which share of it is done; `Break` asks the work to stop.
    pub fn report(&self, doing: &str, share: f64) -> ControlFlow<()> {
        if self.cancelled.load(Ordering::Relaxed) {
            self.bar.finish_and_clear();
            return ControlFlow::Break(());
        }
        if self.started.elapsed() > QUIET && !self.shown.swap(true, Ordering::Relaxed) {
            self.bar.set_draw_target(ProgressDrawTarget::stderr());
        }
        if !std::io::stderr().is_terminal() {
            self.line(doing, share);
        }
        self.bar.set_message(doing.to_owned());
        self.bar.set_position((1000.0 * share.clamp(0.0, 1.0)) as u64);
        ControlFlow::Continue(())
    }

    fn line(&self, doing: &str, share: f64) {
        let due = self.started.elapsed().as_secs() / LINE_EVERY_S;
        if self.lines.fetch_max(due, Ordering::Relaxed) < due {
            // A reader that has gone away wants no progress.
            let _ = writeln!(std::io::stderr(), "{:3.0} %  {doing}", 100.0 * share.clamp(0.0, 1.0));
        }
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        self.bar.finish_and_clear();
    }
}

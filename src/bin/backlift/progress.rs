//! Progress on standard error, and Ctrl-C.

use std::io::{IsTerminal, Write};
use std::ops::ControlFlow;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::{Duration, Instant};

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};

use crate::outcome::Stop;

/// Work shorter than this shows nothing.
const QUIET: Duration = Duration::from_millis(250);
/// Where there is no terminal, a plain line is written when work turns out to be long, …
const FIRST_LINE: Duration = Duration::from_secs(1);
/// … and then this often.
const LINE_EVERY_S: u64 = 10;

/// Hears what is being done, and which share of it is done.
#[cfg(feature = "studio")]
type Listener = Box<dyn Fn(&str, f64) + Send + Sync>;

/// Shows how far long work is, and hears Ctrl-C: a bar in a terminal, else a plain line now and then.
pub struct Progress {
    bar: ProgressBar,
    started: Instant,
    shown: AtomicBool,
    cancelled: Arc<AtomicBool>,
    /// Lines written where there is no terminal.
    lines: AtomicU64,
    /// Told in place of the terminal.
    #[cfg(feature = "studio")]
    listener: Option<Listener>,
}

impl Progress {
    /// Starts to listen; once a process.
    pub fn start() -> Self {
        let cancelled = Arc::new(AtomicBool::new(false));
        let heard = Arc::clone(&cancelled);
        // If there is a handler already, or none can be set, Ctrl-C ends the process as it always
        // does; what is staged was never in its final place.
        let _ = ctrlc::set_handler(move || heard.store(true, Ordering::Relaxed));
        Self::heard_by(cancelled)
    }

    fn heard_by(cancelled: Arc<AtomicBool>) -> Self {
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
            #[cfg(feature = "studio")]
            listener: None,
        }
    }

    /// Work in the background: nothing on standard error; `cancelled` stops it.
    #[cfg(feature = "studio")]
    pub fn told(cancelled: Arc<AtomicBool>, listener: Listener) -> Self {
        let mut it = Self::heard_by(cancelled);
        it.listener = Some(listener);
        it
    }

    /// Says what is being done and which share of it is done; `Break` asks the work to stop.
    pub fn report(&self, doing: &str, share: f64) -> ControlFlow<()> {
        if self.cancelled.load(Ordering::Relaxed) {
            self.bar.finish_and_clear();
            return ControlFlow::Break(());
        }
        #[cfg(feature = "studio")]
        if let Some(tell) = &self.listener {
            tell(doing, share);
            return ControlFlow::Continue(());
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

    /// The same for work in steps of ours.
    ///
    /// # Errors
    /// If the work is asked to stop.
    pub fn step(&self, doing: &str, share: f64) -> Result<(), Stop> {
        match self.report(doing, share) {
            ControlFlow::Continue(()) => Ok(()),
            ControlFlow::Break(()) => Err(Stop::Cancelled),
        }
    }

    fn line(&self, doing: &str, share: f64) {
        let elapsed = self.started.elapsed();
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

impl Drop for Progress {
    fn drop(&mut self) {
        self.bar.finish_and_clear();
    }
}

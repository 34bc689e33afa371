//! Pictures of the net taken one after the other, for a clip or for a page that can be sent.

use std::path::{Path, PathBuf};

use backlift::files::fault::Fault;
use backlift::files::save::over;

use super::playback::Playback;
use super::state::Studio;
use super::still::Still;
use super::work::{Answer, Question};
use super::{clip, page};
use crate::outcome::Stop;
use crate::progress::Progress;
use backlift::questions::Progress as _;

/// What becomes of the pictures.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Into {
    /// An animated GIF of the stroke.
    Clip(PathBuf),
    /// One page as PNG: what the two bats do, in words, figures and pictures.
    Page(PathBuf),
}

/// Pictures under way.
pub struct Filming {
    into: Into,
    instants_s: Vec<f64>,
    stills: Vec<Still>,
    before: Playback,
}

impl Filming {
    /// Share of it that is done.
    pub fn share(&self) -> f32 {
        self.stills.len() as f32 / self.instants_s.len().max(1) as f32
    }
}

impl Studio {
    /// Starts to take pictures.
    pub(super) fn film(&mut self, into: Into) {
        if self.filming.is_some() {
            let fault = Fault::new("pictures are being taken already").help("wait, or stop them");
            return self.say_fault(&fault);
        }
        if (0..self.slots()).any(|slot| self.stroke_time_s(slot).is_none()) {
            let fault = Fault::new("there is no swing to take pictures of yet")
                .help("wait until the figures are there");
            return self.say_fault(&fault);
        }
        let length_s = self.length_s();
        let instants_s = match into {
            Into::Clip(_) => clip::instants_s(length_s),
            Into::Page(_) => page::instants_s(length_s),
        };
        let before = self.playback.clone();
        self.playback.playing = false;
        self.filming = Some(Filming { into, instants_s, stills: Vec::new(), before });
        self.show_next_instant();
    }

    /// A picture of the instant on the screen.
    pub fn took(&mut self, still: Still) {
        let Some(filming) = &mut self.filming else { return };
        filming.stills.push(still);
        if filming.stills.len() < filming.instants_s.len() {
            return self.show_next_instant();
        }
        let Some(Filming { into, stills, before, .. }) = self.filming.take() else { return };
        self.playback = before;
        let key = self.derived.fit_key.rotate_left(17);
        self.results.failed.remove(&key);
        let page = page::Page::of(self);
        let standing = self.standing();
        let task = move |progress: &Progress, _: &dyn Fn(Answer)| {
            let (path, bytes) = match into {
                Into::Clip(path) => {
                    (path, clip::gif(&stills, &standing, &|share| goes_on(progress, share))?)
                }
                Into::Page(path) => (path, page.png(&stills)?),
            };
            over(&path, &bytes)?;
            Ok(Answer::Written(1, folder_of(&path)))
        };
        self.work.start(Question::Pictures, key, Box::new(task));
    }

    /// Stops; nothing is written.
    pub(super) fn stop_filming(&mut self) {
        if let Some(filming) = self.filming.take() {
            self.playback = filming.before;
        }
        self.work.cancel(Question::Pictures);
    }

    fn show_next_instant(&mut self) {
        let Some(filming) = &self.filming else { return };
        if let Some(instant_s) = filming.instants_s.get(filming.stills.len()) {
            self.playback.time_s = *instant_s;
        }
    }
}

/// Tells how far the work is; an error where it is to stop.
fn goes_on(progress: &Progress, share: f64) -> Result<(), Stop> {
    match progress.report("writing the pictures", share) {
        std::ops::ControlFlow::Continue(()) => Ok(()),
        std::ops::ControlFlow::Break(()) => Err(Stop::Cancelled),
    }
}

fn folder_of(path: &Path) -> PathBuf {
    let folder = path.parent().filter(|it| !it.as_os_str().is_empty());
    folder.map_or_else(|| PathBuf::from("."), Path::to_path_buf)
}

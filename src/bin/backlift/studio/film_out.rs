//! Pictures of the net taken one after the other, for a clip or for a page of the comparison that can be sent.

use backlift::card::cautions::{refit_stature_m, standing};
use backlift::drawing::pair_page::{Line, Page};
use backlift::drawing::still::Still;
use backlift::files::save::{folder_of, over};
use backlift::innings::score::runs_words;

use super::answers::key;
use super::clip;
use super::figures::{Row, Told};
use super::state::{Filming, Into, Studio};
use super::work::{Question, Written};
use crate::outcome::Stop;

impl Studio {
    pub(super) fn film(&mut self, into: Into) {
        if self.filming.is_some() {
            return self.refuse("pictures are being taken already", "wait, or stop them");
        }
        if (0..self.slots()).any(|slot| self.stroke_time_s(slot).is_none()) {
            let why = "there is no swing to take pictures of yet";
            return self.refuse(why, "wait until the figures are there");
        }
        let length_s = self.length_s();
        let instants_s = match into {
            Into::Clip(_) => clip::instants_s(length_s),
            // On the way, and at the ball.
            Into::Page(_) => vec![0.75 * length_s, length_s],
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
        let page = self.page();
        let standing = self.standing();
        self.work.start(Question::Pictures, key("pictures"), move |progress, _| {
            let (path, bytes) = match into {
                Into::Clip(path) => (
                    path,
                    clip::gif(&stills, &standing, &|share| {
                        progress.step("writing the pictures", share)
                    })?,
                ),
                Into::Page(path) => (path, page.png(&stills).map_err(Stop::our_mistake)?),
            };
            over(&path, &bytes)?;
            Ok(Written { files: 1, folder: folder_of(&path).to_owned() })
        });
    }

    /// Stops; nothing is written.
    pub(super) fn stop_filming(&mut self) {
        if let Some(filming) = self.filming.take() {
            self.playback = filming.before;
        }
        self.work.cancel(|it| it == Question::Pictures);
    }

    fn show_next_instant(&mut self) {
        let Some(filming) = &self.filming else { return };
        if let Some(instant_s) = filming.instants_s.get(filming.stills.len()) {
            self.playback.time_s = *instant_s;
        }
    }

    fn page(&self) -> Page {
        let loaded = self.derived.loaded.as_ref();
        let player = loaded.map(|it| &it.player);
        let runs = self.playback.runs;
        let when = if runs == 0 {
            "fresh".to_owned()
        } else {
            format!("after {}", runs_words(f64::from(runs)))
        };
        let shown = self.playback.bats.iter().take(self.slots());
        Page {
            sentence: self.pair_sentence(),
            player: player.map_or(String::new(), |it| {
                format!("For a player of {:.0} years and {:.2} m", it.age_y, it.stature_m)
            }),
            heading: format!("The {}, {when}", self.playback.stroke),
            bats: shown.map(|bat| (*bat, self.label(*bat))).collect(),
            lines: self.swing_rows().into_iter().map(line).collect(),
            cautions: player.map_or(Vec::new(), |it| {
                standing(it.age_y, refit_stature_m(it.age_y, it.stature_m))
            }),
            is_invented: loaded.is_some_and(|it| it.scenario.invented),
        }
    }
}

fn line(it: Row) -> Line {
    let told = |it: Told| [it.value, it.doubt];
    Line {
        name: it.name.to_owned(),
        values: it.values.into_iter().map(|it| it.map(told)).collect(),
        difference: it.difference.map(|it| it.0),
    }
}

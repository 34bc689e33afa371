//! How long pictures take, and less detail where they take too long.

use std::time::{Duration, Instant};

use bevy::prelude::*;
use bevy::winit::{UpdateMode, WinitSettings};

use super::screen::Kind;
use super::stage::Stage;
use crate::studio::action::Action;
use crate::studio::state::Studio;

/// Slower than this, s a picture over so many pictures, and detail is reduced.
const SLOW_S: f32 = 1.0 / 25.0;
const WATCHED: usize = 30;
/// Pictures at first that say nothing: shaders are built.
const FIRST: usize = 20;

/// Where nothing moves a picture is shown at least this often, to take in what threads have found.
const RESTING: Duration = Duration::from_millis(100);

/// Lengths of pictures, s.
#[derive(Resource, Default)]
pub struct Pace {
    last: Option<Instant>,
    taken_s: Vec<f32>,
    skipped: usize,
    is_reduced: bool,
    measures: bool,
}

impl Pace {
    /// Measures from here.
    pub fn start(&mut self) {
        (self.last, self.measures) = (None, true);
        self.taken_s.clear();
    }

    /// Half of the pictures took less than the first, 99 of 100 less than the second.
    pub fn told(&mut self) -> String {
        self.measures = false;
        let mut all = std::mem::take(&mut self.taken_s);
        all.sort_by(f32::total_cmp);
        let at = |share: f64| {
            let n = ((all.len() as f64 * share).ceil() as usize).clamp(1, all.len().max(1)) - 1;
            1e3 * all.get(n).copied().unwrap_or(f32::NAN)
        };
        format!(
            "{} pictures: median {:.2} ms, 99 of 100 within {:.2} ms, longest {:.2} ms",
            all.len(),
            at(0.5),
            at(0.99),
            at(1.0)
        )
    }
}

/// Pictures follow each other while something moves; else only when something is done, and now and then.
pub fn rest(studio: NonSend<Studio>, stage: NonSend<Stage>, mut settings: ResMut<WinitSettings>) {
    let mode = match moves(&studio, &stage) || !studio.is_settled() {
        true => UpdateMode::Continuous,
        false => UpdateMode::reactive(RESTING),
    };
    settings.focused_mode = mode;
    settings.unfocused_mode = mode;
}

fn moves(studio: &Studio, stage: &Stage) -> bool {
    studio.playback.playing && stage.room.is_positive()
}

/// Keeps the time of each picture.
pub fn watch(
    mut pace: ResMut<Pace>,
    kind: Res<Kind>,
    mut studio: NonSendMut<Studio>,
    stage: NonSend<Stage>,
) {
    let now = Instant::now();
    if kind.is_window() && !moves(&studio, &stage) {
        pace.last = None;
        return;
    }
    let before = pace.last.replace(now);
    let Some(before) = before else { return };
    let took_s = now.duration_since(before).as_secs_f32();
    if pace.measures {
        pace.taken_s.push(took_s);
        return;
    }
    if !kind.is_window() || pace.is_reduced || studio.look.reduced_detail {
        return;
    }
    pace.skipped += 1;
    if pace.skipped <= FIRST {
        return;
    }
    pace.taken_s.push(took_s);
    if pace.taken_s.len() >= WATCHED {
        let mean_s = pace.taken_s.iter().sum::<f32>() / pace.taken_s.len() as f32;
        pace.taken_s.clear();
        if mean_s > SLOW_S {
            pace.is_reduced = true;
            studio.apply(Action::ReducedDetail(true));
            studio.say(
                "This machine draws slowly: the net is shown with less detail. Change it under Look"
                    .to_owned(),
            );
        }
    }
}

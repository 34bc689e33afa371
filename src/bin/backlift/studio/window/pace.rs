//! When pictures are drawn, how long they take, and less detail where they take too long.

use std::collections::VecDeque;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::{Duration, Instant};

use bevy::ecs::message::Messages;
use bevy::prelude::*;
use bevy::render::render_resource::PollType;
use bevy::render::renderer::{RenderAdapterInfo, RenderDevice, RenderQueue};
use bevy::render::{Render, RenderApp, RenderSystems};
use bevy::window::RequestRedraw;
use bevy::winit::{UpdateMode, WinitSettings};

use super::detail::{Building, Detail, is_software};
use super::screen::Kind;
use super::stage::Stage;
use crate::studio::action::Action;
use crate::studio::panels::row;
use crate::studio::state::Studio;

/// Slower than this, s a picture, and detail is reduced.
const SLOW_S: f32 = 1.0 / 24.0;
/// So many pictures after one another tell how fast a card is; fewer what a processor can do that draws itself.
const WATCHED: usize = 8;
const WATCHED_IN_SOFTWARE: usize = 3;
/// A window in which nothing happens looks round once in so long.
const ASLEEP: Duration = Duration::from_secs(3600);

/// Lengths of pictures, s.
#[derive(Resource, Default)]
pub struct Pace {
    last: Option<Instant>,
    taken_s: VecDeque<f32>,
    chooses: Chooses,
    measures: bool,
}

/// Who chooses how finely the net is drawn.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Chooses {
    /// Nobody said anything yet.
    #[default]
    Window,
    /// The window has said that it draws less.
    WindowSaid,
    /// The user would have it otherwise.
    User,
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
        let mut all: Vec<f32> = std::mem::take(&mut self.taken_s).into();
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

    /// Takes in how long a picture took; how long the last ones did, s, if nearly all of them took too long. A single
    /// one that did says nothing of the card.
    fn slow_s(&mut self, took_s: f32, watched: usize) -> Option<f32> {
        self.taken_s.push_back(took_s);
        if self.taken_s.len() < watched {
            return None;
        }
        let mut all: Vec<f32> = self.taken_s.iter().copied().collect();
        self.taken_s.pop_front();
        all.sort_by(f32::total_cmp);
        let fast = all.iter().filter(|it| **it <= SLOW_S).count();
        all.get(all.len() / 2).copied().filter(|_| 4 * fast < all.len())
    }
}

/// What is drawn after pictures that took so long, s: much less where that is many times too long.
fn less(now: Detail, took_s: f32) -> Detail {
    if took_s > 2.0 * SLOW_S { now.less().less() } else { now.less() }
}

/// Nothing is drawn unless something calls for it.
pub fn sleeping() -> WinitSettings {
    let mode = UpdateMode::reactive_low_power(ASLEEP);
    WinitSettings { focused_mode: mode, unfocused_mode: mode }
}

/// Pictures follow each other while something moves, or is not on the screen yet; else one is drawn when something is
/// done, or a thread calls. What the panels ask for calls by itself.
pub fn rest(
    studio: NonSend<Studio>,
    mut stage: NonSendMut<Stage>,
    building: Res<Building>,
    mut requests: ResMut<Messages<RequestRedraw>>,
) {
    // Asked for also where the panels want a picture much later.
    requests.clear();
    if building.goes_on() {
        stage.is_new();
    }
    if stage.settles() || moves(&studio, &stage) || studio.filming.is_some() {
        requests.write(RequestRedraw);
    }
}

fn moves(studio: &Studio, stage: &Stage) -> bool {
    studio.playback.playing && stage.room.is_positive() && row(studio.view).layout.shows_net()
}

/// Keeps the time of each picture.
pub fn watch(
    mut pace: ResMut<Pace>,
    mut possible: ResMut<Detail>,
    kind: Res<Kind>,
    adapter: Option<Res<RenderAdapterInfo>>,
    building: Res<Building>,
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
        pace.taken_s.push_back(took_s);
        return;
    }
    if *possible >= Detail::Half && !studio.look.reduced_detail {
        (pace.chooses, *possible) = (Chooses::User, Detail::Full);
    }
    let shown = Detail::of(&studio.look, *possible);
    let is_watched = kind.is_window() && pace.chooses != Chooses::User && shown < Detail::Third;
    // What is drawn while shaders are built says nothing.
    if !is_watched || building.goes_on() {
        pace.taken_s.clear();
        return;
    }
    let in_software = adapter.is_some_and(|it| is_software(&it));
    let watched = if in_software { WATCHED_IN_SOFTWARE } else { WATCHED };
    let Some(slow_s) = pace.slow_s(took_s, watched) else { return };
    *possible = less(shown, slow_s);
    pace.taken_s.clear();
    if *possible >= Detail::Half && !studio.look.reduced_detail {
        studio.apply(Action::ReducedDetail(true));
    }
    if pace.chooses == Chooses::Window && shown == Detail::Full {
        pace.chooses = Chooses::WindowSaid;
        studio.say("The net is shown with less detail: this machine draws slowly".to_owned());
    }
}

/// How often it is looked whether the card has drawn, where nothing else waits for it.
const LOOK_AGAIN: Duration = Duration::from_micros(100);

/// Pictures given to the card that it has not drawn yet.
#[derive(Resource, Clone, Default)]
struct Undrawn(Arc<AtomicUsize>);

/// A window waits for its screen. One that nobody sees waits for the card, which else would be given pictures faster
/// than it draws them: they would pile up, and the time of each would be that of asking for it.
pub fn wait_for_the_card(app: &mut App) {
    if let Some(render) = app.get_sub_app_mut(RenderApp) {
        render.init_resource::<Undrawn>();
        render.add_systems(Render, wait.in_set(RenderSystems::Cleanup));
    }
}

fn wait(device: Res<RenderDevice>, queue: Res<RenderQueue>, undrawn: Res<Undrawn>) {
    let count = Arc::clone(&undrawn.0);
    count.fetch_add(1, Ordering::Relaxed);
    queue.on_submitted_work_done(move || {
        count.fetch_sub(1, Ordering::Relaxed);
    });
    // The next one is prepared while the card draws this one. A card that is lost draws nothing more.
    while undrawn.0.load(Ordering::Relaxed) > 1 && device.poll(PollType::Poll).is_ok() {
        std::thread::sleep(LOOK_AGAIN);
    }
}

#[cfg(test)]
mod tests {
    use crate::studio::window::detail::Detail;
    use crate::studio::window::pace::{Pace, WATCHED, WATCHED_IN_SOFTWARE, less};

    /// How long it takes until less is drawn where pictures take so long one after the other, s.
    fn until_less_s(lengths_s: impl IntoIterator<Item = f32>, watched: usize) -> Option<f32> {
        let (mut pace, mut passed_s) = (Pace::default(), 0.0);
        lengths_s.into_iter().find_map(|it| {
            passed_s += it;
            pace.slow_s(it, watched).map(|_| passed_s)
        })
    }

    #[test]
    fn a_slow_machine_is_found_out_within_a_second_of_drawing() {
        for a_second in [8.0, 12.0, 16.0, 22.0] {
            let all = std::iter::repeat_n(1.0 / a_second, 50);
            assert!(until_less_s(all, WATCHED).is_some_and(|it| it <= 1.0), "{a_second}");
        }
        for a_second in [3.5, 8.0, 22.0] {
            let all = std::iter::repeat_n(1.0 / a_second, 50);
            assert!(until_less_s(all, WATCHED_IN_SOFTWARE).is_some_and(|it| it <= 1.0));
        }
    }

    #[test]
    fn a_fast_card_keeps_its_detail_through_a_stall() {
        let fast = || std::iter::repeat_n(1.0 / 60.0, 100);
        // A disk that wakes up, another program: some pictures that take long between fast ones.
        let stalled = fast().chain([1.2, 0.3, 0.1, 0.1]).chain(fast());
        assert_eq!(until_less_s(stalled, WATCHED), None);
        let now_and_then = (0..300).map(|n| if n % 3 == 0 { 0.2 } else { 0.01 });
        assert_eq!(until_less_s(now_and_then, WATCHED), None);
    }

    #[test]
    fn what_takes_many_times_too_long_is_drawn_with_much_less_at_once() {
        assert_eq!(less(Detail::Full, 0.27), Detail::Half);
        assert_eq!(less(Detail::Half, 0.05), Detail::Third);
        assert_eq!(less(Detail::Full, 0.05), Detail::Plain);
    }
}

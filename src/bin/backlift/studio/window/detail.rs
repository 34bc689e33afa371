//! How finely the net is drawn: what is left out where drawing takes too long, step by step.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

use bevy::prelude::*;
use bevy::render::render_resource::PipelineCache;
use bevy::render::renderer::RenderAdapterInfo;
use bevy::render::{Render, RenderApp, RenderSystems};

use super::alarm::Calls;
use crate::studio::look::Look;
use crate::studio::work::Wake;

/// What is waited for so long without a change does not come: the shader of something the window never shows.
const LONGEST: Duration = Duration::from_secs(3);

/// How finely the net is drawn, the finest first; as a resource the finest that was found to be fast enough.
#[derive(Resource, Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Detail {
    /// All there is.
    #[default]
    Full,
    /// No shadow, and edges as they come.
    Plain,
    /// With half of the screen's pixels across and down.
    Half,
    /// With a third of them.
    Third,
}

impl Detail {
    /// What is drawn where so much was found to be possible.
    pub fn of(look: &Look, possible: Self) -> Self {
        if look.reduced_detail { possible.max(Self::Half) } else { possible }
    }

    pub fn less(self) -> Self {
        match self {
            Self::Full => Self::Plain,
            Self::Plain => Self::Half,
            Self::Half | Self::Third => Self::Third,
        }
    }

    /// Share of the screen's own pixels, across and down.
    pub fn pixels(self) -> f32 {
        match self {
            Self::Full | Self::Plain => 1.0,
            Self::Half => 0.5,
            Self::Third => 1.0 / 3.0,
        }
    }

    /// Whether the sun throws shadows, and edges are smoothed.
    pub fn is_full(self) -> bool {
        self == Self::Full
    }
}

/// Whether shaders are being built: what hangs on them is not on the screen yet.
#[derive(Resource, Clone, Default)]
pub struct Building(Arc<AtomicBool>);

impl Building {
    pub fn goes_on(&self) -> bool {
        self.0.load(Ordering::Relaxed)
    }
}

/// Watches the building of shaders, and calls for a picture when they are there.
pub fn watch_shaders(app: &mut App, wake: Wake) {
    let building = Building::default();
    app.insert_resource(building.clone());
    if let Some(render) = app.get_sub_app_mut(RenderApp) {
        render.insert_resource(building).insert_resource(Calls(wake));
        render.add_systems(Render, shaders.in_set(RenderSystems::Cleanup));
    }
}

/// How many shaders are waited for, and since when it has been so many.
#[derive(Default)]
struct Waited(usize, Option<Instant>);

impl Waited {
    /// Whether any of them may still come.
    fn go_on(&mut self, count: usize, now: Instant) -> bool {
        if count != self.0 {
            *self = Self(count, Some(now));
        }
        count > 0 && self.1.is_some_and(|since| now.duration_since(since) < LONGEST)
    }
}

fn shaders(
    cache: Res<PipelineCache>,
    building: Res<Building>,
    calls: Res<Calls>,
    mut waited: Local<Waited>,
) {
    let goes_on = waited.go_on(cache.waiting_pipelines().count(), Instant::now());
    if building.0.swap(goes_on, Ordering::Relaxed) || goes_on {
        calls.0.now();
    }
}

/// Whether the processor draws, for want of a card.
pub fn is_software(adapter: &RenderAdapterInfo) -> bool {
    // The name of the type is the driver library's, which the window does not use by itself.
    format!("{:?}", adapter.device_type) == "Cpu"
}

#[cfg(test)]
mod tests {
    use std::time::Instant;

    use crate::studio::window::detail::{LONGEST, Waited};

    #[test]
    fn what_never_comes_is_not_waited_for_for_ever() {
        let (mut waited, start) = (Waited::default(), Instant::now());
        assert!(!waited.go_on(0, start));
        assert!(waited.go_on(3, start));
        assert!(waited.go_on(1, start + LONGEST / 2));
        assert!(waited.go_on(1, start + LONGEST));
        assert!(!waited.go_on(1, start + 2 * LONGEST));
        // One more, and it is waited for again.
        assert!(waited.go_on(2, start + 3 * LONGEST));
    }
}

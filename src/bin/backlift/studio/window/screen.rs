//! Where pictures go: a window, or an image that nobody sees; the panels on it, and the net between them.

use std::sync::{Arc, Mutex};

use bevy::camera::{ClearColorConfig, RenderTarget};
use bevy::prelude::*;
use bevy::render::render_resource::TextureFormat;
use bevy::render::view::screenshot::{Screenshot, ScreenshotCaptured};
use bevy_egui::{EguiContexts, EguiInput, EguiTextureHandle, PrimaryEguiContext};
use egui::{Color32, Rect, UiBuilder, pos2};

use super::alarm::Calls;
use super::stage::Stage;
use crate::studio::layout;
use crate::studio::scene::{Shown, bench_overlay, overlay};
use crate::studio::state::Studio;
use crate::studio::style::{ink, theme};

/// Size of a screen that nobody sees, px: across and down.
pub fn size(text: &str) -> Result<[u32; 2], String> {
    let number = |it: &str| it.trim().parse().ok().filter(|it| (320..=7680).contains(it));
    let (width, height) = text.split_once(['x', '×']).ok_or("write it like 1366x768")?;
    match (number(width), number(height)) {
        (Some(width), Some(height)) => Ok([width, height]),
        _ => Err("write it like 1366x768, each side between 320 and 7680".to_owned()),
    }
}

/// What pictures are shown on.
#[derive(Resource)]
pub enum Kind {
    Window,
    /// An image of this size, px.
    Unseen([u32; 2], Handle<Image>),
}

/// A picture that was asked for; none until it is there.
pub type Picture = Arc<Mutex<Option<Image>>>;

impl Kind {
    /// A window where no size is given.
    pub fn of(size: Option<[u32; 2]>) -> Self {
        size.map_or(Self::Window, |it| Self::Unseen(it, Handle::default()))
    }

    pub fn is_window(&self) -> bool {
        matches!(self, Self::Window)
    }

    /// Asks for a picture of all of it.
    pub fn picture(&self, commands: &mut Commands) -> Picture {
        let screenshot = match self {
            Self::Window => Screenshot::primary_window(),
            Self::Unseen(_, image) => Screenshot::image(image.clone()),
        };
        let picture = Picture::default();
        let taken = Arc::clone(&picture);
        commands.spawn(screenshot).observe(move |captured: On<ScreenshotCaptured>| {
            if let Ok(mut it) = taken.lock() {
                *it = Some(captured.image.clone());
            }
        });
        picture
    }
}

/// The camera that the panels are drawn through.
pub fn set_up(mut commands: Commands, mut kind: ResMut<Kind>, mut images: ResMut<Assets<Image>>) {
    let clear_color = ClearColorConfig::Custom(Color::BLACK);
    let camera = Camera { order: 1, clear_color, ..default() };
    let mut it = commands.spawn((Camera2d, camera, Msaa::Off, PrimaryEguiContext));
    if let Kind::Unseen([width, height], image) = kind.as_mut() {
        let format = TextureFormat::Rgba8UnormSrgb;
        *image = images.add(Image::new_target_texture(*width, *height, format, None));
        it.insert(RenderTarget::Image(image.clone().into()));
    }
}

/// The plugin of the panels tells them in every picture which of Shift, Ctrl and Alt are held, and whatever they are told
/// makes them ask for another picture: without end, were it not for this.
pub fn quiet_keys(mut inputs: Query<&mut EguiInput>, mut last: Local<Option<egui::Modifiers>>) {
    for mut input in &mut inputs {
        input.events.retain(|event| match event {
            egui::Event::ModifiersChanged(now) => last.replace(*now) != Some(*now),
            _ => true,
        });
    }
}

/// A window that is higher is zoomed until it is not, points.
const HIGHEST: f32 = 1200.0;
/// Not so far that it would be narrower than this, points.
const WIDE: f32 = 1366.0;
/// Steps of the zoom: letters stay sharp.
const STEP: f32 = 0.25;

/// How many of the system's points one of ours is across in a window of this size, so that one on a large screen is read
/// without being asked for it.
fn zoom(window: egui::Vec2) -> f32 {
    let asked = (window.y / HIGHEST / STEP).ceil();
    let most = (window.x / WIDE / STEP).floor();
    (asked.min(most) * STEP).max(1.0)
}

/// Panels, the net between them, and what is written over it.
pub fn show(
    mut contexts: EguiContexts,
    mut studio: NonSendMut<Studio>,
    mut stage: NonSendMut<Stage>,
    calls: Res<Calls>,
    mut is_set_up: Local<bool>,
) -> Result {
    let ctx = contexts.ctx_mut()?.clone();
    if !std::mem::replace(&mut *is_set_up, true) {
        // The keys that would change it change the size of the text.
        ctx.options_mut(|it| it.zoom_with_keyboard = false);
        let wake = calls.0.clone();
        // Later too: the plugin of the panels calls at once or never.
        ctx.set_request_repaint_callback(move |it| wake.within(it.delay));
    }
    let native = ctx.viewport_rect().size() * ctx.zoom_factor();
    ctx.set_zoom_factor(zoom(native));
    let room = UiBuilder::new().layer_id(egui::LayerId::background()).max_rect(ctx.viewport_rect());
    let mut ui = egui::Ui::new(ctx.clone(), "window".into(), room);
    let rect = layout::show(&mut ui, &mut studio);
    stage.room = rect;
    stage.pixels_per_point = ctx.pixels_per_point();
    if !rect.is_positive() {
        return Ok(());
    }
    let painter = ui.painter();
    painter.rect_filled(rect, 0.0, ink(theme(&studio.look).ground));
    match (studio.shown(rect), &stage.picture) {
        (Some(shown), Some(picture)) => {
            let handle = EguiTextureHandle::Weak(picture.id());
            let texture = contexts.image_id(picture).unwrap_or_else(|| contexts.add_image(handle));
            let whole = Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
            painter.image(texture, rect, whole, Color32::WHITE);
            match &shown {
                Shown::Net(scene) => overlay::draw(painter, &studio, scene, rect),
                Shown::Bench(bench) => bench_overlay::draw(painter, &studio, bench, rect),
            }
        }
        _ => overlay::nothing_yet(painter, &studio, rect),
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use egui::vec2;

    use crate::studio::window::screen::zoom;

    #[test]
    fn a_large_window_is_zoomed_until_it_is_as_high_as_usual() {
        for size in [[1024.0, 600.0], [1366.0, 768.0], [1920.0, 1080.0], [1920.0, 1200.0]] {
            assert_eq!(zoom(size.into()), 1.0, "{size:?}");
        }
        assert_eq!(zoom(vec2(3840.0, 2160.0)), 2.0);
        for size in [[2560.0, 1440.0], [2560.0, 1600.0], [3840.0, 2160.0], [5120.0, 2880.0]] {
            let [_, height] = size.map(|it| it / zoom(size.into()));
            assert!((720.0..=1200.0).contains(&height), "{size:?}: {height}");
        }
        // On its side it stays as wide as the panels need.
        assert_eq!(zoom(vec2(1440.0, 2560.0)), 1.0);
    }
}

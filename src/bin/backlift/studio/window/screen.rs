//! Where pictures go: a window, or an image that nobody sees; the panels on it, and the net between them.

use bevy::camera::{ClearColorConfig, RenderTarget};
use bevy::prelude::*;
use bevy::render::render_resource::TextureFormat;
use bevy_egui::{EguiContexts, EguiInput, EguiTextureHandle, PrimaryEguiContext};
use egui::{Color32, Rect, UiBuilder, pos2};

use super::stage::Stage;
use super::zoom::zoom;
use crate::studio::layout;
use crate::studio::scene::{Shown, bench_overlay, overlay};
use crate::studio::state::Studio;
use crate::studio::style::{ink, theme};
use crate::studio::wake::Wake;

/// Size of a screen that nobody sees, px.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// Across.
    pub width: u32,
    /// Down.
    pub height: u32,
}

impl Default for Size {
    fn default() -> Self {
        Self { width: 1366, height: 768 }
    }
}

impl std::str::FromStr for Size {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let number = |it: &str| it.trim().parse().ok().filter(|it| (320..=7680).contains(it));
        let (width, height) = text.split_once(['x', '×']).ok_or("write it like 1366x768")?;
        match (number(width), number(height)) {
            (Some(width), Some(height)) => Ok(Self { width, height }),
            _ => Err("write it like 1366x768, each side between 320 and 7680".to_owned()),
        }
    }
}

/// What pictures are shown on.
#[derive(Resource, Clone, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A window.
    Window,
    /// An image of this size.
    Unseen(Size, Handle<Image>),
}

impl Kind {
    /// A window where no size is given.
    pub fn of(size: Option<Size>) -> Self {
        size.map_or(Self::Window, |it| Self::Unseen(it, Handle::default()))
    }

    /// Whether it is a window.
    pub fn is_window(&self) -> bool {
        matches!(self, Self::Window)
    }
}

/// The camera that the panels are drawn through.
pub fn set_up(mut commands: Commands, mut kind: ResMut<Kind>, mut images: ResMut<Assets<Image>>) {
    let clear_color = ClearColorConfig::Custom(Color::BLACK);
    let camera = Camera { order: 1, clear_color, ..default() };
    let mut it = commands.spawn((Camera2d, camera, Msaa::Off, PrimaryEguiContext));
    if let Kind::Unseen(size, image) = kind.as_mut() {
        let format = TextureFormat::Rgba8UnormSrgb;
        *image = images.add(Image::new_target_texture(size.width, size.height, format, None));
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

/// Calls the window when the panels want another picture.
pub struct Calls(pub Wake);

/// Panels, the net between them, and what is written over it.
pub fn show(
    mut contexts: EguiContexts,
    mut studio: NonSendMut<Studio>,
    mut stage: NonSendMut<Stage>,
    calls: NonSend<Calls>,
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
    match (studio.shown(rect), stage.picture()) {
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

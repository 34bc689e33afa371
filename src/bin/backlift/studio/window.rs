//! The window itself: bevy shows the panels, one frame after another.

use backlift::files::fault::Fault;
use bevy::camera::ClearColorConfig;
use bevy::prelude::*;
use bevy::window::PrimaryWindow;
use bevy_egui::{EguiContexts, EguiPlugin, EguiPrimaryContextPass};
use egui::{Align2, FontId, LayerId, UiBuilder};

use super::dialogs::Dialogs;
use super::panels;
use super::script::{Next, Script};
use super::state::Studio;
use super::style::{ink, theme};
use crate::outcome::{Outcome, Stop};

/// Opens the window; with a script, replays it on the state alone: pictures need a window.
pub fn run(studio: Studio, script: Option<Script>) -> Result<Outcome, Stop> {
    if let Some(script) = script {
        return replay(studio, script);
    }
    if no_display() {
        return Err(Fault::new("there is no display to show the window on")
            .help("every figure is on the command line too: `backlift --help`")
            .into());
    }
    let window = Window { title: "Backlift".to_owned(), ..Window::default() };
    App::new()
        .add_plugins(DefaultPlugins.set(WindowPlugin { primary_window: Some(window), ..default() }))
        .add_plugins(EguiPlugin::default())
        .insert_non_send(studio)
        .insert_non_send(Dialogs::default())
        .add_systems(Startup, |mut commands: Commands| {
            let clear_color = ClearColorConfig::Custom(Color::BLACK);
            commands.spawn((Camera2d, Camera { clear_color, ..default() }));
        })
        .add_systems(Update, tick)
        .add_systems(EguiPrimaryContextPass, show)
        .run();
    Ok(Outcome::Done)
}

/// Whether neither of the two kinds of display is told of. Only asked where there are just these two.
fn no_display() -> bool {
    cfg!(target_os = "linux")
        && ["DISPLAY", "WAYLAND_DISPLAY"].iter().all(|it| std::env::var_os(it).is_none())
}

fn tick(
    time: Res<Time>,
    mut studio: NonSendMut<Studio>,
    dialogs: NonSend<Dialogs>,
    mut exit: MessageWriter<AppExit>,
    window: Option<Single<&mut Window, With<PrimaryWindow>>>,
) {
    studio.tick(time.delta_secs_f64());
    dialogs.serve(&mut studio);
    if studio.closed || window.is_none() {
        exit.write(AppExit::Success);
    }
}

fn show(mut contexts: EguiContexts, mut studio: NonSendMut<Studio>) -> Result {
    let ctx = contexts.ctx_mut()?.clone();
    let room = UiBuilder::new().layer_id(LayerId::background()).max_rect(ctx.viewport_rect());
    let mut ui = egui::Ui::new(ctx, "window".into(), room);
    let scene = panels::show(&mut ui, &mut studio);
    if scene.is_positive() {
        let theme = theme(&studio.look);
        ui.painter().rect_filled(scene, 0.0, ink(theme.ground));
        ui.painter().text(
            scene.center(),
            Align2::CENTER_CENTER,
            "The swing is not drawn yet: its figures are beside, its arc with `backlift swing --out`",
            FontId::proportional(15.0 * studio.look.text_scale),
            ink(theme.quiet),
        );
    }
    Ok(())
}

/// Replays a script on the state alone.
fn replay(mut studio: Studio, mut script: Script) -> Result<Outcome, Stop> {
    loop {
        studio.tick(0.0);
        match script.step(&mut studio) {
            Next::Wait => std::thread::sleep(std::time::Duration::from_millis(5)),
            Next::Shot(_) => {
                return Err(Fault::new("a script cannot take pictures yet")
                    .help("leave out its `Shot` lines")
                    .into());
            }
            Next::Done => return Ok(Outcome::Done),
        }
    }
}

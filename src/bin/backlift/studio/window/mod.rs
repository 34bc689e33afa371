//! The window itself: bevy shows the panels and the net, one picture after another.

mod alarm;
mod build;
mod detail;
mod film;
mod pace;
mod screen;
mod shots;
mod stage;

use std::panic::{AssertUnwindSafe, catch_unwind, set_hook, take_hook};
use std::sync::{Arc, Mutex};
use std::time::Duration;

use backlift::files::fault::Fault;
use bevy::app::ScheduleRunnerPlugin;
use bevy::ecs::schedule::{Schedules, SingleThreadedExecutor};
use bevy::log::LogPlugin;
use bevy::prelude::*;
use bevy::render::{RenderApp, RenderPlugin};
use bevy::time::TimeUpdateStrategy;
use bevy::window::{ExitCondition, PrimaryWindow};
use bevy::winit::{EventLoopProxyWrapper, WinitPlugin};
use bevy_egui::{EguiGlobalSettings, EguiPlugin, EguiPreUpdateSet, EguiPrimaryContextPass};

use super::action::Action;
use super::dialogs::{Dialogs, chosen};
use super::script::Script;
use super::state::Studio;
use crate::outcome::{Outcome, Stop};
pub use screen::size;

/// Exit code of bevy for a program that was asked to end.
const CANCELLED: u8 = 130;
/// A picture of a script is so long after the one before, s: the same on every machine.
const SCRIPT_STEP_S: f64 = 1.0 / 60.0;

/// Opens the window; with a script, replays it on a screen of its own of this size, px, that nobody sees, and closes.
pub fn run(studio: Studio, script: Option<(Script, [u32; 2])>) -> Result<Outcome, Stop> {
    if script.is_none() && no_display() {
        return Err(Fault::new("there is no display to show the window on")
            .help("every figure is on the command line too: `backlift --help`")
            .into());
    }
    guarded(|| shown(studio, script))?
}

fn shown(mut studio: Studio, script: Option<(Script, [u32; 2])>) -> Result<Outcome, Stop> {
    let mut app = App::new();
    app.insert_resource(screen::Kind::of(script.as_ref().map(|it| it.1)));
    let plugins = DefaultPlugins
        .set(LogPlugin { filter: "error,wgpu_hal=off,rfd=off".to_owned(), ..default() })
        .set(RenderPlugin { synchronous_pipeline_compilation: script.is_some(), ..default() });
    match script {
        None => {
            let title = "Backlift".to_owned();
            let window = Window { title, ..Window::default() };
            let windows = WindowPlugin { primary_window: Some(window), ..default() };
            app.add_plugins(plugins.set(windows));
            app.insert_resource(pace::sleeping());
            app.add_systems(Last, pace::rest);
        }
        Some((script, _)) => {
            let exit_condition = ExitCondition::DontExit;
            let windows = WindowPlugin { primary_window: None, exit_condition, ..default() };
            app.add_plugins(plugins.set(windows).disable::<WinitPlugin>());
            app.add_plugins(ScheduleRunnerPlugin::run_loop(Duration::ZERO));
            let step = Duration::from_secs_f64(SCRIPT_STEP_S);
            app.insert_resource(TimeUpdateStrategy::ManualDuration(step));
            app.insert_non_send(shots::Replay::new(script));
            app.add_systems(Update, shots::replay.before(tick));
            pace::wait_for_the_card(&mut app);
        }
    }
    let wake = app.world().get_resource::<EventLoopProxyWrapper>().map(alarm::wake_of);
    let wake = wake.unwrap_or_default();
    studio.work.wake = wake.clone();
    detail::watch_shaders(&mut app, wake.clone());
    app.insert_resource(alarm::Calls(wake.clone()));
    app.add_plugins(EguiPlugin::default())
        .insert_resource(EguiGlobalSettings { auto_create_primary_context: false, ..default() })
        .insert_non_send(studio)
        .insert_non_send(Dialogs::new(Arc::new(chosen), wake))
        .insert_non_send(stage::Stage::default())
        .insert_non_send(film::Camera::default())
        .insert_resource(pace::Pace::default())
        .insert_resource(detail::Detail::default())
        .add_systems(
            PreUpdate,
            screen::quiet_keys
                .after(EguiPreUpdateSet::ProcessInput)
                .before(EguiPreUpdateSet::BeginPass),
        )
        .add_systems(Startup, (screen::set_up, stage::set_up))
        .add_systems(Update, (dropped, tick, pace::watch, film::film).chain())
        .add_systems(EguiPrimaryContextPass, screen::show)
        .add_systems(PostUpdate, stage::mirror.before(TransformSystems::Propagate));
    one_after_the_other(&mut app);
    match app.run() {
        AppExit::Success => Ok(Outcome::Done),
        // The program was asked to end, by Ctrl-C or otherwise.
        AppExit::Error(code) if code.get() == CANCELLED => Err(Stop::Cancelled),
        AppExit::Error(_) => {
            let fault = app.world_mut().remove_non_send::<shots::Replay>().and_then(|it| it.fault);
            Err(fault.unwrap_or_else(no_pictures).into())
        }
    }
}

/// What bevy does for a picture is little, and handing it out to threads takes longer and varies more: 99 of 100 pictures
/// of 1920×1080 within 4.1 ms in place of 4.8, and 15 MB less (`assets/records/cost.md`).
fn one_after_the_other(app: &mut App) {
    let set = |world: &mut World| {
        for (_, schedule) in world.resource_mut::<Schedules>().iter_mut() {
            schedule.set_executor(SingleThreadedExecutor::new());
        }
    };
    set(app.world_mut());
    if let Some(render) = app.get_sub_app_mut(RenderApp) {
        set(render.world_mut());
    }
}

fn no_pictures() -> Fault {
    Fault::new("the window could not be drawn")
        .help("every figure is on the command line too: `backlift --help`")
}

/// Whether neither of the two kinds of display is told of. Only asked where there are just these two.
fn no_display() -> bool {
    cfg!(target_os = "linux")
        && ["DISPLAY", "WAYLAND_DISPLAY"].iter().all(|it| std::env::var_os(it).is_none())
}

/// What bevy and its crates say when no card, no driver or no display can be found.
const TOLD: [&str; 5] = ["GPU", "adapter", "event loop", "surface", "display"];

/// Runs the window; where nothing can be drawn with, says what to do.
fn guarded<T>(window: impl FnOnce() -> T) -> Result<T, Fault> {
    let heard = Arc::new(Mutex::new(String::new()));
    let hears = Arc::clone(&heard);
    let usual: Arc<dyn Fn(&std::panic::PanicHookInfo<'_>) + Send + Sync> = Arc::from(take_hook());
    let before = Arc::clone(&usual);
    set_hook(Box::new(move |info| {
        let said = info.payload_as_str().unwrap_or_default().to_owned();
        if !TOLD.iter().any(|it| said.contains(it)) {
            before(info);
        }
        if let Ok(mut it) = hears.lock() {
            *it = said;
        }
    }));
    let ran = catch_unwind(AssertUnwindSafe(window));
    set_hook(Box::new(move |info| usual(info)));
    ran.map_err(|_| {
        let said = heard.lock().map(|it| it.clone()).unwrap_or_default();
        let first = said.lines().next().unwrap_or_default();
        Fault::new(format!("the window could not be drawn: {first}")).help(
            "install a Vulkan driver; one in software will do (Debian: mesa-vulkan-drivers). Every figure is on the command line too: `backlift --help`",
        )
    })
}

fn dropped(mut files: MessageReader<FileDragAndDrop>, mut studio: NonSendMut<Studio>) {
    for file in files.read() {
        if let FileDragAndDrop::DroppedFile { path_buf, .. } = file {
            studio.apply(Action::Dropped(path_buf.clone()));
        }
    }
}

fn tick(
    time: Res<Time>,
    kind: Res<screen::Kind>,
    mut studio: NonSendMut<Studio>,
    mut dialogs: NonSendMut<Dialogs>,
    mut exit: MessageWriter<AppExit>,
    window: Option<Single<&mut Window, With<PrimaryWindow>>>,
) {
    // A script has nobody who could choose in a window.
    if kind.is_window() {
        dialogs.serve(&mut studio);
    }
    studio.tick(time.delta_secs_f64());
    if studio.closed || (kind.is_window() && window.is_none()) {
        exit.write(AppExit::Success);
    }
}

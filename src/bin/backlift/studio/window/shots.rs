//! A script replayed picture by picture, with pictures of the screen kept as files.

use std::sync::{Arc, Mutex};

use backlift::files::fault::Fault;
use backlift::files::save::over;
use bevy::prelude::*;
use bevy::render::view::screenshot::ScreenshotCaptured;

use super::pace::Pace;
use super::screen::Kind;
use crate::studio::script::{Next, Script};
use crate::studio::state::Studio;

/// Pictures shown between an action and the picture kept of it: faces, sizes and the net have settled.
const SETTLE: u32 = 6;

/// A script under way.
pub struct Replay {
    script: Script,
    state: State,
    /// Why it broke off.
    pub fault: Option<Fault>,
}

enum State {
    Going,
    Settling(String, u32),
    Taking(Arc<Mutex<Option<Result<(), Fault>>>>),
    Measuring(u32),
}

impl Replay {
    /// From its start.
    pub fn new(script: Script) -> Self {
        Self { script, state: State::Going, fault: None }
    }
}

/// One step of it.
pub fn replay(
    mut it: NonSendMut<Replay>,
    mut studio: NonSendMut<Studio>,
    mut pace: ResMut<Pace>,
    kind: Res<Kind>,
    mut commands: Commands,
    mut exit: MessageWriter<AppExit>,
) {
    it.state = match std::mem::replace(&mut it.state, State::Going) {
        State::Going => match it.script.step(&mut studio) {
            Next::Wait => State::Going,
            Next::Shot(name) => State::Settling(name, SETTLE),
            Next::Measure(pictures) => {
                pace.start();
                State::Measuring(pictures)
            }
            Next::Done => {
                exit.write(AppExit::Success);
                State::Going
            }
        },
        State::Measuring(0) => {
            println!("{}", pace.told());
            State::Going
        }
        State::Measuring(left) => State::Measuring(left - 1),
        State::Settling(name, 0) => take(name, &kind, &mut commands),
        State::Settling(name, left) => State::Settling(name, left - 1),
        State::Taking(taken) => match taken.lock().map(|mut it| it.take()) {
            Ok(None) => State::Taking(Arc::clone(&taken)),
            Ok(Some(Ok(()))) => State::Going,
            Ok(Some(Err(fault))) => {
                it.fault = Some(fault);
                exit.write(AppExit::error());
                State::Going
            }
            Err(_) => State::Going,
        },
    };
}

fn take(name: String, kind: &Kind, commands: &mut Commands) -> State {
    let taken = Arc::new(Mutex::new(None));
    let told = Arc::clone(&taken);
    commands.spawn(kind.screenshot()).observe(move |captured: On<ScreenshotCaptured>| {
        if let Ok(mut it) = told.lock() {
            *it = Some(keep(&name, &captured.image));
        }
    });
    State::Taking(taken)
}

fn keep(name: &str, image: &Image) -> Result<(), Fault> {
    let cannot = |why: String| Fault::new(format!("no picture could be taken: {why}"));
    let pixels = image.clone().try_into_dynamic().map_err(|it| cannot(it.to_string()))?.to_rgba8();
    let (width, height) = pixels.dimensions();
    let bytes = backlift::drawing::png::of_pixels(width, height, &pixels)
        .map_err(|it| cannot(it.to_string()))?;
    over(std::path::Path::new(name), &bytes)
}

//! A script replayed picture by picture, with pictures of the screen kept as files.

use backlift::files::fault::Fault;
use backlift::files::save::over;
use bevy::prelude::*;

use super::pace::Pace;
use super::screen::{Kind, Picture};
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
    Taking(String, Picture),
    Measuring(u32),
}

impl Replay {
    pub fn new(script: Script) -> Self {
        Self { script, state: State::Going, fault: None }
    }
}

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
        State::Settling(name, 0) => State::Taking(name, kind.picture(&mut commands)),
        State::Settling(name, left) => State::Settling(name, left - 1),
        State::Taking(name, picture) => {
            let image = picture.lock().ok().and_then(|mut it| it.take());
            match image.map(|image| keep(&name, image)) {
                None => State::Taking(name, picture),
                Some(Ok(())) => State::Going,
                Some(Err(fault)) => {
                    it.fault = Some(fault);
                    exit.write(AppExit::error());
                    State::Going
                }
            }
        }
    };
}

fn keep(name: &str, image: Image) -> Result<(), Fault> {
    let cannot = |why: String| Fault::new(format!("no picture could be taken: {why}"));
    let pixels = image.try_into_dynamic().map_err(|it| cannot(it.to_string()))?.to_rgba8();
    let (width, height) = pixels.dimensions();
    let bytes = backlift::drawing::png::of_pixels(width, height, &pixels)
        .map_err(|it| cannot(it.to_string()))?;
    over(std::path::Path::new(name), &bytes)
}

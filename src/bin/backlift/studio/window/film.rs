//! Pictures of the net while the state asks for them.

use backlift::drawing::still::Still;
use bevy::prelude::*;

use super::screen::{Kind, Picture};
use super::stage::Stage;
use crate::studio::state::Studio;

/// Pictures shown before one is taken, so that the instant is on the screen.
const SETTLE: u32 = 3;

/// A picture that was asked for, and waiting for it.
#[derive(Default)]
pub struct Camera {
    settled: u32,
    picture: Option<Picture>,
}

/// Takes the next picture, and gives it to the state.
pub fn film(
    mut it: NonSendMut<Camera>,
    mut studio: NonSendMut<Studio>,
    stage: NonSend<Stage>,
    kind: Res<Kind>,
    mut commands: Commands,
) {
    if studio.filming.is_none() {
        *it = Camera::default();
        return;
    }
    let Some(picture) = it.picture.clone() else {
        it.settled += 1;
        if it.settled > SETTLE {
            it.picture = Some(kind.picture(&mut commands));
        }
        return;
    };
    let image = picture.lock().ok().and_then(|mut it| it.take());
    if let Some(image) = image {
        *it = Camera::default();
        match cut(image, &stage) {
            Some(still) => studio.took(still),
            None => studio.say("No picture of the net could be taken".to_owned()),
        }
    }
}

/// The part of the screen that shows the net.
fn cut(image: Image, stage: &Stage) -> Option<Still> {
    let pixels = image.try_into_dynamic().ok()?;
    let scale = stage.pixels_per_point;
    let side = |points: f32| (points * scale).round().max(0.0) as u32;
    let room = stage.room;
    let part = pixels.crop_imm(
        side(room.left()),
        side(room.top()),
        side(room.width()),
        side(room.height()),
    );
    let mut rgba = part.to_rgba8();
    rgba.pixels_mut().for_each(|it| it.0[3] = 255);
    let size = [rgba.width(), rgba.height()];
    Some(Still { size, rgba: rgba.into_raw() })
}

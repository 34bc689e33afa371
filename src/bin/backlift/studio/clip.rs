//! The stroke as an animated GIF that any telephone shows.

use gif::{Encoder, Frame, Repeat};

use super::still::{Still, mistake};
use crate::outcome::Stop;

/// Pictures of a stroke.
const PICTURES: usize = 30;
/// Time of each on the screen, and of the last, hundredths of a second.
const DELAY: u16 = 7;
const LAST_DELAY: u16 = 150;
/// Wider pictures are halved, pixels.
const WIDEST: u32 = 960;
/// How closely colours are chosen, 1 best to 30 fastest.
const SPEED: i32 = 10;

/// Instants to take, s from the top of the backlift.
pub fn instants_s(length_s: f64) -> Vec<f64> {
    (0..=PICTURES).map(|n| length_s * n as f64 / PICTURES as f64).collect()
}

/// The file; `tell` hears which share is done, and may stop it.
pub fn gif(stills: &[Still], tell: &dyn Fn(f64) -> Result<(), Stop>) -> Result<Vec<u8>, Stop> {
    let small: Vec<Still> = stills.iter().map(halved).collect();
    let Some(size) = small.first().map(|it| it.size) else {
        return Err(mistake(&"a clip without pictures"));
    };
    let [width, height] = size.map(|it| u16::try_from(it).unwrap_or(u16::MAX));
    let mut bytes = Vec::new();
    let mut encoder = Encoder::new(&mut bytes, width, height, &[]).map_err(|it| mistake(&it))?;
    encoder.set_repeat(Repeat::Infinite).map_err(|it| mistake(&it))?;
    // A window that was drawn larger or smaller meanwhile cannot go into the same clip.
    let same = small.iter().filter(|it| it.size == size);
    let count = small.len();
    for (n, still) in same.enumerate() {
        tell(n as f64 / count as f64)?;
        let mut pixels = still.rgba.clone();
        let mut frame = Frame::from_rgba_speed(width, height, &mut pixels, SPEED);
        frame.delay = if n + 1 == count { LAST_DELAY } else { DELAY };
        encoder.write_frame(&frame).map_err(|it| mistake(&it))?;
    }
    drop(encoder);
    Ok(bytes)
}

/// Half as wide and as high where it is wide: each pixel the mean of four.
fn halved(still: &Still) -> Still {
    let [width, height] = still.size;
    if width <= WIDEST {
        return still.clone();
    }
    let size = [width / 2, height / 2];
    let at = |x: u32, y: u32, channel: u32| {
        let place = ((y * width + x) * 4 + channel) as usize;
        u32::from(still.rgba.get(place).copied().unwrap_or(255))
    };
    let mut rgba = Vec::with_capacity((size[0] * size[1] * 4) as usize);
    for y in 0..size[1] {
        for x in 0..size[0] {
            for channel in 0..4 {
                let (x, y) = (2 * x, 2 * y);
                let sum = at(x, y, channel)
                    + at(x + 1, y, channel)
                    + at(x, y + 1, channel)
                    + at(x + 1, y + 1, channel);
                rgba.push((sum / 4) as u8);
            }
        }
    }
    halved(&Still { size, rgba })
}

//! The stroke as an animated GIF that any telephone shows.

use backlift::drawing::still::Still;
use gif::{Encoder, Frame, Repeat};

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

/// The file, with these words under every picture; `tell` hears which share is done, and may stop it.
pub fn gif(
    stills: &[Still],
    words: &[String],
    tell: &dyn Fn(f64) -> Result<(), Stop>,
) -> Result<Vec<u8>, Stop> {
    let small: Vec<Still> = stills.iter().map(|it| it.halved_to(WIDEST)).collect();
    let Some(size) = small.first().map(|it| it.size) else {
        return Err(Stop::our_mistake("a clip without pictures"));
    };
    let under = Still::of_words(&words.join(" "), size[0]).map_err(Stop::our_mistake)?;
    let [width, height] =
        [size[0], size[1] + under.size[1]].map(|it| u16::try_from(it).unwrap_or(u16::MAX));
    let mut bytes = Vec::new();
    let mut encoder = Encoder::new(&mut bytes, width, height, &[]).map_err(Stop::our_mistake)?;
    encoder.set_repeat(Repeat::Infinite).map_err(Stop::our_mistake)?;
    // A window that was drawn larger or smaller meanwhile cannot go into the same clip.
    let same = small.iter().filter(|it| it.size == size);
    let count = small.len();
    for (n, still) in same.enumerate() {
        tell(n as f64 / count as f64)?;
        let mut pixels = [still.rgba.as_slice(), under.rgba.as_slice()].concat();
        let mut frame = Frame::from_rgba_speed(width, height, &mut pixels, SPEED);
        frame.delay = if n + 1 == count { LAST_DELAY } else { DELAY };
        encoder.write_frame(&frame).map_err(Stop::our_mistake)?;
    }
    drop(encoder);
    Ok(bytes)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]

    use super::*;

    /// Height of the clip of a grey picture with these words under it.
    fn height(words: &[String]) -> u16 {
        let still = Still { size: [320, 100], rgba: vec![128; 320 * 100 * 4] };
        let bytes = gif(&[still.clone(), still], words, &|_| Ok(())).unwrap();
        let decoder = gif::DecodeOptions::new().read_info(bytes.as_slice()).unwrap();
        decoder.height()
    }

    #[test]
    fn what_must_stand_with_a_clip_stands_under_its_pictures() {
        assert_eq!(height(&[]), 100);
        let words =
            ["Invented player and bats.", "Pain ends the session: stop, rest, tell an adult."];
        assert!(height(&words.map(str::to_owned)) > 120);
    }
}

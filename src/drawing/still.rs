//! Pictures as pixels.

use super::DrawingFault;
use super::palette::LIGHT;
use super::picture::Picture;
use super::png::drawn;
use super::type_setting::{Lettering, Size};

/// Beside and under words, px.
const MARGIN: f64 = 8.0;

/// A picture as pixels.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Still {
    /// Width and height, pixels.
    pub size: [u32; 2],
    /// Red, green, blue, alpha of every pixel, row by row.
    pub rgba: Vec<u8>,
}

impl Still {
    /// Words on paper, so many pixels wide; nothing high where there are none.
    ///
    /// # Errors
    /// If a library refuses the picture.
    pub fn of_words(words: &str, width: u32) -> Result<Self, DrawingFault> {
        if words.is_empty() {
            return Ok(Self { size: [width, 0], rgba: Vec::new() });
        }
        let quiet = Lettering::new(Size::Quiet, LIGHT.ink);
        let wide = f64::from(width);
        let lines = quiet.wrapped(words, wide - 2.0 * MARGIN);
        let height = (MARGIN + Size::Quiet.line_px() * lines.len() as f64).ceil();
        let mut picture = Picture::new(wide, height, &LIGHT);
        picture.paragraph([MARGIN, 0.0], wide - 2.0 * MARGIN, quiet, words);
        let map = drawn(&picture.finish(), 1.0)?;
        Ok(Self { size: [map.width(), map.height()], rgba: map.take() })
    }

    /// Half as wide and as high as often as it is wider than that: each pixel the mean of four.
    #[must_use]
    pub fn halved_to(&self, widest: u32) -> Self {
        let [width, height] = self.size;
        if width <= widest {
            return self.clone();
        }
        let size = [width / 2, height / 2];
        let at = |x: u32, y: u32, channel: u32| {
            let place = ((y * width + x) * 4 + channel) as usize;
            u32::from(self.rgba.get(place).copied().unwrap_or(255))
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
        Self { size, rgba }.halved_to(widest)
    }
}

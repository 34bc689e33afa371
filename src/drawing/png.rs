//! SVG to PNG.

use super::DrawingFault;
use super::type_setting::tree;
use resvg::{tiny_skia, usvg};
use std::fmt::Display;

fn no_size(width: impl Display, height: impl Display) -> DrawingFault {
    let what = format!("{width} by {height} pixels is no size for a picture");
    DrawingFault::refused("PNG", what)
}

/// The picture as PNG, `scale` pixels to a px of the SVG.
pub fn png(svg: &str, scale: f64) -> Result<Vec<u8>, DrawingFault> {
    encoded(&drawn(svg, scale)?)
}

/// The picture as pixels, `scale` to a px of the SVG.
pub fn drawn(svg: &str, scale: f64) -> Result<tiny_skia::Pixmap, DrawingFault> {
    let tree = tree(svg)?;
    let scale = scale as f32;
    let (width, height) = (tree.size().width() * scale, tree.size().height() * scale);
    let mut pixels = tiny_skia::Pixmap::new(width.ceil() as u32, height.ceil() as u32)
        .ok_or_else(|| no_size(width, height))?;
    resvg::render(&tree, usvg::Transform::from_scale(scale, scale), &mut pixels.as_mut());
    Ok(pixels)
}

/// Pixels as PNG.
pub fn encoded(pixels: &tiny_skia::Pixmap) -> Result<Vec<u8>, DrawingFault> {
    pixels.encode_png().map_err(|it| DrawingFault::refused("PNG", it))
}

/// A picture of pixels, four bytes each (red, green, blue, opaque), row by row, as PNG.
pub fn of_pixels(width: u32, height: u32, pixels: &[u8]) -> Result<Vec<u8>, DrawingFault> {
    encoded(&pixmap(width, height, pixels)?)
}

/// The same, to be drawn into another picture.
pub fn pixmap(width: u32, height: u32, pixels: &[u8]) -> Result<tiny_skia::Pixmap, DrawingFault> {
    let mut picture = tiny_skia::Pixmap::new(width, height)
        .filter(|it| it.data().len() == pixels.len())
        .ok_or_else(|| no_size(width, height))?;
    picture.data_mut().copy_from_slice(pixels);
    Ok(picture)
}

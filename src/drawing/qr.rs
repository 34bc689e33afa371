//! A QR code, drawn.

use super::DrawingFault;
use super::area::Area;
use super::picture::Picture;
use qrcode::{Color, EcLevel, QrCode};

/// Most bytes that fit a code whose modules are still about 0.25 mm wide at 25 mm (version 21, level L).
pub(super) const MOST_BYTES: usize = 929;

/// Draws `text` into a square, at the highest level of error correction that does not
/// make the code finer than it need be. Four modules around it must stay white (ISO/IEC 18004).
pub(super) fn draw(picture: &mut Picture, area: Area, text: &str) -> Result<(), DrawingFault> {
    let too_long = DrawingFault::CodeTooLong { bytes: text.len(), most: MOST_BYTES };
    if text.len() > MOST_BYTES {
        return Err(too_long);
    }
    let smallest =
        QrCode::with_error_correction_level(text, EcLevel::L).map_err(|_| too_long.clone())?;
    let code = [EcLevel::H, EcLevel::Q, EcLevel::M]
        .into_iter()
        .find_map(|level| QrCode::with_version(text, smallest.version(), level).ok())
        .unwrap_or(smallest);
    let modules = code.width();
    let side = area.width / modules as f64;
    let at = |k: usize| k as f64 * side;
    let dark: Vec<[[f64; 2]; 4]> = runs(&code.to_colors(), modules)
        .map(|(row, from, to)| {
            let (left, right) = (area.x + at(from), area.x + at(to));
            let (top, bottom) = (area.y + at(row), area.y + at(row + 1));
            [[left, top], [right, top], [right, bottom], [left, bottom]]
        })
        .collect();
    picture.polygons(dark.iter().map(<[[f64; 2]; 4]>::as_slice), picture.theme.ink, 1.0);
    Ok(())
}

/// Runs of dark modules: row, first column, column after the last.
fn runs(colours: &[Color], modules: usize) -> impl Iterator<Item = (usize, usize, usize)> {
    colours.chunks(modules).enumerate().flat_map(|(row, line)| {
        let mut column = 0;
        line.chunk_by(|a, b| a == b)
            .filter_map(|run| {
                let from = column;
                column += run.len();
                (run.first() == Some(&Color::Dark)).then_some((row, from, column))
            })
            .collect::<Vec<_>>()
    })
}

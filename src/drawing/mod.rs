//! Pictures: charts, the map, the arc of a swing, the bat, and the maker's card on one A4 page.
//!
//! Every picture is an SVG text in CSS pixels (96 to the inch), made from plain values; [`png`] and [`pdf`]
//! turn it into the other formats with the faces in `assets/fonts`, never the system's. Same values, same
//! bytes.

pub mod against;
pub mod arc;
mod area;
pub mod axis;
pub mod bat_outline;
mod cautions_box;
pub mod chart;
pub mod contour;
pub mod face_map;
pub mod innings_chart;
pub mod map;
mod map_marks;
pub mod map_picture;
pub mod matters_chart;
pub mod orders_page;
pub mod ounce_chart;
pub mod pair_page;
pub mod palette;
pub mod pdf;
pub mod pickup_page;
mod picture;
pub mod png;
pub mod profile;
mod profile_strips;
mod profile_tile;
mod qr;
pub mod sheet;
mod sheet_figures;
mod sheet_texts;
pub mod still;
pub mod templates;
pub mod type_setting;
pub mod words;

use area::Area;

/// CSS pixels in a millimetre.
pub const PX_PER_MM: f64 = 96.0 / 25.4;
/// A4, mm.
pub const PAGE_MM: [f64; 2] = [210.0, 297.0];
/// Nothing is printed nearer to a page's edge, mm.
pub const MARGIN_MM: f64 = 10.0;
/// What may be printed on of an upright page.
const INSIDE: Area = {
    let margin = MARGIN_MM * PX_PER_MM;
    let [width, height] = [PAGE_MM[0] * PX_PER_MM, PAGE_MM[1] * PX_PER_MM];
    Area::new(margin, margin, width - 2.0 * margin, height - 2.0 * margin)
};

/// Why a picture could not be made.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum DrawingFault {
    /// The texts of a page of pairs are longer than it.
    #[error("the texts beside the bats need {needed_mm:.0} mm more than the page has")]
    PageTooLong {
        /// What is missing, mm.
        needed_mm: f64,
    },
    /// The card's figures are too long for a code of 25 mm.
    #[error(
        "the card's figures as text have {bytes} bytes, more than the {most} that a phone can read off 25 mm: round them as the bench can read them"
    )]
    CodeTooLong {
        /// Its length.
        bytes: usize,
        /// The most that fits.
        most: usize,
    },
    /// A library refused the picture.
    #[error("the picture could not be turned into {format}: {what}")]
    Refused {
        /// The format wanted.
        format: &'static str,
        /// In the library's words.
        what: String,
    },
    /// The card could not be written as text.
    #[error(transparent)]
    Card(#[from] crate::files::card::CardFileFault),
}

impl DrawingFault {
    fn refused(format: &'static str, what: impl std::fmt::Display) -> Self {
        Self::Refused { format, what: what.to_string() }
    }
}

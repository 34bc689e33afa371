//! Pictures: charts, the map, the arc of a swing, the bat, and the maker's card on one A4 page.
//!
//! Every picture is an SVG text in CSS pixels (96 to the inch), made from plain values; [`png`] and [`pdf`]
//! turn it into the other formats with the faces in `assets/fonts`, never the system's. Same values, same
//! bytes.

pub mod against;
pub mod arc;
pub mod area;
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
pub mod picture;
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

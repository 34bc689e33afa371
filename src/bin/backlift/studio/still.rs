//! A picture as pixels.

use crate::outcome::Stop;

/// A picture of the net.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Still {
    /// Width and height, pixels.
    pub size: [u32; 2],
    /// Red, green, blue, alpha of every pixel, row by row.
    pub rgba: Vec<u8>,
}

/// What is wrong with a picture is no fault of the user's.
pub(super) fn mistake(what: &dyn std::fmt::Display) -> Stop {
    Stop::OurMistake(what.to_string())
}

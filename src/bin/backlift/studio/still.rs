//! Pictures of the net as pixels, and those that are being taken.

use std::path::PathBuf;

use super::playback::Playback;
use crate::outcome::Stop;

/// A picture of the net.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Still {
    /// Width and height, pixels.
    pub size: [u32; 2],
    /// Red, green, blue, alpha of every pixel, row by row.
    pub rgba: Vec<u8>,
}

/// What becomes of the pictures.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Into {
    /// An animated GIF of the stroke.
    Clip(PathBuf),
    /// One page as PNG: what the two bats do, in words, figures and pictures.
    Page(PathBuf),
}

/// Pictures under way.
pub struct Filming {
    /// What becomes of them.
    pub into: Into,
    /// Instants to take, s from the top of the backlift.
    pub instants_s: Vec<f64>,
    /// Those there are.
    pub stills: Vec<Still>,
    /// What was played before.
    pub before: Playback,
}

impl Filming {
    /// Share of it that is done.
    pub fn share(&self) -> f32 {
        self.stills.len() as f32 / self.instants_s.len().max(1) as f32
    }
}

/// What is wrong with a picture is no fault of the user's.
pub(super) fn mistake(what: &dyn std::fmt::Display) -> Stop {
    Stop::OurMistake(what.to_string())
}

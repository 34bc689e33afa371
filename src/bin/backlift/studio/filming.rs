//! Pictures of the net that are being taken.

use std::path::PathBuf;

use backlift::drawing::still::Still;

use super::playback::Playback;

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

//! `backlift studio`: the window with two bats and one player, swung together.
//!
//! State is one plain struct changed by named actions; panels are plain functions on egui; what bevy does
//! only mirrors the state into the scene, and input into actions. No physics here: it asks the core.

pub mod action;
mod answers;
mod apart;
mod apply;
mod asking;
mod bench;
mod card;
mod clip;
pub mod derived;
mod desk;
pub mod dialogs;
mod fields;
mod figures;
mod film_out;
mod ground;
pub mod layout;
pub mod look;
pub mod panels;
mod paper;
mod pickup;
pub mod playback;
pub mod recovery;
pub mod scene;
pub mod script;
mod spoken;
pub mod state;
pub mod style;
mod taken;
#[cfg(test)]
mod tests;
mod tick;
mod today;
mod way;
pub mod window;
pub mod wood;
pub mod work;

use std::path::PathBuf;

use crate::outcome::{Outcome, Stop};
use recovery::Recovery;
use script::Script;
use state::Studio;

/// Open the window: bats and player swung together, the bench, the innings, the map and the card
///
/// Everything in it works on the same scenario files and the same figures as the other commands.
#[derive(clap::Args, Default)]
#[command(after_help = "\
Example:
  backlift studio my-player.ron")]
pub struct Args {
    /// Scenario file; without one the built-in demo is shown
    scenario: Option<PathBuf>,

    /// Replay a list of actions, take its pictures, and close
    #[arg(long, value_name = "FILE")]
    script: Option<PathBuf>,

    /// Size of a script's pictures in pixels
    #[arg(long, value_name = "WIDTHxHEIGHT", default_value = "1366x768", requires = "script")]
    #[arg(value_parser = window::size)]
    size: [u32; 2],
}

/// Opens it.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let script = args.script.as_deref().map(Script::read).transpose()?;
    // A script neither reads nor leaves anything of a user's own.
    let recovery = if script.is_some() { Recovery::default() } else { Recovery::usual() };
    let studio = Studio::new(args.scenario.as_deref(), recovery)?;
    window::run(studio, script.map(|it| (it, args.size)))
}

//! The command line: one file a command, and what they share.
#![allow(clippy::disallowed_macros, clippy::disallowed_methods, reason = "edge")]
#![allow(non_snake_case, reason = "frame suffixes are capitals: contact_W")]

mod bat_figure;
mod bench;
mod beside;
mod calibrate;
mod check;
mod compare;
mod figure;
mod fit;
mod fitting_files;
mod given;
mod guide;
mod hit;
mod innings;
mod innings_picture;
mod json;
mod keys;
mod matters;
mod new;
mod ounce;
mod outcome;
mod paragraph;
mod pickup;
mod plane;
mod progress;
mod season;
mod sentences;
mod shape;
mod shape_files;
mod stages;
mod stroke;
#[cfg(feature = "studio")]
mod studio;
mod swing;
mod table;
mod trial;
mod validate;
mod weigh;
mod written;

use clap::{Parser, Subcommand};
use outcome::{Outcome, Stop};

/// Fits a cricket bat to a player by simulating the swing.
#[derive(Parser)]
#[command(name = "backlift", version, max_term_width = 80, help_expected = true)]
#[cfg_attr(
    not(feature = "studio"),
    command(subcommand_required = true, arg_required_else_help = true)
)]
#[command(after_help = "\
A scenario is a text file with the player, the bats, the innings and the bowling. \
Without one, the built-in demo is used: an invented junior with four bats.

Exit codes: 0 done, 1 no answer or not accepted, 2 wrong input, 130 cancelled, 255 our own mistake.

How to measure, and what everything means: backlift guide

Example:
  backlift new my-player.ron")]
struct CommandLine {
    #[command(subcommand)]
    command: Option<Command>,
}

#[derive(Subcommand)]
enum Command {
    New(new::Args),
    Weigh(weigh::Args),
    Swing(swing::Args),
    Hit(hit::Args),
    Innings(innings::Args),
    Compare(compare::Args),
    Fit(fit::Args),
    Trial(trial::Args),
    Check(check::Args),
    Season(season::Args),
    Stages(stages::Args),
    Calibrate(calibrate::Args),
    Matters(matters::Args),
    Shape(shape::Args),
    Plane(plane::Args),
    Pickup(pickup::Args),
    Stroke(stroke::Args),
    Validate(validate::Args),
    Guide(guide::Args),
    Keys(keys::Args),
    #[cfg(feature = "studio")]
    Studio(studio::Args),
}

impl Command {
    fn run(self) -> Result<Outcome, Stop> {
        if !self.is_window() {
            progress::hear_ctrl_c();
        }
        match self {
            Self::New(args) => new::run(args),
            Self::Weigh(args) => weigh::run(args),
            Self::Swing(args) => swing::run(args),
            Self::Hit(args) => hit::run(args),
            Self::Innings(args) => innings::run(args),
            Self::Compare(args) => compare::run(args),
            Self::Fit(args) => fit::run(args),
            Self::Trial(args) => trial::run(args),
            Self::Check(args) => check::run(args),
            Self::Season(args) => season::run(args),
            Self::Stages(args) => stages::run(args),
            Self::Calibrate(args) => calibrate::run(args),
            Self::Matters(args) => matters::run(args),
            Self::Shape(args) => shape::run(args),
            Self::Plane(args) => plane::run(args),
            Self::Pickup(args) => pickup::run(args),
            Self::Stroke(args) => stroke::run(args),
            Self::Validate(args) => validate::run(args),
            Self::Guide(args) => guide::run(args),
            Self::Keys(args) => keys::run(args),
            #[cfg(feature = "studio")]
            Self::Studio(args) => studio::run(args),
        }
    }
}

impl Command {
    /// Whether it is the window, which is closed and not cancelled.
    #[cfg(feature = "studio")]
    fn is_window(&self) -> bool {
        matches!(self, Self::Studio(_))
    }

    /// There is no window.
    #[cfg(not(feature = "studio"))]
    fn is_window(&self) -> bool {
        false
    }
}

fn main() -> std::process::ExitCode {
    let line = CommandLine::parse();
    outcome::finish(|| line.command.map_or_else(unasked, Command::run))
}

/// Nothing was asked for: the window, where there is one.
#[cfg(feature = "studio")]
fn unasked() -> Result<Outcome, Stop> {
    studio::run(studio::Args::default())
}

/// Nothing was asked for, and the command line has said so already.
#[cfg(not(feature = "studio"))]
fn unasked() -> Result<Outcome, Stop> {
    Ok(Outcome::Done)
}

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    #[test]
    fn every_flag_has_its_help_and_the_command_line_is_sound() {
        super::CommandLine::command().debug_assert();
    }
}

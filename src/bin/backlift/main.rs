//! The command line: one file a command, and what they share.
#![allow(clippy::disallowed_macros, clippy::disallowed_methods, reason = "edge")]
#![allow(non_snake_case, reason = "frame suffixes are capitals: contact_W")]

mod bat_figure;
mod bench;
mod beside;
mod calibrate;
mod check;
mod clock;
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
mod orders;
mod ounce;
mod outcome;
mod own;
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

/// Commands from a table: each a name, and the module that has its `Args` and runs it.
macro_rules! commands {
    ($($Command:ident: $module:ident,)*) => {
        #[derive(Subcommand)]
        enum Command {
            $($Command($module::Args),)*
            #[cfg(feature = "studio")]
            Studio(studio::Args),
        }

        impl Command {
            fn run(self) -> Result<Outcome, Stop> {
                match self {
                    $(Self::$Command(args) => {
                        progress::hear_ctrl_c();
                        $module::run(args)
                    })*
                    // The window is closed and not cancelled.
                    #[cfg(feature = "studio")]
                    Self::Studio(args) => studio::run(args),
                }
            }
        }

        /// What the commands are called, in the order of the help.
        const COMMANDS: &[&str] = &[$(stringify!($module),)*];
    };
}

commands! {
    New: new,
    Weigh: weigh,
    Swing: swing,
    Hit: hit,
    Innings: innings,
    Compare: compare,
    Fit: fit,
    Trial: trial,
    Check: check,
    Season: season,
    Stages: stages,
    Calibrate: calibrate,
    Matters: matters,
    Shape: shape,
    Orders: orders,
    Plane: plane,
    Pickup: pickup,
    Stroke: stroke,
    Validate: validate,
    Guide: guide,
    Keys: keys,
}

fn main() -> std::process::ExitCode {
    let line = CommandLine::parse();
    outcome::finish(|| match line.command {
        Some(command) => command.run(),
        // Nothing was asked for: the window, where there is one; else the command line has said so already.
        #[cfg(feature = "studio")]
        None => studio::run(studio::Args::default()),
        #[cfg(not(feature = "studio"))]
        None => Ok(Outcome::Done),
    })
}

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    #[test]
    fn every_flag_has_its_help_and_the_command_line_is_sound() {
        super::CommandLine::command().debug_assert();
    }
}

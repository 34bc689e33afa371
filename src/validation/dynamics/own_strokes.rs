//! The product's own strokes, of an invented adult and an invented boy: the range a step must serve.

use crate::bat::Bat;
use crate::files::stroke::built_in;
use crate::files::stroke_paths::built_in_paths;
use crate::measurement::person::{PersonReading, Sex};
use crate::player::joints::FRESH;
use crate::player::{Player, player};
use crate::swing::player_stroke::{Held, PlayerStroke};
use crate::validation::CheckFault;

use super::pilot::pilot_bat;

/// A player with a light and a heavy bat.
pub struct Pair {
    pub player: Player,
    /// Light, heavy.
    pub bats: [Bat; 2],
}

/// An adult and a child.
pub fn pairs() -> Result<[Pair; 2], CheckFault> {
    Ok([
        Pair {
            player: player(&PersonReading::of(Sex::Male, 25.0, 1.80))?,
            bats: [pilot_bat(1.10, 0.85, 0.51)?, pilot_bat(1.30, 0.85, 0.55)?],
        },
        Pair {
            player: player(&PersonReading::of(Sex::Male, 12.0, 1.50))?,
            bats: [pilot_bat(0.90, 0.80, 0.48)?, pilot_bat(1.08, 0.80, 0.515)?],
        },
    ])
}

/// Every built-in stroke of every player with every bat.
pub fn all() -> Result<Vec<Held>, CheckFault> {
    let mut out = Vec::new();
    for Pair { player, bats } in pairs()? {
        for stroke in built_in()? {
            let path = PlayerStroke::new(&player, &stroke, &bats[0])?;
            for bat in &bats {
                out.push(path.hold(bat)?);
            }
        }
    }
    Ok(out)
}

/// Every built-in stroke on the fastest of the paths that come with it, of both players with their lighter bats.
pub fn on_paths() -> Result<Vec<Held>, CheckFault> {
    let mut out = Vec::new();
    for Pair { player, bats: [light, _] } in pairs()? {
        for stroke in built_in()? {
            // The fastest goes first in its file.
            if let Some(path) = built_in_paths(&stroke)?.all.into_iter().next() {
                out.push(PlayerStroke::new(&player, &path.stroke, &light)?.hold(&light)?);
            }
        }
    }
    Ok(out)
}

/// The furthest any joint turns in one step of a fastest controlled swing, rad.
pub fn largest_turn_in_a_step_rad() -> Result<f64, CheckFault> {
    let mut largest = 0.0_f64;
    for held in all()? {
        let time_s = held.fastest(&FRESH, None)?.stroke_time_s;
        let mut last: Option<[f64; crate::player::joints::JOINT_COUNT]> = None;
        held.swinger(&FRESH).swing(
            time_s,
            Some(&mut |at| {
                if let Some(q) = last {
                    let turns = q.iter().zip(&at.state.q).map(|(a, b)| (a - b).abs());
                    largest = turns.fold(largest, f64::max);
                }
                last = Some(at.state.q);
            }),
        );
    }
    Ok(largest)
}

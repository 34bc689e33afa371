//! The player, bats and rig of the earlier prototype, for the facts beside it.

use backlift::bat::Bat;
use backlift::files::reference::stored_paths;
use backlift::player::Player;
use backlift::stroke::joint_path::JointPath;
use backlift::swing::chain::Chain;
use backlift::swing::close_path::close_path;
use backlift::validation::dynamics::pilot::{self, PilotRig};

pub use backlift::validation::dynamics::pilot::pilot_player;

pub fn pilot_bat(mass_kg: f64, length_m: f64, balance_m: f64) -> Bat {
    pilot::pilot_bat(mass_kg, length_m, balance_m).unwrap()
}

pub fn pilot_chain(player: &Player, bat: &Bat) -> Chain {
    pilot::pilot_chain(player, bat).unwrap()
}

/// On the player's own path, closed from the stored one.
pub fn pilot_rig(player: &Player, bat: &Bat, stroke: &str, steps: usize) -> PilotRig {
    let stored = JointPath { control_rad: stored_paths().unwrap()[stroke].control_points_rad };
    let path = close_path(&pilot_chain(player, bat), &stored).unwrap();
    PilotRig::on_path(player, bat, &path, steps).unwrap()
}

//! Our own earlier prototype in another language on another engine: the same player, bat, path and law must
//! give as fast a swing.

use super::figure;
use super::pilot::{NoSuchCase, PilotRig, pilot_bat, pilot_chain, pilot_player_named};
use crate::files::reference;
use crate::stroke::joint_path::JointPath;
use crate::swing::close_path::close_path;
use crate::swing::fastest_controlled::{Fastest, fastest_controlled};
use crate::swing::run::STEPS;
use crate::validation::{CheckFault, Checked};

const SOURCE: &str =
    "earlier prototype on MuJoCo 4.0.0, extrapolated to no step from 1, 0.5 and 0.25 ms";
/// How far the speed may be off: the prototype holds its torque over a step, reads contact between steps,
/// and was extrapolated.
const MOST: f64 = 1e-2;
/// Fastest speeds of the prototype's adult with its middle bat, m/s.
const SPEEDS: [(&str, f64); 3] = [("drive", 15.79), ("pull", 15.91), ("hook", 15.57)];

/// The fastest controlled swing of the prototype's adult with its middle bat, on a path closed anew.
pub fn fastest(stroke: &str, steps: usize) -> Result<Fastest, CheckFault> {
    let (player, bat) = (pilot_player_named("adult"), pilot_bat(1.20, 0.85, 0.53)?);
    let stored = reference::stored_paths()?;
    let stored = stored.get(stroke).ok_or_else(|| NoSuchCase(stroke.to_owned()))?;
    let stored = JointPath { control_rad: stored.control_points_rad };
    let path = close_path(&pilot_chain(&player, &bat)?, &stored)?;
    let rig = PilotRig::on_path(&player, &bat, &path, steps)?;
    Ok(fastest_controlled(&rig.swinger(), 0.44, false)?)
}

/// Bat speed of three strokes.
pub fn check() -> Result<Checked, CheckFault> {
    let mut out = Checked::default();
    for (stroke, theirs_m_s) in SPEEDS {
        let ours = fastest(stroke, STEPS)?.contact.bat_speed_m_s;
        let what = format!("adult on a path closed anew, bat speed: {stroke}");
        out.rows.push(figure(what, SOURCE, "m/s", theirs_m_s, ours, MOST));
    }
    Ok(out)
}

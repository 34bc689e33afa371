//! The law of the stroke written a second time, without a step, on Pinocchio: same player, bat, path and
//! law, so that only our dynamics, closure and integrator can differ.
//!
//! The reference starts from torques of its own. Where a row says "started alike" ours is given those; else
//! it starts, as in the product, from the torques that its own law calls for.

pub(super) mod at_a_time;
pub(super) mod fastest;

use super::worse;
use crate::files::reference::law::Crossing;
use crate::swing::contact::Contact;

const SOURCE: &str =
    "the law written again on Pinocchio 4.1.0 with an adaptive SciPy 1.17.1 integrator, no step";

/// Largest miss of speed and toe speed, and of the three errors as shares of their tolerances.
fn off(ours: &Contact, theirs: &Crossing) -> (f64, f64) {
    let speed = (ours.bat_speed_m_s / theirs.speed_m_s - 1.0).abs();
    let toe = (ours.toe_speed_m_s / theirs.toe_speed_m_s - 1.0).abs();
    let parts = [
        (1e3 * ours.position_error_m - theirs.position_error_mm) / 25.0,
        (ours.face_error_rad.to_degrees() - theirs.face_error_deg) / 4.0,
        (ours.line_error_rad.to_degrees() - theirs.line_error_deg) / 5.0,
    ];
    (worse(speed, toe), parts.iter().fold(0.0, |m, p| worse(m, p.abs())))
}

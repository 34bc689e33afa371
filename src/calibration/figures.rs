//! How much surer the player's figures and the advice became.

use super::fault::CalibrationFault;
use super::limit::{LN_SPEED, LN_TIME};
use super::posterior::{Possible, Posterior, Spread};
use super::simulated::{Order, Simulated};
use super::tiredness::Tiredness;
use crate::measurement::nets::Calibration;
use crate::player::calibrated::factors;
use crate::stroke::PULL;

/// What became surer, each by the tables and with the readings.
#[derive(Clone, Debug, PartialEq)]
pub struct Surer {
    /// Bat speed of the fastest controlled pull, fresh, m/s.
    pub fresh_pull_m_s: [Spread; 2],
    /// The same at the end of the innings, m/s.
    pub late_pull_m_s: [Spread; 2],
    /// Bat speed the pull loses over the innings, as a share.
    pub lost: [Spread; 2],
}

/// Bat speed of the fastest controlled pull fresh and at the end of the innings at one strength,
/// simulated, m/s: what the other commands will say.
pub fn pull_at(
    order: &Order<'_>,
    simulated: &Simulated,
    calibration: &Calibration,
) -> Result<[f64; 2], CalibrationFault> {
    let pull = order.batter.stroke_index(PULL).ok_or(CalibrationFault::NoSuchBat)?;
    let weighed = order.bats.get(order.bat).ok_or(CalibrationFault::NoSuchBat)?;
    let held = order.batter.strokes[pull].hold(&weighed.bat)?;
    let end = simulated.tiredness(order.plan.runs);
    let at = |after: &Tiredness| {
        let strength = after.tired(&calibration.ln_factor, calibration.lasting.central);
        let near =
            simulated.response(order.bat, pull).map(|it| libm::exp(it.at(&strength)[LN_TIME]));
        held.fastest(&factors(&strength), near).map(|it| it.bat_speed_m_s)
    };
    Ok([at(&Tiredness::NONE)?, at(&end)?])
}

/// Both figures of the pull.
pub(super) fn surer(
    order: &Order<'_>,
    simulated: &Simulated,
    fits: [&Posterior; 2],
) -> Result<Surer, CalibrationFault> {
    let pull = order.batter.stroke_index(PULL).ok_or(CalibrationFault::NoSuchBat)?;
    let response = simulated.response(order.bat, pull).ok_or(CalibrationFault::NoSuchBat)?;
    let end = simulated.tiredness(order.plan.runs);
    let speed = |it: &Possible, after: &Tiredness| {
        libm::exp(response.at(&after.tired(&it.ln_strength, it.lasting))[LN_SPEED])
    };
    let fresh = |it: &Possible| speed(it, &Tiredness::NONE);
    let late = |it: &Possible| speed(it, &end);
    let lost = |it: &Possible| 1.0 - late(it) / fresh(it);
    Ok(Surer {
        fresh_pull_m_s: fits.map(|it| it.figure(fresh)),
        late_pull_m_s: fits.map(|it| it.figure(late)),
        lost: fits.map(|it| it.figure(lost)),
    })
}

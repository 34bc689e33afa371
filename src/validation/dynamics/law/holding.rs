//! The law with a bottom hand that holds the handle, on paths that turn the handle in that hand, so that it
//! holds and gives way.

use super::super::miss;
use super::super::pilot::PilotRig;
use super::{SOURCE, off};
use crate::files::reference;
use crate::swing::run::STEPS;
use crate::validation::{Accept, CheckFault, Checked, Row};

/// How far the speed may be off at the product's steps and at four times as many, as shares.
const SPEED: [(usize, f64); 2] = [(STEPS, 1e-3), (4 * STEPS, 2e-4)];
/// How far the couple may be off, within a step of the crossing, as a share of its limit.
const COUPLE: Accept = Accept::Within(0.1);

pub fn check() -> Result<Checked, CheckFault> {
    let (prototype, holding) = (reference::prototype()?, reference::holding_law()?);
    let mut rows = Vec::new();
    for (stroke, fixed) in &holding.fixed_time {
        for (steps, most) in SPEED {
            let mut rig = PilotRig::of_search(&prototype, [stroke, "adult", "middle"], steps)?;
            rig.chain.grip = rig.chain.grip.holding(holding.limit_n_m, holding.traction_n);
            let mut swinger = rig.swinger();
            swinger.start_torque_n_m = Some(fixed.start_tau_n_m);
            let mut last = [f64::NAN; 3];
            let ours =
                swinger.swing(fixed.stroke_time_s, Some(&mut |at| last = at.state.couple_share));
            let theirs = &fixed.at_0_25_ms;
            let (speed, errors) = off(&ours, &theirs.crossing);
            let named = |what: &str| {
                format!(
                    "{stroke} in {} s, bottom hand holding, {steps} steps: {what}",
                    fixed.stroke_time_s
                )
            };
            rows.push(miss(named("bat and toe speed, miss"), SOURCE, speed, most));
            rows.push(miss(named("miss of the tolerances"), SOURCE, errors, 10.0 * most));
            for (axis, (ours, theirs)) in ["along the bat", "across the face", "out of the face"]
                .iter()
                .zip(last.iter().zip(&theirs.couple_share))
            {
                let what = named(&format!("couple {axis} at the ball"));
                rows.push(Row::compared(what, SOURCE, "of its limit", *theirs, *ours, COUPLE));
            }
        }
    }
    Ok(rows.into())
}

//! The law over a stroke time that is given, the bottom hand free to turn or holding.

use super::super::pilot::PilotRig;
use super::super::{figure, miss, worse};
use super::{SOURCE, off};
use crate::files::reference;
use crate::files::reference::law::{Continuous, Prototype};
use crate::player::joints::{BOTTOM_ARM, JOINT_COUNT, SPINE_TURN};
use crate::swing::run::STEPS;
use crate::validation::{Accept, CheckFault, Checked, Curve, Row, readings};

/// How far the speed may be off, as a share.
const SPEED: f64 = 1e-3;
/// How far the errors at the ball may be off, as shares of their tolerances.
const ERRORS: f64 = 1e-2;
/// How far joint angles and torques over time may be off, as shares of their widest and largest.
const OVER_TIME: f64 = 1e-2;
/// Steps with which every one of the file's samples falls on a step: 2.5 ms in a pull of 0.42 s, near
/// the product's 2.6 ms.
const SAMPLED_STEPS: usize = 168;

pub fn check() -> Result<Checked, CheckFault> {
    let (prototype, law) = (reference::prototype()?, reference::continuous_law()?);
    let mut out = Checked::default();
    for (stroke, fixed) in &law.fixed_time {
        let rig = PilotRig::of_search(&prototype, [stroke, "adult", "middle"], STEPS)?;
        let mut swinger = rig.swinger();
        let theirs = &fixed.at_0_25_ms;
        let own = swinger.swing(fixed.stroke_time_s, None);
        swinger.start_torque_n_m = Some(fixed.start_tau_n_m);
        let alike = swinger.swing(fixed.stroke_time_s, None);
        let what = format!("{stroke} in {} s: bat speed", fixed.stroke_time_s);
        let (theirs_m_s, ours_m_s) = (theirs.speed_m_s, own.bat_speed_m_s);
        out.rows.push(figure(what, SOURCE, "m/s", theirs_m_s, ours_m_s, 10.0 * SPEED));
        let (speed, errors) = off(&alike, theirs);
        let named =
            |what: &str| format!("{stroke} in {} s: {what}, started alike", fixed.stroke_time_s);
        out.rows.push(miss(named("bat and toe speed, miss"), SOURCE, speed, SPEED));
        out.rows.push(miss(named("miss of the tolerances"), SOURCE, errors, ERRORS));
    }
    over_time(&prototype, &law, &mut out)?;
    Ok(out)
}

/// Joint angles and torques over the pull.
fn over_time(prototype: &Prototype, law: &Continuous, out: &mut Checked) -> Result<(), CheckFault> {
    for (stroke, fixed) in law.fixed_time.iter().filter(|(_, it)| !it.series.is_empty()) {
        let rig = PilotRig::of_search(prototype, [stroke, "adult", "middle"], SAMPLED_STEPS)?;
        let mut swinger = rig.swinger();
        swinger.start_torque_n_m = Some(fixed.start_tau_n_m);
        let mut ours = Vec::new();
        swinger.swing(fixed.stroke_time_s, Some(&mut |at| ours.push(at)));
        let step_s = fixed.stroke_time_s / SAMPLED_STEPS as f64;
        let start = fixed.series.first().map_or([0.0; JOINT_COUNT], |it| it.q_rad);
        let (mut angle, mut widest, mut torque, mut largest) = (0.0, 0.0_f64, 0.0, 0.0_f64);
        for theirs in &fixed.series {
            let Some(at) = ours.get((theirs.t_s / step_s).round() as usize) else { continue };
            for ((ours, theirs), start) in at.state.q.iter().zip(&theirs.q_rad).zip(&start) {
                angle = worse(angle, (ours - theirs).abs());
                widest = widest.max((theirs - start).abs());
            }
            for (ours, theirs) in at.torque_n_m.iter().zip(&theirs.tau_n_m) {
                torque = worse(torque, (ours - theirs).abs());
                largest = largest.max(theirs.abs());
            }
        }
        let named =
            |what: &str| format!("{stroke} in {} s, over time: {what}", fixed.stroke_time_s);
        let paths = named("joint angles, miss of the widest turn");
        out.rows.push(miss(paths, SOURCE, angle / widest, OVER_TIME));
        let torques = named("joint torques, miss of the largest");
        out.rows.push(miss(torques, SOURCE, torque / largest, OVER_TIME));
        for (joint, name) in
            [(SPINE_TURN, "spine's turn"), (BOTTOM_ARM, "bottom shoulder's flexion")]
        {
            out.curves.push(Curve {
                title: format!("Torque of the {name} in a {stroke} of {} s", fixed.stroke_time_s),
                x_label: "time, s".into(),
                y_label: "torque, N m".into(),
                ours: ours.iter().map(|at| (at.t_s, at.torque_n_m[joint])).collect(),
                theirs: readings(fixed.series.iter().map(|it| (it.t_s, it.tau_n_m[joint]))),
                source: SOURCE.into(),
            });
        }
    }
    Ok(())
}

/// How far the speed may be off at the product's steps and at four times as many, as shares.
const HOLDING: [(usize, f64); 2] = [(STEPS, 1e-3), (4 * STEPS, 2e-4)];
/// How far the couple may be off, within a step of the crossing, as a share of its limit.
const COUPLE: Accept = Accept::Within(0.1);

/// With a bottom hand that holds the handle, on paths that turn the handle in that hand, so that it holds and gives way.
pub fn holding() -> Result<Checked, CheckFault> {
    let (prototype, holding) = (reference::prototype()?, reference::holding_law()?);
    let mut rows = Vec::new();
    for (stroke, fixed) in &holding.fixed_time {
        for (steps, most) in HOLDING {
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

//! A swing slower or faster than the fastest controlled one: control is lost alike.

use super::super::pilot::PilotRig;
use super::super::{figure, miss, worse};
use super::SOURCE;
use crate::files::reference;
use crate::swing::run::STEPS;
use crate::validation::{CheckFault, Checked, Curve, readings};

/// How far the error at the ball may be off.
const ERROR: f64 = 0.02;
/// How far the speed may be off.
const SPEED: f64 = 1e-3;

/// The error at the ball against the stroke time.
///
/// The file has the starting torques at two stroke times; at rest they are a part for the weight and a
/// part for the acceleration, which goes with 1/T².
pub fn check() -> Result<Checked, CheckFault> {
    let (prototype, law) = (reference::prototype()?, reference::continuous_law()?);
    let mut out = Checked::default();
    for search in law.searches_dt_0_5ms.iter().filter(|it| !it.at_other_times.is_empty()) {
        let Some(fixed) = law.fixed_time.get(&search.stroke) else { continue };
        let names = [search.stroke.as_str(), &search.player, &search.bat];
        let rig = PilotRig::of_search(&prototype, names, STEPS)?;
        let mut swinger = rig.swinger();
        let inverse = |t: f64| 1.0 / (t * t);
        let (mut ours_by_time, mut theirs_by_time, mut speed) = (Vec::new(), Vec::new(), 0.0);
        for other in &search.at_other_times {
            let time_s = other.times_fastest * search.fastest_s;
            let u = (inverse(time_s) - inverse(search.fastest_s))
                / (inverse(fixed.stroke_time_s) - inverse(search.fastest_s));
            swinger.start_torque_n_m = Some(core::array::from_fn(|j| {
                search.start_tau_n_m[j] + u * (fixed.start_tau_n_m[j] - search.start_tau_n_m[j])
            }));
            let ours = swinger.swing(time_s, None);
            let theirs = &other.crossing;
            let what = format!(
                "{}, error at the ball where 1 is the limit: × {} the fastest time",
                search.stroke, other.times_fastest
            );
            out.rows.push(figure(what, SOURCE, "", theirs.error, ours.error, ERROR));
            speed = worse(speed, (ours.bat_speed_m_s / theirs.speed_m_s - 1.0).abs());
            ours_by_time.push((time_s, ours.error));
            theirs_by_time.push((time_s, theirs.error));
        }
        let what = format!("{}, all four times: bat speed, miss", search.stroke);
        out.rows.push(miss(what, SOURCE, speed, SPEED));
        ours_by_time.sort_by(|a, b| a.0.total_cmp(&b.0));
        out.curves.push(Curve {
            title: format!(
                "Error at the ball of a hurried {}, 1 is the limit of control",
                search.stroke
            ),
            x_label: "stroke time, s".into(),
            y_label: "error".into(),
            ours: ours_by_time,
            theirs: readings(theirs_by_time),
            source: SOURCE.into(),
        });
    }
    Ok(out)
}

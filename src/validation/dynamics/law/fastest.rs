//! The fastest controlled swing: three strokes, adult and child, light to heavy bat; and one slower or faster.

use rayon::prelude::*;

use super::super::pilot::{PilotRig, search_of};
use super::super::{figure, miss, player_words, worse};
use super::{SOURCE, off};
use crate::files::reference;
use crate::files::reference::law::Search;
use crate::swing::contact::Contact;
use crate::swing::fastest_controlled::fastest_controlled;
use crate::swing::run::STEPS;
use crate::validation::{CheckFault, Checked, Curve, readings};

/// How far fastest time and bat speed may be off: one per cent.
const MOST: f64 = 1e-2;
/// How far they and any speed may be off where both start alike.
const ALIKE: f64 = 1e-3;
/// How far the errors at the ball may be off where both start alike, as shares of their tolerances.
const ERRORS: f64 = 3e-2;
/// How far the error at the ball may be off in a hurried swing.
const ERROR: f64 = 0.02;

/// One of the file's searches, and ours.
struct Pair<'a> {
    search: &'a Search,
    swing_moment_kg_m2: f64,
    /// As the product starts.
    own: Contact,
    /// From the file's torques.
    alike: Contact,
}

pub fn check() -> Result<Checked, CheckFault> {
    let (prototype, law) = (reference::prototype()?, reference::continuous_law()?);
    let searched = |search| -> Result<Pair<'_>, CheckFault> {
        let Search { stroke, player, bat, fastest_s, .. }: &Search = search;
        let names = [stroke.as_str(), player.as_str(), bat.as_str()];
        let rig = PilotRig::of_search(&prototype, names, STEPS)?;
        let mut swinger = rig.swinger();
        let own = fastest_controlled(&swinger, *fastest_s, true)?;
        swinger.start_torque_n_m = Some(search.start_tau_n_m);
        let alike = fastest_controlled(&swinger, *fastest_s, true)?;
        let swing_moment_kg_m2 = search_of(&prototype, names)?.swing_moment_kg_m2;
        Ok(Pair { search, swing_moment_kg_m2, own, alike })
    };
    let pairs = law.searches_dt_0_5ms.par_iter().map(searched);
    let pairs = pairs.collect::<Result<Vec<_>, CheckFault>>()?;
    let mut out = Checked::default();
    let (mut time, mut speed, mut errors) = (0.0, 0.0, 0.0);
    for Pair { search, own, alike, .. } in &pairs {
        let case =
            format!("{}, {}, {} bat", search.stroke, player_words(&search.player), search.bat);
        let (theirs, ours) = (search.fastest_s, own.stroke_time_s);
        out.rows.push(figure(format!("{case}: fastest time"), SOURCE, "s", theirs, ours, MOST));
        let (theirs, ours) = (search.at_fastest.speed_m_s, own.bat_speed_m_s);
        out.rows.push(figure(format!("{case}: bat speed"), SOURCE, "m/s", theirs, ours, MOST));
        let (off_speed, off_errors) = off(alike, &search.at_fastest);
        time = worse(time, (alike.stroke_time_s / search.fastest_s - 1.0).abs());
        speed = worse(speed, off_speed);
        errors = worse(errors, off_errors);
    }
    let all = |what: &str| format!("all {} searches, started alike: {what}", pairs.len());
    out.rows.push(miss(all("fastest time, miss"), SOURCE, time, ALIKE));
    out.rows.push(miss(all("bat and toe speed, miss"), SOURCE, speed, ALIKE));
    out.rows.push(miss(all("miss of the tolerances"), SOURCE, errors, ERRORS));
    for stroke in ["drive", "pull", "hook"] {
        out.curves.push(speed_by_moment(&pairs, stroke));
    }
    Ok(out)
}

fn speed_by_moment(pairs: &[Pair<'_>], stroke: &str) -> Curve {
    let adult =
        || pairs.iter().filter(|it| it.search.stroke == stroke && it.search.player == "adult");
    Curve {
        title: format!("Fastest controlled {stroke} of the adult, by the bat's swing moment"),
        x_label: "swing moment, kg m²".into(),
        y_label: "bat speed, m/s".into(),
        ours: adult().map(|it| (it.swing_moment_kg_m2, it.own.bat_speed_m_s)).collect(),
        theirs: readings(adult().map(|it| (it.swing_moment_kg_m2, it.search.at_fastest.speed_m_s))),
        source: SOURCE.into(),
    }
}

/// A swing slower or faster than the fastest: control is lost alike.
///
/// The file has the starting torques at two stroke times; at rest they are a part for the weight and a
/// part for the acceleration, which goes with 1/T².
pub fn hurried() -> Result<Checked, CheckFault> {
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
        out.rows.push(miss(what, SOURCE, speed, ALIKE));
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

//! The hit over time against another integrator: every figure at four heights, of which the worst counts.

use crate::files::reference;
use crate::files::reference::hit::{Before, Case, Splice};
use crate::impact::strike::{Struck, Until, strike};
use crate::validation::{Accept, CheckFault, Checked, Row, worse};

/// Ball speed off the bat, as a share of the closing speed, %: it may itself be near nought.
const EXIT: f64 = 0.1;
/// Contact, %: two of our steps.
const CONTACT: f64 = 1.0;
/// Bend, force and jar, %.
const FELT: f64 = 0.5;

pub(super) fn check() -> Result<Checked, CheckFault> {
    let reference = reference::hits()?;
    let source = format!(
        "two pinned bodies, a disc and two masses by Newton and Euler, {}",
        reference.made_by
    );
    let mut rows = Vec::new();
    for (held, holding) in [(false, "free"), (true, "held")] {
        for (splice, bends) in [(Splice::Stiff, "stiff splice"), (Splice::Own, "its own splice")] {
            for (before, moves) in [
                (Before::AtRest, "bat at rest"),
                (Before::Turning, "bat turning about the pickup axis"),
            ] {
                let alike = |it: &&Case| (it.held, it.splice, it.before) == (held, splice, before);
                let ours = reference
                    .cases
                    .iter()
                    .filter(alike)
                    .map(|it| Ok((it, strike(&it.hit, Until::Felt)?)))
                    .collect::<Result<Vec<_>, CheckFault>>()?;
                rows.extend(compared(&ours, &format!("{holding}, {bends}, {moves}"), &source));
            }
        }
    }
    Ok(rows.into())
}

/// One figure of several hits against theirs.
fn compared(ours: &[(&Case, Struck)], which: &str, source: &str) -> Vec<Row> {
    let row = |figure: &str, most: f64, miss: &dyn Fn(&Case, &Struck) -> f64| {
        let worst = ours.iter().map(|(case, struck)| miss(case, struck).abs()).fold(0.0, worse);
        let what = format!("hit over time, worst of {} heights: {figure}, {which}", ours.len());
        let accept = Accept::Within(most);
        Row::compared(what, source, "%", 0.0, 100.0 * worst, accept)
    };
    let mut rows = vec![
        row("ball speed off the bat, of the closing speed", EXIT, &|it, struck| {
            (struck.exit_m_s - it.found.exit_m_s) / (it.hit.ball_m_s + it.hit.bat_m_s)
        }),
        row("length of the contact", CONTACT, &|it, struck| {
            struck.contact_s / it.found.contact_s - 1.0
        }),
    ];
    if ours.iter().all(|(it, _)| it.splice == Splice::Own) {
        rows.push(row("bend of the splice", FELT, &|it, struck| {
            struck.bend_rad.abs() / it.found.bend_rad - 1.0
        }));
    }
    let hands = ours.first().map_or(0, |(it, _)| it.hit.hands.len());
    for (n, hand) in ["top hand", "bottom hand"].into_iter().enumerate().take(hands) {
        let force = format!("greatest force on the {hand}");
        rows.push(row(&force, FELT, &|it, struck| {
            share(struck.hands.get(n).map(|it| it.peak_n), it.found.hands_peak_n.get(n))
        }));
        let jar = format!("jar at the {hand}");
        rows.push(row(&jar, FELT, &|it, struck| {
            share(struck.hands.get(n).map(|it| it.impulse_n_s), it.found.hands_impulse_n_s.get(n))
        }));
    }
    rows
}

/// How far ours is off theirs; not a number where either is missing.
fn share(ours: Option<f64>, theirs: Option<&f64>) -> f64 {
    match (ours, theirs) {
        (Some(ours), Some(theirs)) => ours / theirs - 1.0,
        _ => f64::NAN,
    }
}

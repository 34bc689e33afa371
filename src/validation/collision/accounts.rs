//! What must be kept in a hit: momentum, its moment, energy; and how the hit meets another integrator as the
//! step shrinks.

use crate::files::reference;
use crate::files::reference::hit::{Before, Case, Splice};
use crate::impact::hit::Hit;
use crate::impact::strike::{STEP_S, Until, strike_in_steps};
use crate::validation::{Accept, CheckFault, Checked, Curve, Row, readings, worse};

/// As asked at first.
const MOMENTUM: f64 = 1e-9;
const MOMENT: f64 = 1e-6;
const ENERGY: f64 = 1e-3;
/// Halving the step leaves a quarter.
const SECOND_ORDER: Accept = Accept::Between(0.15, 0.35);
/// Off the middle of the face, m.
const ACROSS_M: [f64; 2] = [0.0, 0.03];

pub(super) fn check() -> Result<Checked, CheckFault> {
    let reference = reference::hits()?;
    let real = |it: &&Case| it.held && it.splice == Splice::Own && it.before == Before::Turning;
    let cases: Vec<&Case> = reference.cases.iter().filter(real).collect();
    let first = *cases.first().ok_or("there is no held bat with its own splice that turns")?;
    let mut worst = [0.0_f64; 3];
    for case in &cases {
        for across_m in ACROSS_M {
            let hit = Hit { across_m, ..case.hit.clone() };
            let it = strike_in_steps(&hit, Until::Felt, STEP_S)?.account;
            let open = [it.momentum_share, it.moment_share, it.energy_share.abs()];
            for (most, open) in worst.iter_mut().zip(open) {
                *most = worse(*most, open);
            }
        }
    }
    let mut off = Vec::new();
    for dt_s in [4.0, 2.0, 1.0, 0.5].map(|it| it * STEP_S) {
        let it = strike_in_steps(&first.hit, Until::Felt, dt_s)?;
        let exit = (it.exit_m_s / first.found.exit_m_s - 1.0).abs();
        off.push((dt_s, exit, it.account.energy_share.abs()));
    }
    let keeps = "what is kept by any bodies that act on each other";
    let kept = |what: &str, most: f64, open: f64| {
        let what = format!("kept in a hit, worst of four heights in the middle and off it: {what}");
        Row::compared(what, keeps, "", 0.0, open, Accept::Within(most))
    };
    let mut rows = vec![
        kept("momentum, share of the ball's impulse", MOMENTUM, worst[0]),
        kept("moment of momentum, share of the impulse × its arm", MOMENT, worst[1]),
        kept("energy, share of that before", ENERGY, worst[2]),
    ];
    let integrator = format!("{}, and two terms of the step", reference.made_by);
    if let [.., (_, coarse, open), (_, fine, less)] = off.as_slice() {
        let halved = |what: &str, ratio: f64| {
            let what = format!("hit in half the step, share left of the miss: {what}");
            Row::compared(what, integrator.as_str(), "", 0.25, ratio, SECOND_ORDER)
        };
        rows.push(halved("ball speed off the bat", fine / coarse));
        rows.push(halved("energy left open", less / open));
    }
    let log = libm::log10;
    let curve = Curve {
        title: "A hit's ball speed off the bat against another integrator, by the step".into(),
        x_label: "step, s, as a power of ten".into(),
        y_label: "miss, as a power of ten".into(),
        ours: off.iter().rev().map(|it| (log(it.0), log(it.1))).collect(),
        theirs: readings(off.iter().rev().map(|it| {
            let second = off[0].1 * (it.0 / off[0].0) * (it.0 / off[0].0);
            (log(it.0), log(second))
        })),
        source: "second order through the coarsest step".into(),
    };
    Ok(Checked { rows, curves: vec![curve] })
}

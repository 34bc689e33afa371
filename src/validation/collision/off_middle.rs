//! A ball off the middle of the face: against another integrator, the law of the hit against the hit over time, and
//! both against what was measured.
//!
//! Set on 2026-11-29 from the abstract of Peploe and others 2018, before the law of the hit was changed: within 20 mm
//! across and 45 mm along a ball loses less than 6 % of the best ball's speed and goes less than 10° aside. The
//! abstract gives no speeds: 25 m/s of bat and 22 m/s of ball are those this project held its hit to before. The bat
//! is the adult's reference, turning about the pickup axis.

use super::shape;
use crate::bat::Bat;
use crate::bat::shape::BatShape;
use crate::comparison::collision::{RESTITUTION, exit_speed_off_bat_m_s};
use crate::files::reference;
use crate::files::reference::off_middle::{Case, OffMiddle};
use crate::impact::ball::Ball;
use crate::impact::hand::Hand;
use crate::impact::hit::Hit;
use crate::impact::parts::Parts;
use crate::impact::splice::{CANE_PA, Cane, Hinge};
use crate::impact::strike::{Struck, Until, strike};
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use crate::measurement::plan::BALL_KG;
use crate::validation::{Accept, CheckFault, Checked, Row, worse};

const SOURCE: &str = "Peploe and others 2018, J Sports Sci 36:1407, 239 shots of 20 batters (abstract read): within 20 mm across and \
                      45 mm along less than 6 % of the best ball speed is lost, and the ball goes less than 10° aside";
/// Most that is lost, % of the best.
const LOST: f64 = 6.0;
/// Furthest aside, degrees.
const ASIDE: f64 = 10.0;
/// Furthest off the middle line and the best place, m.
const ACROSS_M: f64 = 0.020;
const ALONG_M: f64 = 0.045;
/// Speeds; the bat's 150 mm from the toe.
const BALL_M_S: f64 = 22.0;
const BAT_M_S: f64 = 25.0;
const FROM_TOE_M: f64 = 0.150;

pub(super) fn check() -> Result<Checked, CheckFault> {
    let mut rows = integrated()?;
    rows.extend([against_time("short handle")?, against_time("4")?]);
    rows.extend(published()?);
    Ok(rows.into())
}

/// Our hit over time against another integrator.
fn integrated() -> Result<Vec<Row>, CheckFault> {
    let OffMiddle { made_by, cases, .. } = reference::off_middle()?;
    let source = format!("a sphere and one rigid bat in space by Newton and Euler, {made_by}");
    let ours = cases
        .iter()
        .map(|it| Ok((it, strike(&it.hit, Until::Away)?)))
        .collect::<Result<Vec<_>, CheckFault>>()?;
    let row = |what: &str, unit, most: f64, miss: &dyn Fn(&Case, &Struck) -> f64| {
        let worst = ours.iter().map(|(case, struck)| miss(case, struck).abs()).fold(0.0, worse);
        let what = format!("ball off the middle, worst of {} places: {what}", ours.len());
        let accept = Accept::Within(most);
        Row::compared(what, source.as_str(), unit, 0.0, worst, accept)
    };
    Ok(vec![
        row("ball speed off the bat, of the closing speed", "%", 0.2, &|it, struck| {
            100.0 * (struck.exit_m_s - it.found.exit_m_s) / (it.hit.ball_m_s + it.hit.bat_m_s)
        }),
        row("way the ball goes", "°", 0.1, &|it, struck| {
            (struck.aside_rad - it.found.aside_rad).to_degrees()
        }),
        row("length of the contact", "%", 1.0, &|it, struck| {
            100.0 * (struck.contact_s / it.found.contact_s - 1.0)
        }),
    ])
}

/// A hit at a place, m from the top of the handle and m off the middle, in one and the same swing.
fn hit(shape: &BatShape, hinge_n_m: f64, hands: &[Hand], [from_top_m, across_m]: [f64; 2]) -> Hit {
    let parts = Parts::of(shape);
    let turning_rad_s = BAT_M_S / (parts.toe_m - FROM_TOE_M - PICKUP_AXIS_FROM_TOP_M);
    Hit {
        parts,
        hinge: Hinge::of(hinge_n_m, &parts),
        ball: Ball::of(BALL_KG),
        hands: hands.to_vec(),
        contact_from_top_m: from_top_m,
        across_m,
        bat_m_s: turning_rad_s * (from_top_m - PICKUP_AXIS_FROM_TOP_M),
        turns_about_m: PICKUP_AXIS_FROM_TOP_M,
        ball_m_s: BALL_M_S,
    }
}

/// As good as rigid, N m/rad.
const STIFF_N_M: f64 = 1e7;
/// The law against the hit over time: as asked of the rigid limit, of the speed in the middle, %.
const LAW: f64 = 0.5;

/// The law of the hit against the hit over time, stiff and free, over the middle of the face.
fn against_time(size: &str) -> Result<Row, CheckFault> {
    let shape = shape(size)?;
    let bat = shape.bat("reference")?;
    let mut worst = 0.0;
    for from_toe_m in [0.08, 0.15, 0.22] {
        let from_top_m = shape.length_m() - from_toe_m;
        let lost = |across_m: f64, exit: &dyn Fn(&Hit) -> Result<f64, CheckFault>| {
            let [off, middle] = [across_m, 0.0]
                .map(|across_m| exit(&hit(&shape, STIFF_N_M, &[], [from_top_m, across_m])));
            Ok::<f64, CheckFault>(100.0 * (1.0 - off? / middle?))
        };
        for across_m in [0.01, 0.02, 0.03] {
            let law = lost(across_m, &|it| Ok(law(&bat, it)))?;
            let over_time = lost(across_m, &|it| Ok(strike(it, Until::Away)?.exit_m_s))?;
            worst = worse(worst, (law - over_time).abs());
        }
    }
    let what = format!(
        "ball off the middle, {size}: speed lost by the law of the hit less by the stiff free hit over time, worst of nine places"
    );
    let source = "the engine's bodies with a ball that yields, followed over the contact";
    Ok(Row::compared(what, source, "%", 0.0, worst, Accept::Within(LAW)))
}

fn law(bat: &Bat, it: &Hit) -> f64 {
    let place = [it.contact_from_top_m, it.across_m];
    exit_speed_off_bat_m_s(bat, place, it.bat_m_s, it.ball_m_s, BALL_KG, RESTITUTION.value)
}

/// Law and hit against what was measured.
fn published() -> Result<Vec<Row>, CheckFault> {
    let shape = shape("short handle")?;
    let bat = shape.bat("reference")?;
    let hands = [0.060, 0.165].map(|at_m| Hand::of(0.43, at_m, 400.0, 0.034));
    let hinge_n_m = Cane::of(CANE_PA[1]).hinge_n_m(&shape.handle);
    let held = |place: [f64; 2]| hit(&shape, hinge_n_m, &hands, place);
    let toe_m = shape.length_m();
    let mut rows = lost("law of the hit", toe_m, &|place| Ok(law(&bat, &held(place))))?;
    rows.extend(lost("hit over time, held", toe_m, &|place| {
        Ok(strike(&held(place), Until::Away)?.exit_m_s)
    })?);
    let place = [toe_m - FROM_TOE_M, ACROSS_M];
    let aside = strike(&held(place), Until::Away)?.aside_rad.to_degrees();
    let what = "ball off the middle, hit over time, held: way aside 20 mm across";
    let row = Row::compared(what, SOURCE, "°", ASIDE, aside, Accept::AtMost);
    rows.push(row.noted(
        "on a smooth, flat face; with friction and a bulge of 2 mm 7° (another integrator)",
    ));
    Ok(rows)
}

/// Ball speed off the face at a place: m from the top of the handle, m off the middle.
type Exit<'a> = &'a dyn Fn([f64; 2]) -> Result<f64, CheckFault>;

/// Found one after another, at 170 mm from the toe but for what is said to be of the integrator's own bat.
const WHY: &str = "theirs: resultant ball speed against lines through the distances, ball and bat speeds not read. Ours by its parts, 20 mm \
                   across: a rigid bat and an instant contact 8.3 %; that the face turns under the ball, whose centre stands 56 mm over \
                   the axis of twist, 1.1 less; the hands 0.15 less; the whole speed in place of that out of the face 0.05 less; a splice \
                   that bends nothing. Left out: friction (none) and a face that bulges by 2 mm (0.6 to 0.7 less; another integrator), a \
                   blade that yields in twist (0.9 less to 0.5 more, a chain of slices of 0.8 to 0.25 GPa, estimated once). With a ball \
                   of 10 m/s 5.8 %, of 30 m/s 7.8 %";

/// The three losses of one way to compute a hit.
fn lost(which: &str, toe_m: f64, exit: Exit<'_>) -> Result<Vec<Row>, CheckFault> {
    let mut best = (0.0, f64::NEG_INFINITY);
    for n in 25..=150 {
        let from_top_m = toe_m - 2e-3 * f64::from(n);
        let speed = exit([from_top_m, 0.0])?;
        if speed > best.1 {
            best = (from_top_m, speed);
        }
    }
    let lost = |along_m: f64, across_m: f64| -> Result<f64, CheckFault> {
        let [up, down] = [-along_m, along_m].map(|by| exit([best.0 + by, across_m]));
        Ok(worse(100.0 * (1.0 - up? / best.1), 100.0 * (1.0 - down? / best.1)))
    };
    let row = |what: &str, ours: f64| {
        let what = format!("ball off the middle, {which}: speed lost {what}");
        let row = Row::compared(what, SOURCE, "%", LOST, ours, Accept::AtMost);
        row.noted(WHY)
    };
    Ok(vec![
        row("20 mm across", lost(0.0, ACROSS_M)?),
        row("45 mm along, the worse way", lost(ALONG_M, 0.0)?),
        row("20 mm across and 45 mm along, the worse way", lost(ALONG_M, ACROSS_M)?),
    ])
}

//! Two hundred drawn players, bats and torques: the distribution of the miss, not only the nominal case.
//!
//! Torques that nobody steers whip the joints to 60–380 rad/s, where strokes stay below 40 rad/s. So the step
//! that is needed goes by how far a joint turns in it.

use rayon::prelude::*;

use super::given_torques::{Given, PRODUCT_STEPS, State};
use super::own_strokes::largest_turn_in_a_step_rad;
use super::{miss, worse};
use crate::files::reference;
use crate::files::reference::motions::{Drawn, DrawnCase};
use crate::frames::DVec3;
use crate::player::joints::JOINT_COUNT;
use crate::validation::{Accept, CheckFault, Checked, Curve, Row, readings};

const SOURCE: &str =
    "200 draws, seed stored: Pinocchio 4.1.0 with SciPy 1.17.1's DOP853; MuJoCo 4.0.0 beside it";
/// How far the toe's speed may be off: half a per cent.
const MOST: f64 = 5e-3;
/// How far the worst of all may be off at the product's step, whatever its joints do: it must not run away.
const MOST_WHIPPED: f64 = 0.1;
/// A joint's turn in one step up to which toe speeds must be within half a per cent, rad.
const TURN_IN_A_STEP_RAD: f64 = 0.2;
/// Steps at which all 200 must be within half a per cent: 0.5 ms.
const FINE_STEPS: usize = 500;

/// One draw at its end.
struct End {
    /// Miss of the toe's speed as a share.
    speed: f64,
    /// Miss of the toe's place, m.
    place_m: f64,
    /// Largest turn of a joint in a step, rad.
    turn_rad: f64,
    /// How far the two outside programs differ, as a share of the speed.
    outside: f64,
}

fn end(drawn: &Drawn, case: &DrawnCase, steps: usize) -> Result<End, CheckFault> {
    let dt = drawn.duration_s / steps as f64;
    let given = Given::<JOINT_COUNT>::new(&drawn.chain(case))?;
    let law = drawn.law(case);
    let mut fastest = 0.0_f64;
    let end = given.swing(
        State::new(&case.q0_rad, &case.v0_rad_s)?,
        drawn.duration_s,
        steps,
        |t, s| law.at(t, &s.v),
        |_, s| fastest = s.v.iter().fold(fastest, |m, v| m.max(v.abs())),
    );
    let (p, v) = given.toe(&end);
    let theirs_m_s = DVec3::from_array(case.toe_velocity_m_s).length();
    Ok(End {
        speed: (v.length() / theirs_m_s - 1.0).abs(),
        place_m: p.distance(DVec3::from_array(case.toe_m)),
        turn_rad: fastest * dt,
        outside: case.mujoco_off_by_m_s / theirs_m_s,
    })
}

fn ends(drawn: &Drawn, steps: usize) -> Result<Vec<End>, CheckFault> {
    drawn.cases.par_iter().map(|case| end(drawn, case, steps)).collect()
}

/// Values from the smallest to the largest, one that is not a number last.
fn sorted(values: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut values: Vec<f64> = values.collect();
    values.sort_by(f64::total_cmp);
    values
}

/// The value that so large a share of the sorted values does not pass.
fn share_of(sorted: &[f64], share: f64) -> f64 {
    let last = sorted.len().saturating_sub(1);
    sorted.get((share * last as f64) as usize).copied().unwrap_or(f64::NAN)
}

pub(super) fn check() -> Result<Checked, CheckFault> {
    let drawn = reference::drawn_chains()?;
    let ends_160 = ends(&drawn, PRODUCT_STEPS)?;
    let speeds = sorted(ends_160.iter().map(|it| it.speed));
    let places = sorted(ends_160.iter().map(|it| it.place_m));
    let (calm, whipped): (Vec<&End>, Vec<&End>) =
        ends_160.iter().partition(|it| it.turn_rad < TURN_IN_A_STEP_RAD);
    let worst = calm.iter().fold(0.0, |m, it| worse(m, it.speed));
    let furthest = whipped.iter().fold(0.0, |m, it| worse(m, it.turn_rad));
    let named =
        |which: &str| format!("toe speed of 200 draws, miss at the product's step: {which}");
    let over = speeds.iter().filter(|it| **it > MOST).count();
    let beyond = format!(
        "{over} of the 200 miss by more than 0.5 %, all of them among the {} whose torques, steered by \
         nobody, whip a joint on by 0.2 to {furthest:.2} rad in a step; at 0.5 ms every one comes in",
        whipped.len()
    );
    let calm_words = format!("largest of the {} below 0.2 rad a step", calm.len());
    let place = "toe's place of 200 draws, 95 of 100 below, of a sweep of 1 m";
    let rows = vec![
        miss(named("median"), SOURCE, share_of(&speeds, 0.5), MOST),
        miss(named("95 of 100 below"), SOURCE, share_of(&speeds, 0.95), MOST),
        miss(named("largest"), SOURCE, share_of(&speeds, 1.0), MOST_WHIPPED).noted(beyond),
        miss(named(&calm_words), SOURCE, worst, MOST),
        miss(place, SOURCE, share_of(&places, 0.95), MOST),
        Row::compared(
            "furthest turn of a joint in a step of a stroke, at most where 0.5 % holds",
            "the draws above; six strokes of an adult and a child, light and heavy bat",
            "rad",
            TURN_IN_A_STEP_RAD,
            largest_turn_in_a_step_rad()?,
            Accept::AtMost,
        )
        .noted("the step serves strokes with room to spare; it does not serve whipping joints"),
    ];
    let outside = sorted(ends_160.iter().map(|it| it.outside));
    Ok(Checked { rows, curves: vec![distribution(&speeds, &outside), by_turn(&ends_160)] })
}

/// The same at a step so short that it follows every draw, whatever its joints do.
pub(super) fn finely() -> Result<Checked, CheckFault> {
    let drawn = reference::drawn_chains()?;
    let speeds = sorted(ends(&drawn, FINE_STEPS)?.iter().map(|it| it.speed));
    let row = |which: &str, share: f64| {
        let what = format!("toe speed of 200 draws, miss at 0.5 ms: {which}");
        miss(what, SOURCE, share_of(&speeds, share), MOST)
    };
    Ok(vec![row("median", 0.5), row("95 of 100 below", 0.95), row("largest", 1.0)].into())
}

/// A share as a power of ten of per cent; what is below 1e-6 % is drawn there.
fn power(share: f64) -> f64 {
    libm::log10((100.0 * share).max(1e-6))
}

fn distribution(ours: &[f64], outside: &[f64]) -> Curve {
    let points = |misses: &[f64]| -> Vec<(f64, f64)> {
        let place = |n: usize| 100.0 * (n as f64 + 0.5) / misses.len() as f64;
        misses.iter().enumerate().map(|(n, it)| (place(n), power(*it))).collect()
    };
    Curve {
        title: "200 draws: the miss of the toe's speed, sorted".into(),
        x_label: "draws with a smaller miss, %".into(),
        y_label: "miss in %, as a power of ten (−1 is 0.1 %)".into(),
        ours: points(ours),
        theirs: readings(points(outside).into_iter().step_by(5)),
        source: "how far the two outside programs differ from each other, sorted".into(),
    }
}

/// The miss against the turn in a step: ours are the draws in order of it, the readings mark half a per cent.
fn by_turn(ends: &[End]) -> Curve {
    let mut by_turn: Vec<(f64, f64)> =
        ends.iter().map(|it| (libm::log10(it.turn_rad), power(it.speed))).collect();
    by_turn.sort_by(|a, b| a.0.total_cmp(&b.0));
    // The largest miss of every ten draws: what a step must be chosen by.
    let worst = by_turn.chunks(10).map(|ten| {
        let middle = ten.iter().map(|it| it.0).sum::<f64>() / ten.len() as f64;
        (middle, ten.iter().map(|it| it.1).fold(f64::NEG_INFINITY, f64::max))
    });
    let ours: Vec<(f64, f64)> = worst.collect();
    Curve {
        title: "200 draws: largest miss of every ten, against how far a joint turns in a step"
            .into(),
        x_label: "turn in a step, rad, as a power of ten".into(),
        y_label: "miss in %, as a power of ten (−1 is 0.1 %)".into(),
        theirs: readings(ours.iter().map(|it| (it.0, power(MOST)))),
        ours,
        source: "half a per cent".into(),
    }
}

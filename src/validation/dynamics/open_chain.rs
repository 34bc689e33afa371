//! One arm and a bat under given torques, at the step of the product.

use super::given_torques::{Given, PRODUCT_STEPS, State, each_joint, last_length, off_by_share};
use super::{PINOCCHIO, figure, miss, player_words, worse};
use crate::files::reference;
use crate::files::reference::motions::{Case, Swing};
use crate::frames::DVec3;
use crate::validation::{Accept, CheckFault, Checked, Curve, Reading, Row, readings};

const N: usize = 11;
/// How far toe speed and joint paths may be off: half a percent.
const MOST: f64 = 5e-3;
/// Steps of the study of the step, coarse to fine; each a multiple of the files' ten samples.
const STEPS: [usize; 6] = [120, PRODUCT_STEPS, 200, 250, 320, 500];

/// One of the file's swings, followed by ours.
struct Followed {
    /// Largest miss of the toe's velocity over the samples, as a share of its greatest speed.
    toe_velocity: f64,
    /// Speed of the toe at the end, m/s.
    last_m_s: f64,
    /// Largest miss of a joint's angle over the samples, as a share of the widest turn of any joint.
    joints: f64,
    /// Time, s, and speed of the toe, m/s, at every step.
    toe_speed: Vec<(f64, f64)>,
    /// Fastest joint, rad/s.
    fastest_rad_s: f64,
}

fn follow(swing: &Swing, case: &Case, steps: usize) -> Result<Followed, CheckFault> {
    let given = Given::<N>::new(&swing.chain)?;
    let law = swing.law(case);
    let every = steps / (case.times_s.len() - 1);
    let dt = swing.duration_s / steps as f64;
    let from = State::new(&swing.q0_rad, &swing.v0_rad_s)?;
    let (mut toes, mut angles) = (Vec::new(), Vec::new());
    let (mut toe_speed, mut fastest_rad_s) = (Vec::new(), 0.0_f64);
    given.swing(
        from,
        swing.duration_s,
        steps,
        |t, s| law.at(t, &s.v),
        |i, s| {
            let velocity = given.toe(s).1;
            toe_speed.push((i as f64 * dt, velocity.length()));
            fastest_rad_s = s.v.iter().fold(fastest_rad_s, |m, v| m.max(v.abs()));
            if i % every == 0 {
                toes.push(velocity);
                angles.push(s.q);
            }
        },
    );
    let (mut off, mut widest) = (0.0, 0.0_f64);
    for (ours, theirs) in angles.iter().zip(&case.q_rad) {
        let theirs = each_joint::<N>(theirs)?;
        for ((a, b), start) in ours.iter().zip(theirs).zip(&from.q) {
            off = worse(off, (a - b).abs());
            widest = widest.max((b - start).abs());
        }
    }
    Ok(Followed {
        toe_velocity: off_by_share(&toes, &case.toe_velocity_m_s),
        last_m_s: toe_speed.last().map_or(f64::NAN, |it| it.1),
        joints: off / widest,
        toe_speed,
        fastest_rad_s,
    })
}

pub(super) fn check() -> Result<Checked, CheckFault> {
    let mut out = Checked::default();
    for swing in reference::open_chain()?.chains {
        let who = player_words(&swing.name);
        let (mut toe_velocity, mut joints) = (0.0, 0.0);
        for case in &swing.cases {
            let ours = follow(&swing, case, PRODUCT_STEPS)?;
            let theirs_m_s = last_length(&case.toe_velocity_m_s);
            let what = format!("one arm, {who}: toe speed at the end, torques × {}", case.scale);
            let turn = ours.fastest_rad_s * swing.duration_s / PRODUCT_STEPS as f64;
            out.rows.push(
                figure(what, PINOCCHIO, "m/s", theirs_m_s, ours.last_m_s, MOST).noted(format!(
                    "a joint turns by up to {turn:.2} rad in one step of the product"
                )),
            );
            toe_velocity = worse(toe_velocity, ours.toe_velocity);
            joints = worse(joints, ours.joints);
            if case.scale == 1.0 {
                out.curves.push(Curve {
                    title: format!("Toe speed of one arm and a bat, {who}, torques given"),
                    x_label: "time, s".into(),
                    y_label: "toe speed, m/s".into(),
                    ours: ours.toe_speed,
                    theirs: lengths(case, &case.toe_velocity_m_s),
                    source: PINOCCHIO.into(),
                });
            }
        }
        let whole = format!("one arm, {who}: toe velocity, miss of its peak");
        out.rows.push(miss(whole, PINOCCHIO, toe_velocity, MOST));
        let paths = format!("one arm, {who}: joint paths, miss of the widest");
        out.rows.push(miss(paths, PINOCCHIO, joints, MOST));
        out.rows.push(accelerations(&swing)?);
    }
    Ok(out)
}

/// Lengths of a case's vectors at its samples.
pub(super) fn lengths(case: &Case, vectors: &[[f64; 3]]) -> Vec<Reading> {
    let length = |v: &[f64; 3]| DVec3::from_array(*v).length();
    readings(case.times_s.iter().zip(vectors).map(|(t, v)| (*t, length(v))))
}

/// One state, no step in between.
fn accelerations(swing: &Swing) -> Result<Row, CheckFault> {
    let it = &swing.evaluation;
    let given = Given::<N>::new(&swing.chain)?;
    let k = given.kinematics(&State::new(&it.q_rad, &it.v_rad_s)?);
    let ours = given.closed(&k, 0.0).accelerations(&each_joint(&it.tau_n_m)?);
    let what = format!("one arm, {}: accelerations of one state", player_words(&swing.name));
    Ok(miss(what, PINOCCHIO, off_by_largest(&ours, &it.acceleration_rad_s2), ROUNDING))
}

/// Two routes to one number in double precision, as a share of the largest.
pub(super) const ROUNDING: f64 = 1e-9;

/// Largest difference as a share of the largest of theirs.
pub(super) fn off_by_largest(ours: &[f64], theirs: &[f64]) -> f64 {
    let largest = theirs.iter().fold(0.0_f64, |m, a| m.max(a.abs()));
    ours.iter().zip(theirs).fold(0.0, |m, (a, b)| worse(m, (a - b).abs() / largest))
}

/// How the miss shrinks with the step, and the longest step that holds.
pub(super) fn order() -> Result<Checked, CheckFault> {
    let mut out = Checked::default();
    let mut worst = vec![0.0; STEPS.len()];
    let mut orders = Vec::new();
    let mut duration_s = 0.0;
    for swing in reference::open_chain()?.chains {
        duration_s = swing.duration_s;
        for case in &swing.cases {
            for (worst, steps) in worst.iter_mut().zip(STEPS) {
                *worst = worse(*worst, follow(&swing, case, steps)?.toe_velocity);
            }
            // The joint speeds at the largest torques need steps below 1 ms before the order shows.
            let [coarse, fine] = [500, 1000].map(|n| follow(&swing, case, n));
            orders.push(libm::log2(coarse?.toe_velocity / fine?.toe_velocity));
        }
    }
    out.rows.extend(order_rows("one arm", &orders));
    let step_ms = |steps: usize| 1e3 * duration_s / steps as f64;
    let holding = STEPS.iter().zip(&worst).rev().take_while(|(_, miss)| **miss <= MOST).last();
    let what = "one arm, all six swings: longest step within 0.5 %, at least the product's";
    let theirs_ms = step_ms(PRODUCT_STEPS);
    let ours_ms = holding.map_or(0.0, |(steps, _)| step_ms(*steps));
    out.rows.push(
        Row::compared(what, PINOCCHIO, "ms", theirs_ms, ours_ms, Accept::AtLeast).noted(
            "torques that nobody steers whip a joint at up to 270 rad/s, and the files' passive damping \
             decays at up to 2,000 /s, faster than any rule of this kind follows at 2 ms; a stroke has \
             no such damping, and none of its joints turns as fast: slow hooks, whose steps are 3.1 ms long, \
             are held to the law without a step",
        ),
    );
    let points = STEPS.iter().zip(&worst).map(|(n, m)| (step_ms(*n), libm::log10(100.0 * m)));
    let finest = libm::log10(100.0 * worst[STEPS.len() - 1]);
    let fourth = |n: &usize| finest + 4.0 * libm::log10(STEPS[STEPS.len() - 1] as f64 / *n as f64);
    out.curves.push(Curve {
        title: "One arm and a bat: the miss of the toe's velocity against the step, worst of six"
            .into(),
        x_label: "step, ms".into(),
        y_label: "miss, % of the peak, as a power of ten".into(),
        ours: points.rev().collect(),
        theirs: readings(STEPS.iter().rev().map(|n| (step_ms(*n), fourth(n)))),
        source: "fourth power of the step, through our finest".into(),
    });
    Ok(out)
}

/// Lowest and highest of the measured orders against that of the rule.
pub(super) fn order_rows(what: &str, orders: &[f64]) -> [Row; 2] {
    let low = orders.iter().copied().fold(f64::INFINITY, f64::min);
    let high = orders.iter().copied().fold(0.0, worse);
    [("lowest", low), ("highest", high)].map(|(which, order)| {
        let what = format!("{what}, order of convergence in six swings: {which}");
        let source = "classical Runge–Kutta rule, any text on it";
        Row::compared(what, source, "", 4.0, order, Accept::Between(3.7, 4.4))
    })
}

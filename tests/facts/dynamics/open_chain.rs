//! One arm and a bat under given torques (`open_chain.json`: Pinocchio and DOP853; MuJoCo agrees).

use backlift::frames::DVec3;

use super::drawn_chains::TURN_IN_A_STEP_RAD;
use super::given_torques::{Given, PRODUCT_STEPS, State, off_by_share, torque};
use crate::reference::motions::{Case, Swing, Swings};
use crate::reference::read;

const N: usize = 10;

/// Largest miss of the toe's velocity over the samples, as a share of its greatest speed, and of the
/// last speed.
fn off(swing: &Swing, case: &Case, steps: usize) -> (f64, f64) {
    let given = Given::<N>::new(&swing.chain);
    let law = swing.law(case);
    let every = steps / (case.times_s.len() - 1);
    let mut toes = Vec::new();
    given.swing(
        State::new(&swing.q0_rad, &swing.v0_rad_s),
        swing.duration_s,
        steps,
        |t, v| torque(&law, t, v),
        |i, s| {
            if i % every == 0 {
                toes.push(given.toe(s).1);
            }
        },
    );
    let end = DVec3::from_array(*case.toe_velocity_m_s.last().unwrap()).length();
    let last = (toes.last().unwrap().length() / end - 1.0).abs();
    (off_by_share(&toes, &case.toe_velocity_m_s), last)
}

/// What the step must follow, along the swing at 1 ms: the fastest decay that the file's passive damping
/// asks for (largest eigenvalue of `M⁻¹D`), 1/s, and the fastest joint, rad/s.
fn demands(swing: &Swing, case: &Case) -> (f64, f64) {
    let given = Given::<N>::new(&swing.chain);
    let law = swing.law(case);
    let root = |j: usize| swing.damping_n_m_s_per_rad[j].sqrt();
    let (mut decay, mut rate) = (0.0_f64, 0.0_f64);
    given.swing(
        State::new(&swing.q0_rad, &swing.v0_rad_s),
        swing.duration_s,
        250,
        |t, v| torque(&law, t, v),
        |_, s| {
            let P = given.closed(&given.kinematics(s), 0.0).P;
            let damped =
                nalgebra::SMatrix::<f64, N, N>::from_fn(|i, j| root(i) * P[i][j] * root(j));
            decay = decay.max(damped.symmetric_eigenvalues().max());
            rate = s.v.iter().fold(rate, |m, v| m.max(v.abs()));
        },
    );
    (decay, rate)
}

/// Beyond this product of decay rate and step the classical Runge–Kutta rule is unstable (any text on it).
const STABLE: f64 = 2.785;

/// At the product step half the cases are beyond what any fourth-order rule can follow: the file's
/// passive damping near a gimbal position of the wrist decays within half a step, or a joint whips round
/// by more than 0.2 rad in a step. Where neither is so, and at 1 ms everywhere, the toe is as fast.
#[test]
fn reference_one_arm_swings_the_toe_as_fast() {
    for swing in read::<Swings>("open_chain.json").chains {
        for case in &swing.cases {
            let dt = swing.duration_s / PRODUCT_STEPS as f64;
            let (decay, turn) = demands(&swing, case);
            let (decay, turn) = (decay * dt, turn * dt);
            let (product, product_last) = off(&swing, case, PRODUCT_STEPS);
            let (fine, fine_last) = off(&swing, case, 250);
            println!(
                "open {} x{}: product step {product:.1e} (last {product_last:.1e}; decay {decay:.2}, turn {turn:.2} rad), 1 ms {fine:.1e} ({fine_last:.1e})",
                swing.name, case.scale
            );
            let followed = decay < STABLE && turn < TURN_IN_A_STEP_RAD;
            assert!(product < 5e-3 || !followed, "{} {}", swing.name, case.scale);
            assert!(fine_last < 1e-3 && fine < 1e-3, "{} {}", swing.name, case.scale);
        }
    }
}

/// The joint speeds at the largest amplitude need steps below 1 ms before the order shows.
#[test]
fn reference_the_miss_of_one_arm_shrinks_with_the_fourth_power_of_the_step() {
    for swing in read::<Swings>("open_chain.json").chains {
        for case in &swing.cases {
            let (coarse, fine) = (off(&swing, case, 500).0, off(&swing, case, 1000).0);
            let order = (coarse / fine).log2();
            println!("open {} x{}: order {order:.2} ({fine:.1e})", swing.name, case.scale);
            assert!((3.7..4.4).contains(&order), "{} {}: {order}", swing.name, case.scale);
        }
    }
}

#[test]
fn reference_one_arm_accelerates_as_outside() {
    for swing in read::<Swings>("open_chain.json").chains {
        let it = &swing.evaluation;
        let given = Given::<N>::new(&swing.chain);
        let k = given.kinematics(&State::new(&it.q_rad, &it.v_rad_s));
        let a = given.closed(&k, 0.0).accelerations(&it.tau_n_m[..].try_into().unwrap());
        let largest = it.acceleration_rad_s2.iter().fold(0.0_f64, |m, a| m.max(a.abs()));
        for (ours, theirs) in a.iter().zip(&it.acceleration_rad_s2) {
            assert!((ours - theirs).abs() < 1e-9 * largest, "{ours} against {theirs}");
        }
    }
}

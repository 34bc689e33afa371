//! One arm and a bat under given torques (`open_chain.json`: Pinocchio and DOP853; MuJoCo agrees).

use backlift::frames::DVec3;

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

/// The file's passive damping near a gimbal position of the wrist decays faster than the classical
/// Runge–Kutta rule can follow at the product's 2.08 ms (stable up to a decay of 2.785 in a step, any text
/// on it; here 3.4 to 4.2), and two joints whip round by more than 0.2 rad in such a step. The product has
/// no passive damping. At 1.25 ms the step follows every case, at 1 ms closely.
#[test]
fn reference_one_arm_swings_the_toe_as_fast() {
    for swing in read::<Swings>("open_chain.json").chains {
        for case in &swing.cases {
            let (decay_1_s, rate_rad_s) = demands(&swing, case);
            let [product, middle, fine] = [PRODUCT_STEPS, 200, 250].map(|n| off(&swing, case, n));
            println!(
                "open {} x{}: decay {decay_1_s:.0} /s, {rate_rad_s:.0} rad/s; miss, last at 2.08 ms {:.1e} {:.1e}, 1.25 ms {:.1e} {:.1e}, 1 ms {:.1e} {:.1e}",
                swing.name, case.scale, product.0, product.1, middle.0, middle.1, fine.0, fine.1
            );
            assert!(decay_1_s * swing.duration_s / PRODUCT_STEPS as f64 > 2.785);

            assert!(middle.0 < 5e-3 && middle.1 < 5e-3, "{} {}", swing.name, case.scale);

            assert!(fine.0 < 1e-3 && fine.1 < 1e-3, "{} {}", swing.name, case.scale);
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

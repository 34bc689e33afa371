//! Two routes to one number, on the chain of an adult with a bat at states drawn at random.

use backlift::dynamics::closed_loop::{ClosedChain, gap_rows};
use backlift::dynamics::mass_matrix::MassMatrix;
use backlift::dynamics::tree::Kinematics;
use backlift::frames::{DVec3, STANDARD_GRAVITY_M_S2};
use backlift::player::joints::JOINT_COUNT;
use backlift::swing::chain::Chain;
use proptest::array::uniform18;
use proptest::prelude::*;

use crate::swing::pilot::{pilot_bat, pilot_chain, pilot_player};

const N: usize = JOINT_COUNT;

fn chain() -> Chain {
    pilot_chain(&pilot_player(1.80, 78.0, 1.0), &pilot_bat(1.20, 0.85, 0.53))
}

fn at(chain: &Chain, q: &[f64; N], v: &[f64; N], a_base: DVec3) -> (Kinematics<N>, MassMatrix<N>) {
    let mut k = chain.tree.kinematics();
    chain.tree.forward_kinematics(q, v, a_base, &mut k);
    let mut m = MassMatrix::new(&chain.tree);
    m.fill(&chain.tree, &k);
    (k, m)
}

/// `M x`, with the lower triangle alone.
fn times(m: &MassMatrix<N>, x: &[f64; N]) -> [f64; N] {
    std::array::from_fn(|i| (0..N).map(|j| if j <= i { m.M[i][j] } else { m.M[j][i] } * x[j]).sum())
}

fn close(a: &[f64; N], b: &[f64; N], share: f64) -> bool {
    let largest = a.iter().chain(b).fold(1e-300_f64, |m, x| m.max(x.abs()));
    a.iter().zip(b).all(|(a, b)| (a - b).abs() <= share * largest)
}

const UP: DVec3 = DVec3::new(0.0, 0.0, STANDARD_GRAVITY_M_S2);

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    #[test]
    fn half_the_mass_matrix_between_the_rates_is_the_kinetic_energy(
        q in uniform18(-2.0..2.0_f64), v in uniform18(-20.0..20.0_f64),
    ) {
        let chain = chain();
        let (k, m) = at(&chain, &q, &v, UP);
        let half: f64 = 0.5 * times(&m, &v).iter().zip(&v).map(|(a, b)| a * b).sum::<f64>();
        let (kinetic, _) = chain.tree.energy_j(&k, STANDARD_GRAVITY_M_S2);
        prop_assert!((half / kinetic - 1.0).abs() < 1e-12, "{half} {kinetic}");
    }

    #[test]
    fn inverse_dynamics_is_the_mass_matrix_times_the_accelerations_and_the_bias(
        q in uniform18(-2.0..2.0_f64), v in uniform18(-20.0..20.0_f64), a in uniform18(-300.0..300.0_f64),
    ) {
        let chain = chain();
        let (k, m) = at(&chain, &q, &v, UP);
        prop_assert!(close(&chain.tree.inverse_dynamics(&k, &[0.0; N]), &m.bias, 1e-12));
        let mut sum = times(&m, &a);
        for (s, b) in sum.iter_mut().zip(&m.bias) {
            *s += b;
        }
        prop_assert!(close(&chain.tree.inverse_dynamics(&k, &a), &sum, 1e-12));
    }

    #[test]
    fn torques_come_back_from_the_accelerations_they_cause(
        q in uniform18(-2.0..2.0_f64), v in uniform18(-20.0..20.0_f64), tau in uniform18(-60.0..60.0_f64),
    ) {
        let chain = chain();
        let (k, m) = at(&chain, &q, &v, UP);
        let open = ClosedChain::new(&chain.tree, &k, &m, None, 0.0);
        let back = chain.tree.inverse_dynamics(&k, &open.accelerations(&tau));
        // Near a gimbal position some accelerations are huge: rounding counts against the terms M a.
        let terms = |a: &[f64; N]| {
            let a = a.map(f64::abs);
            (0..N).map(|i| (0..N).map(|j| m.M[i.max(j)][i.min(j)].abs() * a[j]).sum::<f64>()).fold(1.0, f64::max)
        };
        let near = |x: &[f64; N], y: &[f64; N], a: &[f64; N]| {
            x.iter().zip(y).all(|(x, y)| (x - y).abs() < 1e-11 * terms(a))
        };
        prop_assert!(near(&back, &tau, &open.accelerations(&tau)), "{back:?} {tau:?}");

        // With the bottom hand on the handle they come back with the hand's force added, and the gap
        // does not accelerate.
        let closed = ClosedChain::new(&chain.tree, &k, &m, Some(&chain.bottom_hand), 0.0);
        let a = closed.accelerations(&tau);
        let force = closed.joint_force_n(&tau);
        let (rows, bias) = gap_rows(&chain.tree, &k, &chain.bottom_hand);
        let with_hand: [f64; N] = std::array::from_fn(|j| tau[j] + rows[j].dot(force));
        prop_assert!(near(&chain.tree.inverse_dynamics(&k, &a), &with_hand, &a));
        let gap = rows.iter().zip(&a).fold(bias, |s, (r, a)| s + *r * *a);
        let size = rows.iter().zip(&a).fold(bias.length(), |s, (r, a)| s + r.length() * a.abs());
        prop_assert!(gap.length() < 1e-10 * size, "{gap}");
    }

    /// The rate of kinetic and potential energy, by differences, is the power of the torques
    /// (away from gimbal positions, where differences drown in rounding).
    #[test]
    fn power_in_is_the_rate_of_the_energy(
        q in uniform18(-1.0..1.0_f64), v in uniform18(-8.0..8.0_f64), tau in uniform18(-60.0..60.0_f64),
    ) {
        let chain = chain();
        let (k, m) = at(&chain, &q, &v, UP);
        let open = ClosedChain::new(&chain.tree, &k, &m, None, 0.0);
        let a = open.accelerations(&tau);
        let energy = |h: f64| {
            let q = std::array::from_fn(|j| q[j] + h * v[j] + 0.5 * h * h * a[j]);
            let v = std::array::from_fn(|j| v[j] + h * a[j]);
            let (kinetic, potential) = chain.tree.energy_j(&at(&chain, &q, &v, UP).0, STANDARD_GRAVITY_M_S2);
            kinetic + potential
        };
        let h = 1e-6;
        let rate = (energy(h) - energy(-h)) / (2.0 * h);
        let power: f64 = tau.iter().zip(&v).map(|(t, v)| t * v).sum();
        let scale: f64 = tau.iter().zip(&v).map(|(t, v)| (t * v).abs()).sum();
        prop_assert!((rate - power).abs() <= 1e-5 * scale.max(1.0), "{rate} {power}");
    }
}

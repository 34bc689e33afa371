//! The engine's bodies and joints without the law: what it keeps, and how it tells loads.

use backlift::bat::pendulum::swing_moment;
use backlift::dynamics::tree::{Link, Tree};
use backlift::frames::{DMat3, DVec3, STANDARD_GRAVITY_M_S2, rotation};
use backlift::measurement::bench::PendulumReading;
use backlift::swing::engine::hinges::{Hinges, free_body, world};
use backlift::swing::engine::plant::Plant;
use backlift::swing::player_stroke::Held;
use backlift::swing::run::Instantaneous;

use super::{FRESH, held};
use crate::swing::pilot::pilot_bat;

const FREE_FALL_UP: DVec3 = DVec3::new(0.0, 0.0, STANDARD_GRAVITY_M_S2);

/// The middle of a stroke.
fn mid_swing(held: &Held) -> Instantaneous {
    let mut run = Vec::new();
    held.swinger(&FRESH).swing(0.40, Some(&mut |at| run.push(at)));
    run.swap_remove(run.len() * 7 / 10)
}

fn placed(held: &Held, at: &Instantaneous) -> Plant {
    let mut plant = Plant::new(&held.chain).unwrap();
    let mut k = held.chain.tree.kinematics();
    held.chain.tree.forward_kinematics(&at.state.q, &at.state.v, DVec3::ZERO, &mut k);
    plant.place(&k, &at.state.q, &at.state.v);
    plant
}

/// Energies of player and bat at every `every`-th step of 0.1 s without torque.
fn coasting(held: &Held, at: &Instantaneous, dt: f64, every: usize) -> Vec<f64> {
    let mut plant = placed(held, at);
    let mut k = held.chain.tree.kinematics();
    let mut energy = Vec::new();
    for i in 0..=(0.1 / dt).round() as usize {
        if i.is_multiple_of(every) {
            let (q, v) = plant.state();
            held.chain.tree.forward_kinematics(&q, &v, DVec3::ZERO, &mut k);
            let (kinetic, potential) = held.chain.tree.energy_j(&k, STANDARD_GRAVITY_M_S2);
            energy.push(kinetic + potential);
        }
        plant.step(&[0.0; 17], DVec3::ZERO, FREE_FALL_UP, dt);
    }
    energy
}

#[test]
fn the_pair_keeps_energy_when_no_muscle_pulls() {
    let held = held("pull");
    let at = mid_swing(&held);
    let mut k = held.chain.tree.kinematics();
    held.chain.tree.forward_kinematics(&at.state.q, &at.state.v, DVec3::ZERO, &mut k);
    let kinetic = held.chain.tree.energy_j(&k, STANDARD_GRAVITY_M_S2).0;
    assert!(kinetic > 30.0, "{kinetic} J is no swing");
    let coarse = coasting(&held, &at, 2.5e-4, 1);
    let fine = coasting(&held, &at, 1.25e-4, 2);
    let lost = |e: f64| 100.0 * (e - coarse[0]).abs() / kinetic;
    let worst = coarse.iter().zip(&fine).map(|(c, f)| lost(2.0 * f - c)).fold(0.0, f64::max);
    assert!(worst < 0.1, "{worst} % of the kinetic energy");
}

#[test]
fn the_pair_keeps_angular_momentum_in_free_spin() {
    let bat = pilot_bat(1.20, 0.85, 0.53);
    let omega = DVec3::new(12.0, 30.0, 16.0);
    let spin = |dt: f64, every: usize| {
        let mut world = world();
        world.gravity = DVec3::ZERO;
        world.integration_parameters.dt = dt;
        let body = free_body(bat.mass_kg(), bat.com_B(), &bat.I_Com_B()).angvel(omega);
        let body = world.bodies.insert(body);
        let mut momentum = Vec::new();
        for i in 0..=(0.25 / dt).round() as usize {
            if i.is_multiple_of(every) {
                let b = &world.bodies[body];
                let R = DMat3::from_quat(b.position().rotation);
                momentum.push(R * (bat.I_Com_B() * (R.transpose() * b.angvel())));
            }
            world.step();
        }
        momentum
    };
    let (coarse, fine) = (spin(2.5e-4, 1), spin(1.25e-4, 2));
    let start = bat.I_Com_B() * omega;
    let worst = coarse
        .iter()
        .zip(&fine)
        .map(|(c, f)| 100.0 * (2.0 * f - c - start).length() / start.length())
        .fold(0.0, f64::max);
    assert!(worst < 0.1, "{worst} % of the angular momentum");
}

#[test]
fn hand_loads_sum_to_the_bats_newton_euler() {
    let held = held("pull");
    let at = mid_swing(&held);
    let mut plant = placed(&held, &at);
    let bat = &held.chain.tree.links()[held.chain.link.bat];
    let dt = 2.5e-4;
    let (mut worst, mut peak) = (0.0_f64, 0.0_f64);
    for _ in 0..100 {
        let before = plant.bat();
        let hands = plant.step(&at.torque_n_m, at.couple_bottom_W, at.a_base_W, dt);
        let after = plant.bat();
        let force = bat.mass_kg * ((after.v_com - before.v_com) / dt + at.a_base_W);
        let sum = hands.force_top_W + hands.force_bottom_W;
        assert!((sum - force).length() < 1e-9 * force.length().max(1.0), "{sum} {force}");
        let I = before.R * bat.I_Com * before.R.transpose();
        let (w0, w1) = (before.omega, after.omega);
        let couple = I * (w1 - w0) / dt + w0.cross(I * w0);
        let arm = |from_top_m: f64| before.R * (DVec3::new(from_top_m, 0.0, 0.0) - bat.com);
        let turning = hands.couple_top_W
            + hands.couple_bottom_W
            + arm(held.chain.grip.top_hand_m).cross(hands.force_top_W)
            + arm(held.chain.grip.bottom_hand_m).cross(hands.force_bottom_W);
        worst = worst.max((turning - couple).length());
        peak = peak.max(hands.couple_top_W.length());
    }
    // of first order in the step: measured 7.5e-3, half of it at half the step
    assert!(worst < 1e-2 * peak, "{worst} of {peak} N m");
}

#[test]
fn the_bench_formula_gives_back_the_swing_moment_that_swung_on_the_engine() {
    let bat = pilot_bat(1.20, 0.85, 0.53);
    let (pivot_from_top_m, amplitude_rad) = (0.05, 5.0_f64.to_radians());
    let pivot = DVec3::new(pivot_from_top_m, 0.0, 0.0);
    // Hung toe down, face first: the axis lies along y of the bat.
    let hung = Link {
        parent: None,
        offset: DVec3::new(0.2, -0.1, 1.5),
        R_rest: rotation(DVec3::Y, core::f64::consts::FRAC_PI_2),
        axis: Some(DVec3::Y),
        mass_kg: bat.mass_kg(),
        com: bat.com_B() - pivot,
        I_Com: bat.I_Com_B(),
    };
    let tree = Tree::<1>::new(vec![hung]).unwrap();
    let mut world = world();
    let hinge = Hinges::insert(&mut world, &tree, None).unwrap();
    hinge.place(&mut world, &[amplitude_rad], &[0.0]);
    let dt = 1e-3;
    world.gravity = -FREE_FALL_UP;
    world.integration_parameters.dt = dt;
    let swings = 5;
    let mut crossings = Vec::new();
    let mut last = amplitude_rad;
    for i in 0.. {
        world.step();
        let ([q], _) = hinge.state(&world);
        assert!(q.is_finite() && i < 100_000);
        if last > 0.0 && q <= 0.0 {
            crossings.push((i as f64 + last / (last - q)) * dt);
            if crossings.len() > swings {
                break;
            }
        }
        last = q;
    }
    let reading = PendulumReading {
        swings: swings as u32,
        time_s: crossings[swings] - crossings[0],
        pivot_from_top_m,
        amplitude_rad,
    };
    let found = swing_moment(bat.mass_kg(), bat.balance_m(), &reading).value_kg_m2;
    let put_in = bat.swing_moment_kg_m2();
    assert!((found / put_in - 1.0).abs() < 0.002, "{found} instead of {put_in} kg m²");
}

//! The engine's bodies and joints without the law: what it keeps, and how it tells loads.

use super::super::own_strokes::pairs;
use super::super::pilot::pilot_bat;
use super::super::{figure, miss, worse};
use super::SOURCE;
use crate::bat::pendulum::swing_moment;
use crate::dynamics::tree::{Link, Tree};
use crate::files::stroke::built_in;
use crate::frames::{DMat3, DVec3, STANDARD_GRAVITY_M_S2, rotation};
use crate::measurement::bench::PendulumReading;
use crate::player::joints::{FRESH, JOINT_COUNT};
use crate::swing::engine::hinges::{Hinges, free_body, world};
use crate::swing::engine::plant::Plant;
use crate::swing::player_stroke::{Held, PlayerStroke};
use crate::swing::state::Instantaneous;
use crate::validation::{CheckFault, Checked, Row};

const FREE_FALL_UP: DVec3 = DVec3::new(0.0, 0.0, STANDARD_GRAVITY_M_S2);
/// How far anything that is kept may drift: a thousandth.
const MOST: f64 = 1e-3;
/// Steps of the two runs that are extrapolated, s.
const STEPS_S: [f64; 2] = [2.5e-4, 1.25e-4];

const NO_PULL: &str = "there is no built-in pull to look into the middle of";

pub fn check() -> Result<Checked, CheckFault> {
    let [adult, _] = pairs()?;
    let strokes = built_in()?;
    let pull = strokes.iter().find(|it| it.name == "pull").ok_or(NO_PULL)?;
    let held = PlayerStroke::new(&adult.player, pull, &adult.bats[0])?.hold(&adult.bats[0])?;
    let mut run = Vec::new();
    held.swinger(&FRESH).swing(0.40, Some(&mut |at| run.push(at)));
    let middle = run.len() * 7 / 10;
    let at = run.into_iter().nth(middle).ok_or(NO_PULL)?;
    let [forces, moments] = hand_loads(&held, &at)?;
    Ok(vec![energy(&held, &at)?, momentum()?, forces, moments, bench()?].into())
}

fn placed(held: &Held, at: &Instantaneous) -> Result<Plant, CheckFault> {
    let mut plant = Plant::new(&held.chain)?;
    let mut k = held.chain.tree.kinematics();
    held.chain.tree.forward_kinematics(&at.state.q, &at.state.v, DVec3::ZERO, &mut k);
    plant.place(&k, &at.state.q, &at.state.v);
    Ok(plant)
}

/// Kinetic energy at the start, then all energy at every `every`-th step of 0.1 s without torque, J.
fn coasting(
    held: &Held,
    at: &Instantaneous,
    dt: f64,
    every: usize,
) -> Result<(f64, Vec<f64>), CheckFault> {
    let mut plant = placed(held, at)?;
    let mut k = held.chain.tree.kinematics();
    let (mut energy, mut start) = (Vec::new(), f64::NAN);
    for i in 0..=(0.1 / dt).round() as usize {
        if i.is_multiple_of(every) {
            let (q, v) = plant.state();
            held.chain.tree.forward_kinematics(&q, &v, DVec3::ZERO, &mut k);
            let (kinetic, potential) = held.chain.tree.energy_j(&k, STANDARD_GRAVITY_M_S2);
            if energy.is_empty() {
                start = kinetic;
            }
            energy.push(kinetic + potential);
        }
        plant.step(&[0.0; JOINT_COUNT], DVec3::ZERO, FREE_FALL_UP, dt);
    }
    Ok((start, energy))
}

fn energy(held: &Held, at: &Instantaneous) -> Result<Row, CheckFault> {
    let (kinetic, coarse) = coasting(held, at, STEPS_S[0], 1)?;
    let (_, fine) = coasting(held, at, STEPS_S[1], 2)?;
    let start = coarse.first().copied().unwrap_or(f64::NAN);
    let pairs = coarse.iter().zip(&fine);
    let off = pairs.fold(0.0, |m, (c, f)| worse(m, (2.0 * f - c - start).abs() / kinetic));
    Ok(miss("engine, nobody pulling, from the middle of a pull: energy, drift", SOURCE, off, MOST))
}

fn momentum() -> Result<Row, CheckFault> {
    let bat = pilot_bat(1.20, 0.85, 0.53)?;
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
    let (coarse, fine) = (spin(STEPS_S[0], 1), spin(STEPS_S[1], 2));
    let start = bat.I_Com_B() * omega;
    let pairs = coarse.iter().zip(&fine);
    let off =
        pairs.fold(0.0, |m, (c, f)| worse(m, (2.0 * *f - *c - start).length() / start.length()));
    Ok(miss("engine, bat in free flight: angular momentum, drift", SOURCE, off, MOST))
}

/// What the hands' forces, and their moments, are off the bat's rate of momentum over 25 ms of steps of `dt`.
struct HandLoads {
    /// Largest miss of the forces, as a share.
    forces: f64,
    /// The moments' miss at every `every`-th step, N m.
    moments_n_m: Vec<DVec3>,
    /// Greatest couple of the top hand, N m.
    peak_n_m: f64,
}

fn loads_over(
    held: &Held,
    at: &Instantaneous,
    dt: f64,
    every: usize,
) -> Result<HandLoads, CheckFault> {
    let mut plant = placed(held, at)?;
    let chain = &held.chain;
    let bat = chain.tree.links().get(chain.link.bat).ok_or(NO_PULL)?;
    let mut out = HandLoads { forces: 0.0, moments_n_m: Vec::new(), peak_n_m: 0.0 };
    for i in 0..100 * every {
        let before = plant.bat();
        let hands = plant.step(&at.torque_n_m, at.couple_bottom_W, at.a_base_W, dt);
        let after = plant.bat();
        let force = bat.mass_kg * ((after.v_com - before.v_com) / dt + at.a_base_W);
        let sum = hands.top.force_W + hands.bottom.force_W;
        let I = before.R * bat.I_Com * before.R.transpose();
        let (w0, w1) = (before.omega, after.omega);
        let couple = I * (w1 - w0) / dt + w0.cross(I * w0);
        let arm = |from_top_m: f64| before.R * (DVec3::new(from_top_m, 0.0, 0.0) - bat.com);
        let turning = hands.top.couple_W
            + hands.bottom.couple_W
            + arm(chain.grip.top_hand_m).cross(hands.top.force_W)
            + arm(chain.grip.bottom_hand_m).cross(hands.bottom.force_W);
        out.forces = worse(out.forces, (sum - force).length() / force.length().max(1.0));
        if i.is_multiple_of(every) {
            out.moments_n_m.push(turning - couple);
        }
        out.peak_n_m = out.peak_n_m.max(hands.top.couple_W.length());
    }
    Ok(out)
}

/// The hands' forces sum to rounding. Their moments are of first order, and are told of as every figure of the
/// engine is: from two steps, extrapolated.
fn hand_loads(held: &Held, at: &Instantaneous) -> Result<[Row; 2], CheckFault> {
    let coarse = loads_over(held, at, STEPS_S[0], 1)?;
    let fine = loads_over(held, at, STEPS_S[1], 2)?;
    let largest = |all: &mut dyn Iterator<Item = DVec3>| {
        all.fold(0.0, |most, it| worse(most, it.length())) / fine.peak_n_m
    };
    let pairs = coarse.moments_n_m.iter().zip(&fine.moments_n_m);
    let moments = largest(&mut pairs.map(|(coarse, fine)| 2.0 * *fine - *coarse));
    let each = [&coarse, &fine].map(|it| 100.0 * largest(&mut it.moments_n_m.iter().copied()));
    let row = |what: &str, share: f64, most: f64| {
        let what = format!("engine, hands against the bat's rate of momentum: {what}");
        miss(what, "Newton and Euler on the same step", share, most)
    };
    let forces = worse(coarse.forces, fine.forces);
    Ok([
        row("forces", forces, 1e-9),
        row("moments, extrapolated from two steps", moments, 2e-3).noted(format!(
            "{:.2} % in a step of 0.25 ms and {:.2} % in half of it: of first order",
            each[0], each[1]
        )),
    ])
}

/// The bench's formula on a bat that swings on the engine.
fn bench() -> Result<Row, CheckFault> {
    let bat = pilot_bat(1.20, 0.85, 0.53)?;
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
    let tree = Tree::<1>::new(vec![hung])?;
    let mut world = world();
    let hinge = Hinges::insert(&mut world, &tree, None)?;
    hinge.place(&mut world, &[amplitude_rad], &[0.0]);
    let dt = 1e-3;
    world.gravity = -FREE_FALL_UP;
    world.integration_parameters.dt = dt;
    let swings = 5_u32;
    let mut crossings = Vec::new();
    let mut last = amplitude_rad;
    for i in 0..100_000 {
        world.step();
        let ([q], _) = hinge.state(&world);
        if last > 0.0 && q <= 0.0 {
            crossings.push((f64::from(i) + last / (last - q)) * dt);
            if crossings.len() > swings as usize {
                break;
            }
        }
        last = q;
    }
    let time_s = crossings.last().zip(crossings.first()).map_or(f64::NAN, |(b, a)| b - a);
    let reading = PendulumReading { swings, time_s, pivot_from_top_m, amplitude_rad };
    let found = swing_moment(bat.mass_kg(), bat.balance_m(), &reading).value_kg_m2;
    let what = "engine: bat on the bench pivot, inertia by the bench formula";
    Ok(figure(what, SOURCE, "kg m²", bat.swing_moment_kg_m2(), found, 2e-3))
}

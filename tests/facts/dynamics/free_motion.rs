//! What no torque may change: a bat in free flight, a bat on the bench pivot, a chain left alone.

use backlift::bat::pendulum::{amplitude_factor, pivot_moment_kg_m2};
use backlift::frames::{DMat3, DVec3};

use super::given_torques::{Given, State};
use crate::reference::free_motion::{FreeMotion, from_rows};
use crate::reference::motions::Swings;
use crate::reference::read;

/// Three hinges through the centre of mass and no gravity: a free body, with the intermediate axis
/// among the cases. 2.08 ms a step.
#[test]
fn reference_a_spinning_bat_tumbles_as_outside_and_keeps_momentum_and_energy() {
    let spin = read::<FreeMotion>("free_flight.json").spin;
    let inertia = DMat3::from_diagonal(DVec3::from_array(spin.inertia_com_kg_m2));
    for case in &spin.cases {
        let mut given = Given::<3>::new(&spin.chain);
        given.gravity_m_s2 = 0.0;
        let wanted = DVec3::from_array(case.angular_momentum_kg_m2_s);
        let (mut momentum, mut energy, mut turn) = (0.0_f64, 0.0_f64, 0.0_f64);
        given.swing(
            State::new(&case.chain_q0_rad, &case.chain_v0_rad_s),
            *case.times_s.last().unwrap(),
            120,
            |_, _| [0.0; 3],
            |i, s| {
                let k = given.kinematics(s);
                let R = k.R[given.bat];
                let L = R * (inertia * (R.transpose() * k.omega[given.bat]));
                momentum = momentum.max(L.distance(wanted) / wanted.length());
                let kinetic = given.energy_j(s).0;
                energy = energy.max((kinetic / case.kinetic_energy_j - 1.0).abs());
                if i % 24 == 0 {
                    let apart = R.transpose() * from_rows(&case.rotation_rows[i / 24]);
                    turn = turn.max(backlift::frames::rotation_vector(&apart).length());
                }
            },
        );
        println!(
            "spin {:?}: momentum {momentum:.1e}, energy {energy:.1e}, turn {turn:.1e} rad",
            case.omega0_rad_s
        );
        assert!(momentum < 1e-3 && energy < 1e-3 && turn < 1e-3);
    }
}

/// Our module swings the bat from the bench pivot; the bench's formula is given the period it shows.
#[test]
fn reference_the_bench_formula_returns_the_inertia_of_a_bat_swung_by_our_module() {
    let it = read::<FreeMotion>("free_flight.json").pendulum;
    for case in &it.cases {
        let given = Given::<1>::new(&it.chain);
        let amplitude = case.amplitude_deg.to_radians();
        let (mut before, mut quarter_s) = (None::<(f64, f64)>, None);
        let dt = 2e-3;
        given.swing(
            State { q: [amplitude], v: [0.0] },
            dt * 300.0,
            300,
            |_, _| [0.0],
            |i, s| {
                // The first passage of the lowest point, by the secant over one step.
                if let (Some((q, t)), None) = (before, quarter_s)
                    && s.q[0] <= 0.0
                {
                    quarter_s = Some(t + dt * q / (q - s.q[0]));
                }
                before = Some((s.q[0], i as f64 * dt));
            },
        );
        let period_s = 4.0 * quarter_s.unwrap();
        let small = period_s / amplitude_factor(amplitude);
        let found = pivot_moment_kg_m2(it.mass_kg, given.gravity_m_s2, it.pivot_to_com_m, small);
        println!(
            "pendulum {}°: period off {:.1e}, inertia off {:.1e}",
            case.amplitude_deg,
            period_s / case.period_s - 1.0,
            found / it.pivot_inertia_kg_m2 - 1.0
        );
        assert!((period_s / case.period_s - 1.0).abs() < 1e-5);
        assert!((found / it.pivot_inertia_kg_m2 - 1.0).abs() < 2e-3);
    }
}

/// From the middle of the reference swing, the torques gone: gravity and the loop alone over a stroke.
#[test]
fn a_moving_pair_of_arms_left_alone_keeps_its_energy_over_a_stroke() {
    for swing in read::<Swings>("closed_chain.json").chains {
        let given = Given::<17>::new(&swing.chain);
        let case = &swing.cases[1];
        let from = State::new(&case.q_rad[5], &case.v_rad_s[5]);
        let (kinetic, potential) = given.energy_j(&from);
        let mut off = 0.0_f64;
        for steps in [120, 250] {
            off = 0.0;
            given.swing(
                from,
                swing.duration_s,
                steps,
                |_, _| [0.0; 17],
                |_, s| {
                    let (k, p) = given.energy_j(s);
                    off = off.max((k + p - kinetic - potential).abs() / kinetic);
                },
            );
            println!(
                "left alone {} {steps} steps: energy off {off:.1e} of {kinetic:.1} J",
                swing.name
            );
        }
        assert!(off < 1e-3, "{}: {off}", swing.name);
    }
}

//! Hips and spine turn the shoulders one after the other: torques are shared, speeds add.

use approx::assert_relative_eq;
use backlift::dynamics::closed_loop::ClosedChain;
use backlift::dynamics::mass_matrix::MassMatrix;
use backlift::files::stroke::read;
use backlift::frames::{DMat3, DVec3, STANDARD_GRAVITY_M_S2};
use backlift::measurement::person::Handed;
use backlift::player::Player;
use backlift::player::joints::{HIP_TURN, JOINT_COUNT, SPINE_TURN};
use backlift::stroke::joint_path::{END, Weights};
use backlift::swing::chain::{Chain, Grip};
use proptest::array::uniform18;
use proptest::prelude::*;

use super::players::{FRESH, Search, adult, bat, boy_of_twelve, strokes};

const N: usize = JOINT_COUNT;
const UP: DVec3 = DVec3::new(0.0, 0.0, STANDARD_GRAVITY_M_S2);

fn chain_of(player: &Player) -> Chain {
    Chain::new(player, &bat(1.20, 0.85, 0.53), Grip::for_stature(1.8, 1.08, 1.05)).unwrap()
}

/// Torques of hips and spine in a motion with both hands pressing on the bat with nothing.
fn turning_torques_n_m(chain: &Chain, q: &[f64; N], v: &[f64; N], a: &[f64; N]) -> [f64; 2] {
    let mut k = chain.tree.kinematics();
    chain.tree.forward_kinematics(q, v, UP, &mut k);
    let tau = chain.tree.inverse_dynamics(&k, a);
    [tau[HIP_TURN], tau[SPINE_TURN]]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(50))]

    /// What the hips give more than the spine is what turns the pelvis: nothing, where it has no inertia.
    #[test]
    fn the_hips_torque_is_the_spines_and_what_turns_the_pelvis(
        q in uniform18(-1.5..1.5_f64), v in uniform18(-15.0..15.0_f64), a in uniform18(-200.0..200.0_f64),
    ) {
        let player = adult(Handed::Right);
        let s = &player.segments;
        let pelvis_kg_m2 = s.pelvis.mass_kg * s.pelvis.gyration_m[2].powi(2) + s.legs_turning_kg_m2;
        prop_assert!(pelvis_kg_m2 > 0.05 && pelvis_kg_m2 < 0.5, "{pelvis_kg_m2}");
        let [hips, spine] = turning_torques_n_m(&chain_of(&player), &q, &v, &a);
        let size = hips.abs().max(1.0);
        prop_assert!((hips - spine - pelvis_kg_m2 * a[HIP_TURN]).abs() < 1e-10 * size);
        let mut bare = player.clone();
        bare.segments.pelvis.mass_kg = 0.0;
        bare.segments.legs_turning_kg_m2 = 0.0;
        let [hips, spine] = turning_torques_n_m(&chain_of(&bare), &q, &v, &a);
        prop_assert!((hips - spine).abs() < 1e-10 * size, "{hips} {spine}");
    }

    /// Nothing but the hips holds the body to the ground against turning.
    #[test]
    fn without_the_hips_torque_the_turn_of_the_whole_is_kept(
        q in uniform18(-1.0..1.0_f64), v in uniform18(-5.0..5.0_f64), torque in uniform18(-30.0..30.0_f64),
    ) {
        let chain = chain_of(&adult(Handed::Right));
        let mut torque = torque;
        torque[HIP_TURN] = 0.0;
        let mut k = chain.tree.kinematics();
        let mut m = MassMatrix::new(&chain.tree);
        chain.tree.forward_kinematics(&q, &v, UP, &mut k);
        m.fill(&chain.tree, &k);
        let a = ClosedChain::new(&chain.tree, &k, &m, None, 0.0).accelerations(&torque);
        let mut turn = |h: f64| {
            let there = core::array::from_fn(|j| q[j] + h * v[j] + 0.5 * h * h * a[j]);
            let rate: [f64; N] = core::array::from_fn(|j| v[j] + h * a[j]);
            chain.tree.forward_kinematics(&there, &rate, UP, &mut k);
            m.fill(&chain.tree, &k);
            (0..N).map(|j| m.M[j][HIP_TURN] * rate[j]).sum::<f64>()
        };
        let h = 1e-5;
        let rate_n_m = (turn(h) - turn(-h)) / (2.0 * h);
        // Rounding of the differences; the torques themselves are some 30 N m.
        let size = a.iter().fold(100.0_f64, |m, a| m.max(a.abs()));
        prop_assert!(rate_n_m.abs() < 1e-5 * size, "{rate_n_m}");
    }
}

#[test]
fn the_speeds_of_hips_and_spine_add() {
    for handed in [Handed::Right, Handed::Left] {
        let chain = chain_of(&adult(handed));
        let moving = |hips: f64, spine: f64| {
            let mut v = [0.3; N];
            (v[HIP_TURN], v[SPINE_TURN]) = (hips, spine);
            let mut k = chain.tree.kinematics();
            chain.tree.forward_kinematics(&[0.4; N], &v, UP, &mut k);
            (k.omega[chain.link.trunk], k.velocity(chain.link.bat, chain.on_bat(&k, 0.7)))
        };
        let (both, hips, spine) = (moving(4.0, 3.0), moving(7.0, 0.0), moving(0.0, 7.0));
        for other in [hips, spine] {
            assert!(both.0.distance(other.0) < 1e-12 && both.1.distance(other.1) < 1e-12);
        }
    }
}

/// The pelvis pays for the bat: who turns with a heavier one turns slower. In the drive, where the hips turn by 18°
/// against the pull of the spine, the adult's turn 3 % faster (measured).
#[test]
fn a_heavier_bat_slows_the_pelvis_where_it_turns() {
    for (who, player, bats) in [
        ("adult", adult(Handed::Right), [bat(1.10, 0.85, 0.51), bat(1.30, 0.85, 0.55)]),
        ("boy", boy_of_twelve(Handed::Right), [bat(0.92, 0.80, 0.48), bat(1.08, 0.80, 0.515)]),
    ] {
        for stroke in strokes(&player) {
            let fastest_rad_s = bats.each_ref().map(|bat| {
                let time_s = Search::new(&stroke).fastest(bat, &FRESH).stroke_time_s;
                let held = stroke.hold(bat).unwrap();
                let mut most = 0.0_f64;
                let mut see = |at: backlift::swing::state::Instantaneous| {
                    most = most.max(at.state.v[HIP_TURN]);
                };
                held.swinger(&FRESH).swing(time_s, Some(&mut see));
                most
            });
            println!("pelvis {who} {}: {fastest_rad_s:.3?} rad/s", stroke.stroke.name);
            if stroke.stroke.name != "drive" {
                assert!(fastest_rad_s[1] < fastest_rad_s[0], "{who} {}", stroke.stroke.name);
            }
        }
    }
}

#[test]
fn pelvis_and_trunk_standing_upright_are_the_one_body_they_were() {
    let player = adult(Handed::Right);
    let (chain, s) = (chain_of(&player), &player.segments);
    let links = chain.tree.links();
    let (pelvis, trunk) = (&links[chain.link.pelvis], &links[chain.link.trunk]);
    assert_relative_eq!(pelvis.mass_kg + trunk.mass_kg, s.trunk.mass_kg, max_relative = 1e-12);
    let legs = DMat3::from_diagonal(DVec3::new(1.0, 0.0, 1.0)) * s.legs_turning_kg_m2;
    let about_long = (pelvis.I_Com - legs).z_axis.z + trunk.I_Com.z_axis.z;
    let whole = s.trunk.mass_kg * s.trunk.gyration_m[2].powi(2);
    assert_relative_eq!(about_long, whole, max_relative = 1e-12);
}

/// A file from before: the shoulders turn as they did, and the hips as its keys say.
#[test]
fn an_older_stroke_file_keeps_its_motion() {
    let old = include_str!("drive_of_version_1.ron");
    let stroke = read(old).unwrap();
    let rows: Vec<Vec<f64>> = old
        .lines()
        .filter_map(|line| line.trim().strip_prefix('(')?.strip_suffix("),"))
        .filter(|it| !it.contains(':'))
        .map(|it| it.split(", ").map(|q| q.parse().unwrap()).collect())
        .collect();
    assert_eq!((rows.len(), rows[0].len()), (10, N - 1));
    for (now, old) in stroke.joint_path.control_rad.iter().zip(&rows) {
        assert_relative_eq!(now[HIP_TURN] + now[SPINE_TURN], old[0], epsilon = 1e-12);
        assert_eq!(now[SPINE_TURN + 1..], old[1..]);
    }
    let curves = stroke.curves();
    for i in 0..=22 {
        let s = END * f64::from(i) / 22.0;
        let hips = stroke.joint_path.weighted(&Weights::at(s).value)[HIP_TURN];
        let off_deg = (hips - curves.pose(s).trunk_rad[HIP_TURN]).to_degrees();
        assert!(off_deg.abs() < 0.3, "{off_deg}° at {s}");
    }
}

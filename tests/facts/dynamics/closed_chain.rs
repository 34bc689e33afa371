//! Two arms and a bat under given torques (`closed_chain.json`): the toe, and what each hand gives.

use backlift::dynamics::closed_loop::{BallJoint, gap};
use backlift::dynamics::tree::{Link, Tree};
use backlift::frames::{DMat3, DVec3, Mirror};
use backlift::swing::chain::{Chain, Grip, LinkIndex};
use backlift::swing::hand_wrench::hands;
use backlift::swing::run::{self, Instantaneous};

use super::given_torques::{Given, PRODUCT_STEPS, State, links, off_by_share, torque};
use crate::reference::free_motion::from_rows;
use crate::reference::motions::{Case, Swing, Swings};
use crate::reference::read;

const N: usize = 17;

/// The file's chain as the product's own: the bat's link in the axes of B, from the top of the handle.
fn as_held(chain: &crate::reference::chain::Chain) -> Chain {
    let it = &chain.bat;
    let (toe, face) = (DVec3::from_array(it.toe_dir), DVec3::from_array(it.face_dir));
    let R_LB = DMat3::from_cols(toe, face.cross(toe), face);
    let top = DVec3::from_array(it.top_of_handle);
    let along = |p: [f64; 3]| (R_LB.transpose() * (DVec3::from_array(p) - top)).x;
    let mut links = links(chain);
    let bat = &links[it.link];
    links[it.link] = Link {
        offset: bat.offset + top,
        R_rest: R_LB,
        com: R_LB.transpose() * (bat.com - top),
        I_Com: R_LB.transpose() * bat.I_Com * R_LB,
        ..*bat
    };
    let closure = chain.closure.as_ref().unwrap();
    assert_eq!(closure.link_a, it.link);
    let grip = Grip {
        oblique_rad: 0.0,
        roll_rad: 0.0,
        top_hand_m: along(it.top_hand),
        bottom_hand_m: along(closure.point_a),
        bottom_couple_n_m: [0.0; 3],
        traction_n: 0.0,
    };
    Chain {
        tree: Tree::new(links).unwrap(),
        bottom_hand: BallJoint {
            link_a: it.link,
            point_a: DVec3::new(grip.bottom_hand_m, 0.0, 0.0),
            link_b: closure.link_b,
            point_b: DVec3::from_array(closure.point_b),
        },
        link: LinkIndex { trunk: 2, top: [5, 7, 9], bottom: [13, 15, 17], bat: it.link },
        grip,
        mirror: Mirror::RIGHT_HANDED,
        arm_m: 0.0,
        shoulder_above_hip_m: 0.0,
        hip_height_m: 0.0,
        wrist_to_grip_m: 0.0,
        bat_length_m: along(it.toe),
    }
}

/// Misses over all samples, as shares of each one's own peak.
#[derive(Debug)]
struct Off {
    toe_velocity: f64,
    last_toe_speed: f64,
    bottom_force: f64,
    top_force: f64,
    top_couple: f64,
    bat_place_m: f64,
    bat_turn_rad: f64,
    energy: f64,
    gap_m: f64,
}

fn off(swing: &Swing, case: &Case, steps: usize) -> Off {
    let chain = as_held(&swing.chain);
    let mut given = Given::<N>::new(&swing.chain);
    given.tree = chain.tree.clone();
    given.ball = Some(chain.bottom_hand);
    given.toe = DVec3::new(chain.bat_length_m, 0.0, 0.0);
    let law = swing.law(case);
    let every = steps / (case.times_s.len() - 1);
    let [mut toe, mut bottom, mut top, mut couple] = [const { Vec::new() }; 4];
    let (mut place_m, mut turn, mut energy, mut gap_m) = (0.0_f64, 0.0_f64, 0.0_f64, 0.0_f64);
    let peak_j = case.energy_j.iter().fold(0.0_f64, |m, e| m.max(e.abs()));
    given.swing(
        State::new(&swing.q0_rad, &swing.v0_rad_s),
        swing.duration_s,
        steps,
        |t, v| torque(&law, t, v),
        |i, s| {
            let k = given.kinematics(s);
            gap_m = gap_m.max(gap(&k, &chain.bottom_hand).length());
            if i % every != 0 {
                return;
            }
            let at = i / every;
            let tau = torque(&law, case.times_s[at], &s.v);
            // the loads, not the mending of the loop: no pull on the gap
            let closed = given.closed(&k, 0.0);
            let loads = hands(
                &chain,
                &k,
                &Instantaneous {
                    t_s: case.times_s[at],
                    state: run::State { q: s.q, v: s.v, torque_n_m: tau, couple_share: [0.0; 3] },
                    torque_n_m: tau,
                    activation: [0.0; N],
                    acceleration: closed.accelerations(&tau),
                    force_bottom_W: closed.joint_force_n(&tau),
                    couple_bottom_W: DVec3::ZERO,
                    a_base_W: DVec3::Z * given.gravity_m_s2,
                    pelvis_W: DVec3::ZERO,
                    pelvis_velocity_W: DVec3::ZERO,
                },
            );
            toe.push(given.toe(s).1);
            bottom.push(loads.bottom.force_W);
            top.push(loads.top.force_W);
            couple.push(loads.top.couple_W);
            place_m =
                place_m.max(k.p[given.bat].distance(DVec3::from_array(case.bat_origin_m[at])));
            let R_LB = chain.tree.links()[given.bat].R_rest;
            let R = k.R[given.bat] * R_LB.transpose();
            let apart = R.transpose() * from_rows(&case.bat_link_rotation_rows[at]);
            turn = turn.max(backlift::frames::rotation_vector(&apart).length());
            let (kinetic, potential) = given.energy_j(s);
            energy = energy.max((kinetic + potential - case.energy_j[at]).abs() / peak_j);
        },
    );
    let end = DVec3::from_array(*case.toe_velocity_m_s.last().unwrap()).length();
    Off {
        toe_velocity: off_by_share(&toe, &case.toe_velocity_m_s),
        last_toe_speed: (toe.last().unwrap().length() / end - 1.0).abs(),
        bottom_force: off_by_share(&bottom, &case.bottom_force_n),
        top_force: off_by_share(&top, &case.top_force_n),
        top_couple: off_by_share(&couple, &case.top_couple_n_m),
        bat_place_m: place_m,
        bat_turn_rad: turn,
        energy,
        gap_m,
    }
}

#[test]
fn reference_two_arms_swing_the_bat_as_outside_at_the_product_step_and_at_one_millisecond() {
    for swing in read::<Swings>("closed_chain.json").chains {
        for case in &swing.cases {
            for (steps, share) in [(PRODUCT_STEPS, 5e-3), (250, 1e-3)] {
                let off = off(&swing, case, steps);
                println!(
                    "closed {} x{} {steps} steps: {off:.1e}",
                    swing.name,
                    case.scale,
                    off = Show(&off)
                );
                assert!(off.toe_velocity < share && off.last_toe_speed < share, "{off:?}");
                // as shares of a sweep of about a metre and a radian
                assert!(off.bat_place_m < share && off.bat_turn_rad < share, "{off:?}");
                let loads = [off.bottom_force, off.top_force, off.top_couple];
                assert!(loads.iter().all(|it| *it < 2.0 * share), "{off:?}");
                assert!(off.energy < share && off.gap_m < 0.1 * share, "{off:?}");
            }
        }
    }
}

struct Show<'a>(&'a Off);

impl std::fmt::LowerExp for Show<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let it = self.0;
        write!(
            f,
            "toe {:.1e} last {:.1e} bottom {:.1e} top {:.1e} couple {:.1e} place {:.1e} m turn {:.1e} rad energy {:.1e} gap {:.1e} m",
            it.toe_velocity,
            it.last_toe_speed,
            it.bottom_force,
            it.top_force,
            it.top_couple,
            it.bat_place_m,
            it.bat_turn_rad,
            it.energy,
            it.gap_m
        )
    }
}

#[test]
fn reference_the_miss_of_two_arms_shrinks_with_the_fourth_power_of_the_step() {
    for swing in read::<Swings>("closed_chain.json").chains {
        for case in &swing.cases {
            let (coarse, fine) =
                (off(&swing, case, 500).toe_velocity, off(&swing, case, 1000).toe_velocity);
            let order = (coarse / fine).log2();
            println!("closed {} x{}: order {order:.2} ({fine:.1e})", swing.name, case.scale);
            assert!((3.7..4.4).contains(&order), "{} {}: {order}", swing.name, case.scale);
        }
    }
}

#[test]
fn reference_two_arms_accelerate_and_pull_on_the_bat_as_outside() {
    for swing in read::<Swings>("closed_chain.json").chains {
        let it = &swing.evaluation;
        let given = Given::<N>::new(&swing.chain);
        let k = given.kinematics(&State::new(&it.q_rad, &it.v_rad_s));
        let closed = given.closed(&k, 0.0);
        let tau = it.tau_n_m[..].try_into().unwrap();
        let largest = it.acceleration_rad_s2.iter().fold(0.0_f64, |m, a| m.max(a.abs()));
        for (ours, theirs) in closed.accelerations(&tau).iter().zip(&it.acceleration_rad_s2) {
            assert!((ours - theirs).abs() < 1e-9 * largest, "{ours} against {theirs}");
        }
        let force = DVec3::from_array(it.bottom_force_n.unwrap());
        assert!(closed.joint_force_n(&tau).distance(force) < 1e-9 * force.length());
    }
}

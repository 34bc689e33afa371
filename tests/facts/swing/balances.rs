//! Momentum, energy and the step, on whole strokes.

use std::sync::OnceLock;

use backlift::dynamics::tree::Kinematics;
use backlift::frames::{DMat3, DVec3, STANDARD_GRAVITY_M_S2, rotation_vector};
use backlift::measurement::person::Handed;
use backlift::player::joints::JOINT_COUNT;
use backlift::swing::fastest_controlled::fastest_controlled;
use backlift::swing::hand_wrench::{HandWrench, hands};
use backlift::swing::run::STEPS;
use backlift::swing::state::Instantaneous;
use backlift::swing::swinger::Swinger;

use super::pilot::{pilot_bat, pilot_player, pilot_rig};
use super::players::{FRESH, adult, adult_bat, boy_of_twelve, boys_bat, strokes};

/// Fastest stroke times in the order of [`each_swinger`], searched once.
static TIMES_S: OnceLock<Vec<f64>> = OnceLock::new();

fn visit_all(mut visit: impl FnMut(&str, &Swinger<'_>)) {
    for stroke in ["drive", "pull", "hook"] {
        let (player, bat) = (pilot_player(1.80, 78.0, 1.0), pilot_bat(1.2, 0.85, 0.53));
        let rig = pilot_rig(&player, &bat, stroke, STEPS);
        visit(&format!("no stride {stroke}"), &rig.swinger());
    }
    for (who, player, bat) in [
        ("adult", adult(Handed::Right), adult_bat()),
        ("boy", boy_of_twelve(Handed::Right), boys_bat()),
    ] {
        for mut stroke in strokes(&player) {
            // Poses differenced twice need a finer step than the swing does.
            stroke.steps = 2 * STEPS;
            let held = stroke.hold(&bat).unwrap();
            visit(&format!("{who} {}", stroke.stroke.name), &held.swinger(&FRESH));
        }
    }
}

/// Visits strokes at their fastest: the prototype's without a stride, then the built-in ones, whose
/// hips move, of an adult and of a boy.
fn each_swinger(mut visit: impl FnMut(&str, &Swinger<'_>, f64)) {
    let times_s = TIMES_S.get_or_init(|| {
        let mut times_s = Vec::new();
        visit_all(|_, swinger| {
            times_s.push(fastest_controlled(swinger, 0.5, false).unwrap().stroke_time_s);
        });
        times_s
    });
    let mut next = times_s.iter();
    visit_all(|name, swinger| visit(name, swinger, *next.next().unwrap()));
}

fn recorded(swinger: &Swinger<'_>, time_s: f64) -> Vec<Instantaneous> {
    let mut instants = Vec::new();
    swinger.swing(time_s, Some(&mut |at| instants.push(at)));
    instants
}

fn pose(swinger: &Swinger<'_>, at: &Instantaneous, k: &mut Kinematics<JOINT_COUNT>) {
    swinger.chain.tree.forward_kinematics(&at.state.q, &at.state.v, at.a_base_W, k);
}

/// First and second derivative at the middle of five even samples, to the fourth order.
fn differences(f: [DVec3; 5], dt: f64) -> (DVec3, DVec3) {
    (
        (8.0 * (f[3] - f[1]) - (f[4] - f[0])) / (12.0 * dt),
        (16.0 * (f[3] + f[1]) - f[4] - f[0] - 30.0 * f[2]) / (12.0 * dt * dt),
    )
}

/// Positions over time know nothing of accelerations, multipliers or Newton–Euler: the bat's place and
/// attitude in W, differenced, against the sum of the two hands' loads.
#[test]
fn the_hands_together_give_the_rate_of_the_bats_momentum() {
    each_swinger(|name, swinger, time_s| {
        let instants = recorded(swinger, time_s);
        let dt = instants[1].t_s;
        let (chain, mut k) = (swinger.chain, swinger.chain.tree.kinematics());
        let link = &chain.tree.links()[chain.link.bat];
        let mut poses: Vec<(DVec3, DMat3)> = Vec::new();
        let mut given: Vec<(DVec3, DVec3)> = Vec::new();
        for at in &instants {
            pose(swinger, at, &mut k);
            let com = k.point(chain.link.bat, link.com);
            poses.push((com + at.pelvis_W, k.R[chain.link.bat]));
            let loads = hands(chain, &k, at);
            let about_com = |it: HandWrench, hand_m: f64| {
                it.couple_W - (com - chain.on_bat(&k, hand_m)).cross(it.force_W)
            };
            let couple_W = about_com(loads.top, chain.grip.top_hand_m)
                + about_com(loads.bottom, chain.grip.bottom_hand_m);
            given.push((loads.top.force_W + loads.bottom.force_W, couple_W));
        }
        let (mut off, mut peak) = ([0.0_f64; 2], [0.0_f64; 2]);
        for i in 2..poses.len() - 2 {
            let R = poses[i].1;
            let at = |o: usize| &poses[i + o - 2];
            let (_, a) = differences(std::array::from_fn(|o| at(o).0), dt);
            let turn = |o: usize| rotation_vector(&(at(o).1 * R.transpose()));
            let (omega, alpha) = differences(std::array::from_fn(turn), dt);
            let I = R * link.I_Com * R.transpose();
            let force = (a + DVec3::Z * swinger.gravity_m_s2) * link.mass_kg;
            let couple = I * alpha + omega.cross(I * omega);
            for (n, (ours, needed)) in
                [(given[i].0, force), (given[i].1, couple)].into_iter().enumerate()
            {
                off[n] = off[n].max(ours.distance(needed));
                peak[n] = peak[n].max(needed.length());
            }
        }
        let share = [off[0] / peak[0], off[1] / peak[1]];
        println!(
            "hands {name}: force {:.1e} of {:.0} N, couple {:.1e} of {:.1} N m",
            share[0], peak[0], share[1], peak[1]
        );
        assert!(share[0] < 0.01 && share[1] < 0.01, "{name}: {share:?}");
    });
}

/// Seen from the pelvis: kinetic energy won = work of the joint torques, less that against the weight and
/// against the pelvis's own acceleration. Simpson's rule over the recorded steps.
#[test]
fn the_joints_work_is_the_energy_won() {
    each_swinger(|name, swinger, time_s| {
        let mut instants = recorded(swinger, time_s);
        if instants.len().is_multiple_of(2) {
            instants.pop();
        }
        let (tree, mut k) = (&swinger.chain.tree, swinger.chain.tree.kinematics());
        let (mut kinetic, mut power, mut joints) = (Vec::new(), Vec::new(), Vec::new());
        for at in &instants {
            pose(swinger, at, &mut k);
            kinetic.push(tree.energy_j(&k, STANDARD_GRAVITY_M_S2).0);
            let torques: f64 = at.torque_n_m.iter().zip(&at.state.v).map(|(t, v)| t * v).sum();
            let against: f64 = tree
                .links()
                .iter()
                .enumerate()
                .map(|(i, l)| l.mass_kg * at.a_base_W.dot(k.velocity(i, k.point(i, l.com))))
                .sum();
            // The bottom hand's couple works on what the handle still turns in that hand.
            let chain = swinger.chain;
            let turning = k.omega[chain.link.bat] - k.omega[chain.bottom_hand.link_b];
            power.push(torques + at.couple_bottom_W.dot(turning) - against);
            joints.push(torques);
        }
        let simpson = |p: &[f64]| {
            let pairs = p.windows(3).step_by(2).map(|w| w[0] + 4.0 * w[1] + w[2]);
            pairs.sum::<f64>() * instants[1].t_s / 3.0
        };
        let won = kinetic[kinetic.len() - 1] - kinetic[0];
        let off = (simpson(&power) - won).abs() / won;
        println!(
            "work {name}: joints {:.1} J, kinetic energy won {won:.1} J, off {off:.1e}",
            simpson(&joints)
        );
        assert!(off < 1e-3, "{name}: {off}");
    });
}

/// What the drawn chains of `dynamics/drawn_chains.rs` need to come within half a percent.
#[test]
fn no_joint_turns_more_than_a_fifth_of_a_radian_in_one_step_of_a_stroke() {
    each_swinger(|name, swinger, time_s| {
        let fastest = recorded(swinger, time_s)
            .iter()
            .flat_map(|at| at.state.v)
            .fold(0.0_f64, |m, v| m.max(v.abs()));
        let turn = fastest * time_s / STEPS as f64;
        println!(
            "step {name}: fastest joint {fastest:.1} rad/s, {turn:.3} rad in a step of {:.2} ms",
            1e3 * time_s / STEPS as f64
        );
        assert!(turn < 0.2, "{name}: {turn}");
    });
}

#[test]
fn the_product_step_is_fine_enough_for_the_longest_strokes_of_a_boy() {
    for mut stroke in strokes(&boy_of_twelve(Handed::Right)) {
        let [coarse, fine] = [STEPS, 3 * STEPS].map(|steps| {
            stroke.steps = steps;
            let held = stroke.hold(&boys_bat()).unwrap();
            held.fastest(&FRESH, None).unwrap().bat_speed_m_s
        });
        let off = (coarse / fine - 1.0).abs();
        println!("step boy {}: speed off {off:.1e}", stroke.stroke.name);
        assert!(off < 5e-4, "{}: {coarse} {fine}", stroke.stroke.name);
    }
}

//! The prototype's law without a step on another program (`continuous_law.json`, Pinocchio): same player,
//! bat, path and starting torques, so that only our dynamics, closure and integrator can differ.

use backlift::player::Player;
use backlift::player::joints::JOINT_COUNT;
use backlift::stroke::joint_path::JointPath;
use backlift::swing::contact::Contact;
use backlift::swing::fastest_controlled::fastest_controlled;
use backlift::swing::run::STEPS;

use super::pilot::{PilotRig, pilot_bat, pilot_player};
use crate::reference::law::{Continuous, Crossing, Holding, Prototype, PrototypeSearch};
use crate::reference::read;

fn player(name: &str) -> Player {
    match name {
        "adult" => pilot_player(1.80, 78.0, 1.0),
        _ => pilot_player(1.50, 40.0, 0.50),
    }
}

fn rig(prototype: &Prototype, it: &PrototypeSearch, steps: usize) -> PilotRig {
    let points = &prototype.rigs[&format!("{} {}", it.stroke, it.player)].control_points_rad;
    let path =
        JointPath { control_rad: std::array::from_fn(|i| points[i][..].try_into().unwrap()) };
    let bat = pilot_bat(it.bat_mass_kg, it.bat_length_m, it.balance_from_top_m);
    PilotRig::on_path(&player(&it.player), &bat, &path, steps)
}

fn torques(values: &[f64]) -> [f64; JOINT_COUNT] {
    values.try_into().unwrap()
}

/// Relative miss of speed and toe speed, and of the three errors as shares of their tolerances.
fn off(ours: &Contact, theirs: &Crossing) -> (f64, f64) {
    let speed = (ours.bat_speed_m_s / theirs.speed_m_s - 1.0).abs();
    let toe = (ours.toe_speed_m_s / theirs.toe_speed_m_s - 1.0).abs();
    let parts = [
        (1e3 * ours.position_error_m - theirs.position_error_mm) / 25.0,
        (ours.face_error_rad.to_degrees() - theirs.face_error_deg) / 4.0,
        (ours.line_error_rad.to_degrees() - theirs.line_error_deg) / 5.0,
    ];
    (speed.max(toe), parts.iter().fold(0.0, |m, p| m.max(p.abs())))
}

fn searches() -> (Prototype, Continuous) {
    (read("pilot_figures.json"), read("continuous_law.json"))
}

fn short(values: &[f64]) -> String {
    values.iter().map(|it| format!("{it:.1e} ")).collect()
}

#[test]
fn reference_the_law_swings_alike_at_a_given_stroke_time() {
    let (prototype, law) = searches();
    for (stroke, fixed) in &law.fixed_time {
        let it = prototype
            .searches
            .iter()
            .find(|it| &it.stroke == stroke && it.player == "adult" && it.bat == "middle")
            .unwrap();
        for steps in [STEPS, 4 * STEPS] {
            let rig = rig(&prototype, it, steps);
            let mut swinger = rig.swinger();
            swinger.start_torque_n_m = Some(torques(&fixed.start_tau_n_m));
            let ours = swinger.swing(fixed.stroke_time_s, None);
            let (speed, errors) = off(&ours, &fixed.at_0_25_ms);
            println!(
                "law {stroke} at {} s, {steps} steps: speed {speed:.1e}, errors {errors:.1e}, E {:.5} against {:.5}, crossing {:.1e} s",
                fixed.stroke_time_s,
                ours.error,
                fixed.at_0_25_ms.error,
                ours.time_s - fixed.at_0_25_ms.crossing_s
            );
            assert!(speed < 1e-3 && errors < 1e-2, "{stroke}: {speed} {errors}");

            // What the product does instead: it starts from the torques that its own law calls for.
            swinger.start_torque_n_m = None;
            let own = swinger.swing(fixed.stroke_time_s, None);
            let own = (own.bat_speed_m_s / ours.bat_speed_m_s - 1.0).abs();
            println!("law {stroke}: own start moves the speed by {own:.1e}");
            assert!(own < 1e-2, "{stroke}: {own}");
        }
    }
}

#[test]
fn reference_the_fastest_controlled_swings_agree() {
    let (prototype, law) = searches();
    assert_eq!(law.searches_dt_0_5ms.len(), 15);
    let mut worst = [0.0_f64; 5];
    for search in &law.searches_dt_0_5ms {
        let same = |it: &&PrototypeSearch| {
            (&it.stroke, &it.player, &it.bat) == (&search.stroke, &search.player, &search.bat)
        };
        let it = prototype.searches.iter().find(same).unwrap();
        let rig = rig(&prototype, it, STEPS);
        let mut swinger = rig.swinger();
        let name = format!("{} {} {}", it.stroke, it.player, it.bat);
        let own = fastest_controlled(&swinger, search.fastest_s, true).unwrap();
        swinger.start_torque_n_m = Some(torques(&search.start_tau_n_m));
        let ours = fastest_controlled(&swinger, search.fastest_s, true).unwrap();
        let (speed, errors) = off(&ours.contact, &search.at_fastest);
        let misses = [
            (ours.stroke_time_s / search.fastest_s - 1.0).abs(),
            speed,
            errors,
            (own.stroke_time_s / search.fastest_s - 1.0).abs(),
            (own.contact.bat_speed_m_s / search.at_fastest.speed_m_s - 1.0).abs(),
        ];
        println!("fastest {name}: time, speed, errors; own start: time, speed {}", short(&misses));
        for (w, m) in worst.iter_mut().zip(misses) {
            *w = w.max(m);
        }
    }
    println!("fastest, worst: {}", short(&worst));
    assert!(worst[0] < 1e-3 && worst[1] < 1e-3 && worst[2] < 3e-2, "{worst:?}");
    assert!(worst[3] < 1e-2 && worst[4] < 1e-2, "{worst:?}");
}

/// The file has the starting torques at two stroke times; at rest they are a part for the weight and a
/// part for the acceleration, which goes with 1/T².
#[test]
fn reference_a_hurried_swing_loses_control_alike() {
    let (prototype, law) = searches();
    for search in law.searches_dt_0_5ms.iter().filter(|it| !it.at_other_times.is_empty()) {
        let it = prototype
            .searches
            .iter()
            .find(|it| {
                it.stroke == search.stroke && it.player == search.player && it.bat == search.bat
            })
            .unwrap();
        let fixed = &law.fixed_time[&search.stroke];
        let rig = rig(&prototype, it, STEPS);
        let mut swinger = rig.swinger();
        let inverse = |t: f64| 1.0 / (t * t);
        for other in &search.at_other_times {
            let time_s = other.times_fastest * search.fastest_s;
            let u = (inverse(time_s) - inverse(search.fastest_s))
                / (inverse(fixed.stroke_time_s) - inverse(search.fastest_s));
            swinger.start_torque_n_m = Some(std::array::from_fn(|j| {
                search.start_tau_n_m[j] + u * (fixed.start_tau_n_m[j] - search.start_tau_n_m[j])
            }));
            let ours = swinger.swing(time_s, None);
            let speed = (ours.bat_speed_m_s / other.crossing.speed_m_s - 1.0).abs();
            println!(
                "hurry {} {}: E {:.4} against {:.4}, speed {speed:.1e}",
                search.stroke, other.times_fastest, ours.error, other.crossing.error
            );
            assert!((ours.error / other.crossing.error - 1.0).abs() < 0.02, "{}", search.stroke);
            assert!(speed < 1e-3, "{} {}: {speed}", search.stroke, other.times_fastest);
        }
    }
}

/// `holding_law.json`: the bottom hand's couple besides, on paths that turn the handle in that hand, so that
/// it holds and gives way.
#[test]
fn reference_a_bottom_hand_that_holds_swings_alike() {
    let prototype = read::<Prototype>("pilot_figures.json");
    let holding = read::<Holding>("holding_law.json");
    for (stroke, fixed) in &holding.fixed_time {
        let it = prototype
            .searches
            .iter()
            .find(|it| &it.stroke == stroke && it.player == "adult" && it.bat == "middle")
            .unwrap();
        for (steps, share) in [(STEPS, 1e-3), (4 * STEPS, 2e-4)] {
            let mut rig = rig(&prototype, it, steps);
            rig.chain.grip = rig.chain.grip.holding(holding.limit_n_m, holding.traction_n);
            let mut swinger = rig.swinger();
            swinger.start_torque_n_m = Some(torques(&fixed.start_tau_n_m));
            let mut last = [0.0; 3];
            let ours =
                swinger.swing(fixed.stroke_time_s, Some(&mut |at| last = at.state.couple_share));
            let theirs = &fixed.at_0_25_ms;
            let (speed, errors) = off(&ours, &theirs.crossing);
            println!(
                "holding {stroke}, {steps} steps: speed {speed:.1e}, errors {errors:.1e}, E {:.5} against {:.5}, couple's share {last:.3?} against {:.3?}",
                ours.error, theirs.crossing.error, theirs.couple_share
            );
            assert!(speed < share && errors < 10.0 * share, "{stroke}: {speed} {errors}");
            // within a step of the crossing
            for (a, b) in last.iter().zip(&theirs.couple_share) {
                assert!((a - b).abs() < 0.1, "{stroke}: {last:?}");
            }
        }
    }
}

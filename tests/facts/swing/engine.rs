//! The same player, bat and law on the rigid-body engine and on our own dynamics.

mod plant;

use backlift::files;
use backlift::frames::DVec3;
use backlift::measurement::person::{Handed, PersonReading, Sex};
use backlift::player::Player;
use backlift::swing::engine::EngineFault;
use backlift::swing::engine::pair::{ContactDifference, EngineSwing, engine_swing};
use backlift::swing::engine::plan::finer;
use backlift::swing::player_stroke::{Held, PlayerStroke};
use backlift::swing::run::Instantaneous;

use super::pilot::pilot_bat;

use backlift::player::joints::FRESH;

fn player(age_y: f64, stature_m: f64, handed: Handed) -> Player {
    backlift::player::player(&PersonReading {
        age_y,
        sex: Sex::Male,
        stature_m,
        handed,
        mass_kg: None,
        arm_length_m: None,
        hand_length_m: None,
        grip_top_n: None,
        grip_bottom_n: None,
        wrist_hold: None,
    })
    .unwrap()
}

fn adult() -> Player {
    player(25.0, 1.80, Handed::Right)
}

/// A player's stroke, by its name in the assets.
fn stroke_of(player: &Player, name: &str) -> PlayerStroke {
    let strokes = files::stroke::built_in().unwrap();
    let stroke = strokes.iter().find(|s| s.name == name).unwrap();
    PlayerStroke::new(player, stroke, &pilot_bat(1.1, 0.85, 0.51)).unwrap()
}

fn held(name: &str) -> Held {
    stroke_of(&adult(), name).hold(&pilot_bat(1.10, 0.85, 0.51)).unwrap()
}

fn percent(x: f64) -> f64 {
    100.0 * x.abs()
}

/// Both dynamics at the fastest controlled stroke time: the engine's swing and the differences of its
/// longer step, its shorter step and the two extrapolated.
fn compared(held: &Held) -> (EngineSwing, [ContactDifference; 3]) {
    let fastest = held.fastest(&FRESH, None).unwrap();
    let swing = engine_swing(&held.swinger(&FRESH), fastest.stroke_time_s).unwrap();
    let own = &fastest.contact;
    let differences = [
        ContactDifference::between(&swing.coarse, own),
        ContactDifference::between(&swing.fine, own),
        swing.difference(own),
    ];
    (swing, differences)
}

#[test]
fn engine_and_own_dynamics_agree_over_players_strokes_and_bats() {
    for (who, player, bats) in [
        ("adult", adult(), [pilot_bat(1.10, 0.85, 0.51), pilot_bat(1.30, 0.85, 0.55)]),
        (
            "child",
            player(12.0, 1.50, Handed::Right),
            [pilot_bat(0.90, 0.80, 0.48), pilot_bat(1.08, 0.80, 0.515)],
        ),
    ] {
        for stroke in files::stroke::built_in().unwrap() {
            let own_path = PlayerStroke::new(&player, &stroke, &bats[0]).unwrap();
            for bat in &bats {
                let (_, [_, fine, pair]) = compared(&own_path.hold(bat).unwrap());
                let case = format!("{who} {} {} kg", stroke.name, bat.mass_kg());
                println!("engine {case}: fine {:.1e}, pair {:.1e}", fine.bat_speed, pair.bat_speed);
                for d in [fine.bat_speed, fine.toe_speed, fine.normal_speed] {
                    assert!(percent(d) < 0.5, "{case}: {fine:?}");
                }
                for d in [pair.bat_speed, pair.toe_speed, pair.normal_speed] {
                    assert!(percent(d) < 0.1, "{case}: {pair:?}");
                }
                assert!(pair.time_s.abs() < 0.1e-3, "{case}: {pair:?}");
                assert!(pair.position_m.abs() < 1e-3, "{case}: {pair:?}");
                let degrees = pair.face_rad.abs().max(pair.line_rad.abs()).to_degrees();
                assert!(degrees < 0.1, "{case}: {pair:?}");
            }
        }
    }
}

/// A child's, whose errors are the largest: an adult's nearly cancel.
#[test]
fn the_engines_error_halves_with_its_step() {
    let child = player(12.0, 1.50, Handed::Right);
    for name in ["drive", "pull", "hook"] {
        let held = stroke_of(&child, name).hold(&pilot_bat(0.90, 0.80, 0.48)).unwrap();
        let (_, [coarse, fine, _]) = compared(&held);
        let ratio = coarse.toe_speed / fine.toe_speed;
        println!("engine {name}: toe speed off {:.1e}, {:.1e}", coarse.toe_speed, fine.toe_speed);
        assert!((1.6..2.9).contains(&ratio), "{name}: {ratio}");
    }
}

#[test]
fn a_left_hander_swings_the_mirror_image_on_the_engine() {
    let bat = pilot_bat(1.10, 0.85, 0.51);
    let [right, left] = [Handed::Right, Handed::Left].map(|handed| {
        let held = stroke_of(&player(25.0, 1.80, handed), "pull").hold(&bat).unwrap();
        engine_swing(&held.swinger(&FRESH), 0.40).unwrap()
    });
    let (r, l) = (&right.contact, &left.contact);
    for (a, b) in [
        (r.time_s, l.time_s),
        (r.bat_speed_m_s, l.bat_speed_m_s),
        (r.toe_speed_m_s, l.toe_speed_m_s),
        (r.normal_speed_m_s, l.normal_speed_m_s),
        (r.position_error_m, l.position_error_m),
        (r.face_error_rad, l.face_error_rad),
        (r.point_W.x, l.point_W.x),
        (r.point_W.y, -l.point_W.y),
        (r.point_W.z, l.point_W.z),
        (right.peak.couple_top_n_m, left.peak.couple_top_n_m),
        (right.peak.force_bottom_n, left.peak.force_bottom_n),
        (right.peak.couple_bottom_n_m, left.peak.couple_bottom_n_m),
    ] {
        assert!((a - b).abs() < 1e-9 * a.abs().max(1.0), "{a} {b}");
    }
}

/// What both hands together do to the bat, by Newton–Euler from our own accelerations: force, couple
/// about the centre of mass; then the lever arms of top and bottom hand from there.
fn newton_euler(held: &Held, at: &Instantaneous) -> (DVec3, DVec3, [DVec3; 2]) {
    let chain = &held.chain;
    let mut k = chain.tree.kinematics();
    chain.tree.forward_kinematics(&at.state.q, &at.state.v, at.a_base_W, &mut k);
    let link = chain.link.bat;
    let bat = &chain.tree.links()[link];
    let com = k.point(link, bat.com);
    let mut a = k.acceleration_bias(link, com);
    let mut alpha = k.alpha_bias[link];
    for j in chain.tree.joints_towards_base(link) {
        a += (k.axis_moment[j] + k.axis[j].cross(com)) * at.acceleration[j];
        alpha += k.axis[j] * at.acceleration[j];
    }
    let I = k.R[link] * bat.I_Com * k.R[link].transpose();
    let omega = k.omega[link];
    let arms = [chain.grip.top_hand_m, chain.grip.bottom_hand_m].map(|x| chain.on_bat(&k, x) - com);
    (bat.mass_kg * a, I * alpha + omega.cross(I * omega), arms)
}

#[test]
fn both_dynamics_put_the_same_loads_on_the_hands() {
    for name in ["drive", "pull", "hook"] {
        let held = held(name);
        let swinger = held.swinger(&FRESH);
        let stroke_time_s = held.fastest(&FRESH, None).unwrap().stroke_time_s;
        let mut own = Vec::new();
        swinger.swing(stroke_time_s, Some(&mut |at| own.push(at)));
        let engine = engine_swing(&swinger, stroke_time_s).unwrap();
        let every = (own[1].t_s / engine.step_s).round() as usize;
        // Force of both hands, their moment about the centre of mass, force of the bottom hand.
        let (mut worst, mut square, mut peak) = ([0.0_f64; 3], [0.0_f64; 3], [0.0_f64; 3]);
        let mut count = 0.0;
        for (at, loads) in own.iter().zip(engine.loads.iter().step_by(every)) {
            let (force, couple, [top, bottom]) = newton_euler(&held, at);
            let h = &loads.hands;
            let turning = h.couple_top_W
                + h.couple_bottom_W
                + top.cross(h.force_top_W)
                + bottom.cross(h.force_bottom_W);
            let off = [
                (h.force_top_W + h.force_bottom_W - force).length(),
                (turning - couple).length(),
                (h.force_bottom_W - at.force_bottom_W).length(),
            ];
            // The hands' moments nearly cancel: one hand's is the measure.
            let size = [force, bottom.cross(at.force_bottom_W), at.force_bottom_W];
            count += 1.0;
            for i in 0..3 {
                worst[i] = worst[i].max(off[i]);
                square[i] += off[i] * off[i];
                peak[i] = peak[i].max(size[i].length());
            }
        }
        for i in 0..3 {
            let rms = (square[i] / count).sqrt();
            // Single samples where a joint comes to its limit late in the drive are the worst.
            assert!(rms < 0.02 * peak[i], "{name} {i}: {rms} of {}", peak[i]);
            assert!(worst[i] < 0.06 * peak[i], "{name} {i}: {} of {}", worst[i], peak[i]);
        }
        let bottom = engine.peak.force_bottom_n;
        // late in the drive the bottom hand's couple comes to its limit: one sample stands out
        let share = if name == "drive" { 0.1 } else { 0.01 };
        assert!((bottom / peak[2] - 1.0).abs() < share, "{name}: {bottom} and {} N", peak[2]);
    }
}

#[test]
fn a_plan_on_a_finer_grid_is_the_plan_sampled_there() {
    let mut stroke = stroke_of(&adult(), "drive");
    let bat = pilot_bat(1.10, 0.85, 0.51);
    let held = stroke.hold(&bat).unwrap();
    stroke.steps *= 4;
    let direct = stroke.hold(&bat).unwrap().reference;
    let plan = finer(&held.reference, &held.chain, 4);
    assert_eq!(plan.samples.len(), direct.samples.len());
    for (a, b) in plan.samples.iter().zip(&direct.samples) {
        for j in 0..a.q.len() {
            assert!((a.q[j] - b.q[j]).abs() < 1e-6, "{} {}", a.q[j], b.q[j]);
            assert!((a.q2[j] - b.q2[j]).abs() < 0.05, "{} {}", a.q2[j], b.q2[j]);
        }
        assert!((a.point - b.point).length() < 1e-6);
        assert!((a.pelvis2 - b.pelvis2).length() < 0.05);
        assert!((a.pelvis_turn1 - b.pelvis_turn1).abs() < 1e-3);
    }
}

#[test]
fn a_stroke_far_too_fast_for_the_player_is_a_fault_and_no_swing() {
    let held = held("drive");
    let swing = engine_swing(&held.swinger(&FRESH), 0.02);
    assert!(matches!(swing, Err(EngineFault::Missed | EngineFault::Lost { .. })), "{swing:?}");
}

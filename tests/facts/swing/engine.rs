//! The rigid-body engine alone; against our own dynamics it stands in `outside`.

use backlift::files;
use backlift::frames::DVec3;
use backlift::measurement::person::{Handed, PersonReading, Sex};
use backlift::player::Player;
use backlift::swing::engine::EngineFault;
use backlift::swing::engine::pair::{EngineSwing, engine_swing};
use backlift::swing::engine::plan::finer;
use backlift::swing::hand_wrench::Hands;
use backlift::swing::player_stroke::{Held, PlayerStroke};

use super::pilot::pilot_bat;

use backlift::player::joints::FRESH;

fn player(age_y: f64, stature_m: f64, handed: Handed) -> Player {
    backlift::player::player(&PersonReading {
        handed,
        ..PersonReading::of(Sex::Male, age_y, stature_m)
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

#[test]
fn a_left_hander_swings_the_mirror_image_on_the_engine() {
    let bat = pilot_bat(1.10, 0.85, 0.51);
    let [right, left] = [Handed::Right, Handed::Left].map(|handed| {
        let held = stroke_of(&player(25.0, 1.80, handed), "pull").hold(&bat).unwrap();
        engine_swing(&held.swinger(&FRESH), 0.40).unwrap()
    });
    let peaks = |of: fn(&Hands) -> DVec3| {
        let peak = |it: &EngineSwing| it.loads.iter().map(|at| of(at).length()).fold(0.0, f64::max);
        (peak(&right), peak(&left))
    };
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
        peaks(|it| it.top.couple_W),
        peaks(|it| it.bottom.force_W),
        peaks(|it| it.bottom.couple_W),
    ] {
        assert!((a - b).abs() < 1e-9 * a.abs().max(1.0), "{a} {b}");
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
    }
}

#[test]
fn a_stroke_far_too_fast_for_the_player_is_a_fault_and_no_swing() {
    let held = held("drive");
    let swing = engine_swing(&held.swinger(&FRESH), 0.02);
    assert!(matches!(swing, Err(EngineFault::Missed | EngineFault::Lost { .. })), "{swing:?}");
}

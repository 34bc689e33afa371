//! The net shows what the core computed.

use backlift::frames::DVec3;
use backlift::innings::played::AtScore;
use backlift::player::joints::{FRESH, GROUP_COUNT};
use backlift::swing::observed::observe;
use backlift::swing::player_stroke::Held;

use super::apart::{ROOM, settled};
use super::{demo, pass_until};
use crate::studio::action::Action;
use crate::studio::playback::Camera;
use crate::studio::scene::body::{Frame, Part, Side, parts};
use crate::studio::scene::pose::Posed;
use crate::studio::scene::solid::{Ring, Solid};
use crate::studio::scene::{Figure, bat, ground};
use crate::studio::state::Studio;

/// What the scene may be off the core, m.
const NEAR_M: f64 = 0.001;

/// Largest distance of the bat's toe and contact point in the scene from where a swing simulated at this
/// score has them, over the whole stroke, m.
fn furthest_m(it: &mut Studio, n: usize, held: &Held, at: &AtScore) -> f64 {
    let (stroke, runs) = (it.innings(0).unwrap().it.strokes[n].clone(), at.left.runs);
    let capacity: [f64; GROUP_COUNT] = if runs == 0.0 { FRESH } else { at.left.with_slow };
    let seen = observe(held, &capacity, at.with_slow[n].fastest.stroke_time_s);
    it.apply(Action::Stroke(stroke.clone()));
    it.apply(Action::Score(runs as u32));
    // A score between those that were swung is met at the same share of a stroke hardly longer or shorter.
    let longer = it.scene(ROOM).unwrap().figures[0].contact_s / seen.contact.time_s;
    assert!((longer - 1.0).abs() < 5e-3, "{stroke} at {runs}: {longer} times as long");
    let mut furthest = 0.0_f64;
    for moment in seen.series.iter().filter(|it| it.t_s <= seen.contact.time_s) {
        it.apply(Action::Scrub(longer * moment.t_s));
        let scene = it.scene(ROOM).unwrap();
        let first = &scene.figures[0];
        let place = |from_top_m| first.pose.bat.point(DVec3::new(from_top_m, 0.0, 0.0));
        furthest = furthest
            .max((place(first.length_m) - moment.toe_W).length())
            .max((place(first.contact_m) - moment.contact_W).length());
    }
    furthest
}

#[test]
fn the_bat_in_the_scene_is_where_the_core_has_it_to_a_millimetre() {
    let mut it = settled();
    let loaded = it.derived.loaded.clone().unwrap();
    let batter = loaded.batter(&loaded.bats[0], 1.0).unwrap();
    let asked = loaded.asked_times_s(&batter).unwrap();
    let taken_up = batter.take_up(&loaded.bats[0].bat).unwrap();
    // The second is between the scores that were swung, at the same share of the stroke.
    let played = loaded.play(&batter, &loaded.bats[0].bat, &asked, &[0.0, 42.0, 50.0]).unwrap();
    assert_eq!(loaded.stroke_names(), ["drive", "pull", "hook"]);
    for (n, held) in taken_up.iter().enumerate() {
        for (at, most_m) in played.iter().zip([0.1 * NEAR_M, NEAR_M, 0.1 * NEAR_M]) {
            let furthest = furthest_m(&mut it, n, held, at);
            assert!(furthest < most_m, "stroke {n} at {}: {furthest} m", at.left.runs);
        }
    }
}

#[test]
fn both_hands_are_on_the_handle_and_both_feet_on_the_ground() {
    let mut it = settled();
    let frame = Frame::of(&it.derived.loaded.as_ref().unwrap().player);
    for stroke in ["drive", "pull", "hook"] {
        it.apply(Action::Stroke(stroke.to_owned()));
        for n in 0..=10 {
            it.apply(Action::Scrub(it.length_s() * f64::from(n) / 10.0));
            let scene = it.scene(ROOM).unwrap();
            let first = &scene.figures[0];
            let part = |wanted| first.pose.body.iter().find(|it| it.0 == wanted).unwrap().1;
            let segments = &it.derived.loaded.as_ref().unwrap().player.segments;
            for side in [Side::Front, Side::Back] {
                let grip = part(Part::Hand(side)).point(DVec3::Z * -segments.wrist_to_grip_m);
                let off = (grip - part(Part::Fingers(side)).position_W).length();
                assert!(off < 0.002, "{stroke} {side:?} hand: {off} m off the handle");
                let ankle = part(Part::Foot(side)).position_W.z;
                assert!(ankle > 0.99 * frame.ankle_m && ankle < frame.ankle_m + 0.25);
                let drawn = part(Part::Thigh(side)).stretch;
                assert!(drawn < 1.08, "{stroke}: legs drawn {drawn} times as long");
            }
        }
    }
}

#[test]
fn the_middle_of_what_is_looked_at_is_the_middle_of_the_room() {
    let mut it = settled();
    for camera in [Camera::Side, Camera::Bowler, Camera::Keeper, Camera::Above, Camera::Batter] {
        it.apply(Action::Camera(camera));
        it.apply(Action::Orbit(0.3, 0.2));
        let scene = it.scene(ROOM).unwrap();
        let at = scene.eye.on_screen(scene.eye.target_W, ROOM).unwrap();
        assert!((at - ROOM.center()).length() < 0.01, "{camera:?}: {at:?}");
        let behind = scene.eye.position_W * 2.0 - scene.eye.target_W;
        assert_eq!(scene.eye.on_screen(behind, ROOM), None);
    }
}

#[test]
fn a_left_hander_is_seen_in_the_mirror() {
    let mut it = settled();
    let screen = |it: &Studio| {
        let scene = it.scene(ROOM).unwrap();
        let at = |figure: &Figure| scene.eye.on_screen(figure.on_bat_W(figure.length_m), ROOM);
        at(&scene.figures[0]).unwrap() - ROOM.center()
    };
    let time_s = 0.6 * it.length_s();
    it.apply(Action::Scrub(time_s));
    let right = screen(&it);
    it.apply(Action::Set("player.handed".to_owned(), "left".to_owned()));
    pass_until(&mut it, |it| it.stroke_time_s(0).is_some());
    it.apply(Action::Scrub(time_s));
    let left = screen(&it);
    assert!((right.x + left.x).abs() < 0.1 && (right.y - left.y).abs() < 0.1, "{right} {left}");
}

#[test]
fn the_second_bat_lags_and_both_start_in_one_place() {
    let mut it = settled();
    let apart = |it: &Studio| {
        let scene = it.scene(ROOM).unwrap();
        let toe = |figure: &Figure| figure.on_bat_W(figure.contact_m);
        (toe(&scene.figures[0]) - toe(&scene.figures[1])).length()
    };
    it.apply(Action::Scrub(0.0));
    assert!(apart(&it) < 0.02, "{}", apart(&it));
    let times = [it.stroke_time_s(0).unwrap(), it.stroke_time_s(1).unwrap()];
    it.apply(Action::Scrub(times[0].min(times[1])));
    let speed_m_s = it.through(0).last().unwrap().bat_speed_m_s;
    let expected = (times[0] - times[1]).abs() * speed_m_s;
    assert!((apart(&it) / expected - 1.0).abs() < 0.35, "{} {expected}", apart(&it));
}

#[test]
fn surfaces_are_closed_face_outwards_and_have_their_size() {
    let loaded = demo().derived.loaded.clone().unwrap();
    for (part, solid) in parts(&loaded.player, 0.034, 24) {
        assert!(solid.volume_m3() > 0.0, "{part:?}");
        assert!(solid.normals.iter().flatten().all(|it| it.is_finite()), "{part:?}");
        assert_eq!(solid.positions.len(), solid.tones.len());
        assert_eq!(solid.positions.len(), solid.normals.len());
    }
    // A ball of 36 mm, and a straight limb with round ends.
    let ball = 4.0 / 3.0 * std::f64::consts::PI * backlift::impact::ball::RADIUS_M.powi(3);
    assert!((ground::ball().volume_m3() / ball - 1.0).abs() < 0.05);
    let rings = [Ring::new(0.0, [0.05; 2]), Ring::new(-0.3, [0.05; 2])];
    let limb = Solid::limb(&rings, 48, [1.0; 3]).volume_m3();
    let exact = std::f64::consts::PI * 0.05_f64.powi(2) * (0.3 + 4.0 / 3.0 * 0.05);
    assert!((limb / exact - 1.0).abs() < 0.03, "{limb} {exact}");
}

#[test]
fn the_drawn_bat_has_the_length_and_the_volume_of_the_shape_that_is_weighed() {
    let loaded = demo().derived.loaded.clone().unwrap();
    for weighed in &loaded.bats {
        let shape = bat::shape(weighed, &loaded.laws);
        let solid = bat::solid(&shape, 32, [0.0; 3]);
        let along = solid.positions.iter().map(|it| f64::from(it[0]));
        let long = along.fold(0.0, f64::max);
        assert!((long - weighed.length_m.value).abs() < 0.005, "{long}");
        // The splice runs inside the blade, the grips are of rubber: only the order is the same.
        let willow_kg = solid.volume_m3() * shape.blade.density_kg_m3;
        assert!((willow_kg / weighed.mass_kg.value - 1.0).abs() < 0.15, "{willow_kg}");
    }
}

#[test]
fn a_scene_is_ready_well_within_a_picture() {
    let it = settled();
    let started = std::time::Instant::now();
    for _ in 0..200 {
        std::hint::black_box(it.scene(ROOM).unwrap());
        std::hint::black_box((it.through(0), it.through(1)));
    }
    let each_s = started.elapsed().as_secs_f64() / 200.0;
    eprintln!("scene and two paths: {:.0} us", 1e6 * each_s);
    assert!(each_s < 0.004, "{each_s} s");
}

#[test]
fn every_part_of_the_body_is_placed() {
    let it = settled();
    let loaded = it.derived.loaded.clone().unwrap();
    let innings = it.innings(0).unwrap().it;
    let reel = it.reel(innings).unwrap();
    let scene = it.scene(ROOM).unwrap();
    for (part, _) in parts(&loaded.player, 0.034, 12) {
        assert!(scene.figures[0].pose.body.iter().any(|it| it.0 == part), "{part:?}");
    }
    let bat = Posed::new(reel.chain, Frame::of(&loaded.player)).bat(&reel.at(0.0).unwrap());
    assert!((bat.R.determinant() - 1.0).abs() < 1e-9);
}

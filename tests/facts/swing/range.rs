//! How far a stroke's keys may move.

use backlift::files::stroke::built_in;
use backlift::stroke::Stroke;
use backlift::stroke::range::{MOVES, moved};

fn ends() -> impl Iterator<Item = [f64; MOVES]> {
    (0..MOVES).flat_map(|i| {
        [-1.0, 1.0].map(|end| core::array::from_fn(|j| if i == j { end } else { 0.0 }))
    })
}

fn by_name(name: &str) -> Stroke {
    built_in().unwrap().into_iter().find(|it| it.name == name).unwrap()
}

#[test]
fn keys_that_do_not_move_are_the_stroke_itself() {
    for stroke in built_in().unwrap() {
        assert_eq!(moved(&stroke, &[0.0; MOVES]), stroke);
    }
}

#[test]
fn wherever_the_keys_move_the_face_looks_the_same_way_at_contact() {
    for stroke in built_in().unwrap() {
        let face = |it: &Stroke| it.keys.iter().find(|key| key.p == 1.0).unwrap().face.normalize();
        for moves in ends() {
            assert!(face(&moved(&stroke, &moves)).dot(face(&stroke)) > 1.0 - 1e-12);
        }
    }
}

#[test]
fn no_move_takes_hands_further_than_15_hundredths_of_an_arm_or_a_bat_further_than_20_degrees() {
    for stroke in built_in().unwrap() {
        for moves in ends() {
            for (a, b) in stroke.keys.iter().zip(&moved(&stroke, &moves).keys) {
                assert!((b.grip - a.grip).length() <= 0.15 + 1e-12);
                assert!(a.toe.normalize().angle_between(b.toe) <= 20.0_f64.to_radians() + 1e-9);
                assert!((b.trunk_rad[0] - a.trunk_rad[0]).abs() <= 12.0_f64.to_radians() + 1e-12);
            }
        }
    }
}

#[test]
fn a_bat_that_lags_is_nearer_to_where_it_was_at_the_backlift() {
    for name in ["drive", "pull", "hook"] {
        let stroke = by_name(name);
        let lag: [f64; MOVES] = core::array::from_fn(|i| if i == 13 { 1.0 } else { 0.0 });
        let behind = |it: &Stroke| it.keys[1].toe.normalize().angle_between(it.keys[0].toe);
        assert!(behind(&moved(&stroke, &lag)) < behind(&stroke), "{name}");
    }
}

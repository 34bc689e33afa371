//! What the bottom hand puts on the handle besides a force.

use backlift::frames::rotation_vector;
use backlift::measurement::person::Handed;
use backlift::swing::assumed::Assumed;
use backlift::swing::observed::observe;
use backlift::swing::player_stroke::{Held, PlayerStroke};
use backlift::swing::state::Instantaneous;

use super::players::{FRESH, adult, adult_bat, boy_of_twelve, boys_bat, strokes};

fn recorded(held: &Held, times_fastest: f64) -> Vec<Instantaneous> {
    let time_s = times_fastest * held.fastest(&FRESH, None).unwrap().stroke_time_s;
    let mut instants = Vec::new();
    held.swinger(&FRESH).swing(time_s, Some(&mut |at| instants.push(at)));
    instants
}

/// Largest angle by which the bat has turned in the bottom hand, degrees.
fn turned_deg(held: &Held, instants: &[Instantaneous]) -> f64 {
    let chain = &held.chain;
    let mut k = chain.tree.kinematics();
    let mut largest = 0.0_f64;
    for at in instants {
        chain.tree.forward_kinematics(&at.state.q, &at.state.v, at.a_base_W, &mut k);
        let in_hand = k.R[chain.bottom_hand.link_b].transpose() * k.R[chain.link.bat];
        let turned = rotation_vector(&(held.reference.held_R.transpose() * in_hand));
        largest = largest.max(turned.length().to_degrees());
    }
    largest
}

fn players() -> [(&'static str, Vec<PlayerStroke>, backlift::bat::Bat); 2] {
    [
        ("adult", strokes(&adult(Handed::Right)), adult_bat()),
        ("boy", strokes(&boy_of_twelve(Handed::Right)), boys_bat()),
    ]
}

/// In a hurry the hand uses what it has: the drive comes within a tenth of the limit about the handle.
#[test]
fn the_bottom_hand_puts_no_more_on_the_handle_than_its_grip_can_hold() {
    for (who, strokes, bat) in players() {
        for stroke in &strokes {
            let held = stroke.hold(&bat).unwrap();
            let limit = held.chain.grip.bottom_couple_n_m;
            let mut share = [0.0_f64; 3];
            let mut k = held.chain.tree.kinematics();
            for at in recorded(&held, 1.0) {
                held.chain.tree.forward_kinematics(&at.state.q, &at.state.v, at.a_base_W, &mut k);
                let in_bat = k.R[held.chain.link.bat].transpose() * at.couple_bottom_W;
                for i in 0..3 {
                    share[i] = share[i].max(in_bat[i].abs() / limit[i]);
                }
            }
            println!("bottom couple {who} {}: {share:.3?} of {limit:.2?} N m", stroke.stroke.name);
            assert!(share.iter().all(|it| *it <= 1.0), "{who} {}: {share:?}", stroke.stroke.name);
            if stroke.stroke.name == "drive" {
                assert!(share[0] > 0.9, "{who}: {share:?}");
            }
        }
    }
}

/// At the asked stroke time, 1.15 × the fastest, by no more than the palm gives.
#[test]
fn the_handle_stays_as_it_was_grasped() {
    for (who, strokes, bat) in players() {
        for stroke in &strokes {
            let held = stroke.hold(&bat).unwrap();
            let [calm, hurried] = [1.15, 1.0].map(|k| turned_deg(&held, &recorded(&held, k)));
            println!(
                "handle in the bottom hand {who} {}: {calm:.1}°, {hurried:.1}° at the fastest",
                stroke.stroke.name
            );
            assert!(
                calm < 15.0 && hurried < 25.0,
                "{who} {}: {calm} {hurried}",
                stroke.stroke.name
            );
        }
    }
}

/// Friction × grip × diameter: on a thicker handle the same grip holds more. With wet gloves that decides how fast
/// the adult drives; with dry ones he has couple enough on either.
#[test]
fn a_thicker_handle_lets_the_adult_drive_faster_where_friction_is_short() {
    let stroke = strokes(&adult(Handed::Right)).swap_remove(0);
    assert_eq!(stroke.stroke.name, "drive");
    let speed = |diameter_m: f64, friction: f64| {
        let assumed = Assumed { friction, ..Assumed::default() };
        let held = stroke.clone().with_handle(diameter_m, assumed).hold(&adult_bat()).unwrap();
        held.fastest(&FRESH, None).unwrap().bat_speed_m_s
    };
    let [wet, dry] = [0.3, 0.6].map(|friction| [0.031, 0.037].map(|it| speed(it, friction)));
    println!("drive on handles of 31 and 37 mm: wet gloves {wet:.3?} m/s, dry {dry:.3?}");
    assert!(wet[1] > wet[0], "{wet:?}");
    assert!((dry[1] / dry[0] - 1.0).abs() < 0.005, "{dry:?}");
}

/// A handle that was measured is swung as it is; the grip that it takes falls with its thickness.
#[test]
fn bats_of_28_45_and_66_mm_at_the_handle_swing_differently() {
    let bat = |diameter_m: f64| adult_bat().with_handle_diameter_m(Some(diameter_m));
    for stroke in strokes(&adult(Handed::Right)) {
        let own = |diameter_m: f64| {
            let held = stroke.hold(&bat(diameter_m)).unwrap();
            let time_s = held.fastest(&FRESH, None).unwrap().stroke_time_s;
            (held.chain.grip.bottom_couple_n_m[0], time_s, observe(&held, &FRESH, 0.5))
        };
        let [thin, usual, thick] = [0.028, 0.045, 0.066].map(own);
        let grip_n = [&thin, &usual, &thick].map(|it| it.2.top.grip_needed_n);
        let time_s = [thin.1, usual.1, thick.1];
        println!("{}, 28, 45 and 66 mm: {time_s:.5?} s, {grip_n:.0?} N", stroke.stroke.name);
        assert!((thick.0 / thin.0 - 66.0 / 28.0).abs() < 1e-9, "{} {}", thick.0, thin.0);
        // In the pull the bat's pull along the handle decides from 45 mm on: 176.8 and 176.9 N, measured.
        let twist_decides = stroke.stroke.name != "pull";
        assert!(grip_n[0] > grip_n[1], "{grip_n:?}");
        assert_eq!(grip_n[1] > grip_n[2], twist_decides, "{} {grip_n:?}", stroke.stroke.name);
        for (a, b) in [(0, 1), (1, 2), (0, 2)] {
            // The hook at 45 and 66 mm disagrees: 9.9e-6; so does the sweep, which asks little of the grip: 5e-7 to 4e-6.
            let known = match stroke.stroke.name.as_str() {
                "hook" => (a, b) == (1, 2),
                name => name == "sweep",
            };
            assert_eq!((time_s[a] / time_s[b] - 1.0).abs() > 1e-5, !known, "{time_s:?}");
        }
    }
}

#[test]
fn a_measured_handle_counts_before_the_one_assumed_and_an_unmeasured_one_does_not() {
    let stroke = strokes(&adult(Handed::Right)).swap_remove(0);
    let stroke = stroke.with_handle(0.040, Assumed::default());
    let couple = |bat: &backlift::bat::Bat| stroke.hold(bat).unwrap().chain.grip.bottom_couple_n_m;
    let measured = couple(&adult_bat().with_handle_diameter_m(Some(0.030)));
    assert!((couple(&adult_bat())[0] / measured[0] - 4.0 / 3.0).abs() < 1e-9);
    assert_eq!(couple(&adult_bat())[1..], measured[1..]);
}

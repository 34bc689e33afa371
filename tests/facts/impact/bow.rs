//! A bowed face is met on its arc: an arc of a circle, and an oblique hit of a free bat, in closed form.

use backlift::bat::bow::Bow;
use backlift::impact::hit::Hit;
use backlift::impact::parts::Parts;
use backlift::impact::strike::{Struck, Until, strike};

use super::{hit, shape};

/// Radius of a circle by chord and sagitta, R = c²/(8 s) + s/2; the tangent's slope is the distance from the middle over
/// the root of what is left of R². Source: geometry.
#[test]
fn a_bow_is_the_arc_of_its_chord_and_sagitta_and_its_slope_the_arcs_tangent() {
    let (chord_m, sagitta_m) = (0.559, 0.010);
    let bow = Bow { chord_m, sagitta_m };
    let radius_m = chord_m * chord_m / (8.0 * sagitta_m) + 0.5 * sagitta_m;
    assert!((bow.radius_m() / radius_m - 1.0).abs() < 1e-12);
    for (share, behind_m) in [(0.0, 0.0), (0.5, sagitta_m), (1.0, 0.0)] {
        assert!((bow.behind_chord_m(share) - behind_m).abs() < 1e-12, "{share}");
    }
    for n in 1..20 {
        let share = f64::from(n) / 20.0;
        let d_m = (share - 0.5) * chord_m;
        let [sine, cosine] = bow.slope(share);
        assert!((sine * sine + cosine * cosine - 1.0).abs() < 1e-12);
        assert!((sine / cosine - d_m / (radius_m * radius_m - d_m * d_m).sqrt()).abs() < 1e-12);
        // And it is how the face comes forward: half the difference of two heights.
        let step = 1e-5;
        let ahead_m = bow.behind_chord_m(share - step) - bow.behind_chord_m(share + step);
        assert!((ahead_m / (2.0 * step * chord_m) - sine / cosine).abs() < 1e-8, "{share}");
    }
    let straight = Bow { chord_m, sagitta_m: 0.0 };
    assert_eq!((straight.behind_chord_m(0.3), straight.slope(0.3)), (0.0, [0.0, 1.0]));
}

/// A free stiff bat, not turning, in middle of its width; with this bow and nothing else of it changed.
fn free(bow_m: f64, from_toe_m: f64) -> Hit {
    let it = hit(&shape(), Some(1e7), false, from_toe_m);
    Hit { parts: Parts { bow_m, ..it.parts }, turns_about_m: -1e6, ..it }
}

fn struck(it: &Hit) -> Struck {
    strike(it, Until::Away).unwrap()
}

/// Rigid free body, smooth, in an instant: the impulse lies along the normal n at the place r from the centre of mass,
/// J = (1 + e) v·n / (1/m + 1/M + (r × n)²/I). Source: mechanics of a body in the plane. Accepted before: half a per cent
/// of the speed, as of a straight face, and a tenth of a degree of the way it goes, over what a straight face has of it by
/// the time that a contact takes.
#[test]
fn a_ball_goes_off_a_bowed_face_as_the_oblique_hit_of_a_free_body_has_it() {
    let bat = shape().bat("").unwrap();
    for (bow_m, from_toe_m) in [(0.005, 0.10), (0.010, 0.10), (0.010, 0.15), (0.020, 0.20)] {
        let it = free(bow_m, from_toe_m);
        let share = it.parts.from_shoulder(it.contact_from_top_m);
        let [sine, cosine] = it.parts.bow().slope(share);
        let z = it.parts.face_m - it.parts.bow().behind_chord_m(share);
        let r = [it.contact_from_top_m - bat.com_B().x, z - bat.com_B().z];
        let lever_m = -r[1] * sine - r[0] * cosine;
        let moved = 1.0 / it.ball.mass_kg
            + 1.0 / bat.mass_kg()
            + lever_m * lever_m / bat.I_Com_B().y_axis.y;
        let impulse = (1.0 + it.ball.restitution) * (it.ball_m_s + it.bat_m_s) * cosine / moved;
        let exit_m_s = impulse * cosine / it.ball.mass_kg - it.ball_m_s;
        let along_deg = (-impulse * sine / it.ball.mass_kg).atan2(exit_m_s).to_degrees();
        let (found, straight) = (struck(&it), struck(&free(0.0, from_toe_m)));
        assert!((found.exit_m_s / exit_m_s - 1.0).abs() < 5e-3, "{bow_m} {exit_m_s}: {found:?}");
        let found_deg = (found.along_rad - straight.along_rad).to_degrees();
        assert!(
            (found_deg - along_deg).abs() < 0.1,
            "{bow_m} {from_toe_m}: {found_deg} {along_deg}"
        );
        assert!(along_deg < -0.5, "towards the handle: {along_deg}");
    }
}

/// The middle of the arc lies square to the blow: there a bow moves only where the face lies. Accepted before: a
/// thousandth of the speed.
#[test]
fn in_the_middle_of_its_arc_a_bowed_face_sends_the_ball_as_fast_as_a_straight_one() {
    let it = free(0.0, 0.0);
    let from_toe_m = 0.5 * (it.parts.toe_m - it.parts.shoulder_m);
    let [straight, bowed] = [0.0, 0.010].map(|bow_m| struck(&free(bow_m, from_toe_m)).exit_m_s);
    assert!((bowed / straight - 1.0).abs() < 1e-3, "{bowed} {straight}");
}

#[test]
fn what_is_lost_of_momentum_and_energy_is_accounted_for_on_a_bowed_face_too() {
    let it = hit(&shape(), None, true, 0.12);
    let it = Hit { parts: Parts { bow_m: 0.010, ..it.parts }, across_m: 0.015, ..it };
    let account = strike(&it, Until::Felt).unwrap().account;
    // As the straight face's own fact accepts at this step.
    assert!(account.momentum_share < 1e-9, "{account:?}");
    assert!(account.energy_share.abs() < 1e-3, "{account:?}");
}

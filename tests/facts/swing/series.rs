//! The series of a swing is enough for others to check it: what moves the bat stands in it.

use backlift::frames::{DMat3, DVec3, STANDARD_GRAVITY_M_S2};
use backlift::measurement::person::Handed;
use backlift::player::joints::JOINT_COUNT;
use backlift::swing::observed::observe;
use backlift::swing::run::STEPS;

use super::players::{FRESH, adult, adult_bat, strokes};

/// A second difference of places, one step of 1.5 ms and more either side, against the greatest.
const NEAR: f64 = 0.02;

/// Newton's law of the bat, from places and forces of the series alone; joint rates from its angles.
#[test]
fn the_forces_of_both_hands_move_the_bat_as_its_places_say_and_rates_are_those_of_the_angles() {
    for handed in [Handed::Right, Handed::Left] {
        let bat = adult_bat();
        for mut stroke in strokes(&adult(handed)) {
            stroke.steps = 2 * STEPS;
            let held = stroke.hold(&bat).unwrap();
            let seen = observe(&held, &FRESH, 0.5);
            let com = |n: usize| -> DVec3 {
                let it = &seen.series[n];
                let x = (it.toe_W - it.handle_top_W).normalize();
                let R = DMat3::from_cols(x, it.face_W.cross(x), it.face_W);
                it.handle_top_W + R * bat.com_B()
            };
            let (mut off_n, mut most_n) = (0.0_f64, 0.0_f64);
            let (mut off_rad_s, mut most_rad_s) = (0.0_f64, 0.0_f64);
            for n in 1..seen.series.len() - 1 {
                let (it, before, after) =
                    (&seen.series[n], &seen.series[n - 1], &seen.series[n + 1]);
                let dt = it.t_s - before.t_s;
                let moved = (com(n + 1) - 2.0 * com(n) + com(n - 1)) / (dt * dt);
                let weight = DVec3::new(0.0, 0.0, -STANDARD_GRAVITY_M_S2) * bat.mass_kg();
                let force = it.hands.top.force_W + it.hands.bottom.force_W;
                off_n = off_n.max((force + weight - moved * bat.mass_kg()).length());
                most_n = most_n.max(force.length());
                for j in 0..JOINT_COUNT {
                    let rate_rad_s = (after.q[j] - before.q[j]) / (2.0 * dt);
                    off_rad_s = off_rad_s.max((rate_rad_s - it.rate_rad_s[j]).abs());
                    most_rad_s = most_rad_s.max(rate_rad_s.abs());
                }
            }
            let name = &stroke.stroke.name;
            println!(
                "{name}: {off_n:.2} of {most_n:.0} N, {off_rad_s:.3} of {most_rad_s:.1} rad/s"
            );
            assert!(off_n < NEAR * most_n, "{name}: {off_n} of {most_n} N");
            assert!(off_rad_s < NEAR * most_rad_s, "{name}: {off_rad_s} of {most_rad_s} rad/s");
        }
    }
}

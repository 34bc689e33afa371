//! Two hundred drawn players, bats and torques (`random_chains.json`).
//!
//! Torques that nobody steers whip the joints to 60–380 rad/s, where strokes stay below 40 rad/s (see
//! `swing/facts.rs`). So the step that is needed goes by how far a joint turns in it.

use backlift::frames::DVec3;

use super::given_torques::{Given, PRODUCT_STEPS, State, torque};
use crate::reference::motions::Drawn;
use crate::reference::read;

/// A joint's turn in one step up to which toe speeds must be within half a percent, rad.
pub const TURN_IN_A_STEP_RAD: f64 = 0.2;

/// Miss of the toe speed as a share, of the toe's place in metres, and the largest turn in a step.
struct End {
    speed: f64,
    place_m: f64,
    turn_rad: f64,
}

fn ends(drawn: &Drawn, steps: usize) -> Vec<End> {
    let dt = drawn.duration_s / steps as f64;
    let end = |case| {
        let given = Given::<17>::new(&drawn.chain(case));
        let law = drawn.law(case);
        let mut fastest = 0.0_f64;
        let end = given.swing(
            State::new(&case.q0_rad, &case.v0_rad_s),
            drawn.duration_s,
            steps,
            |t, v| torque(&law, t, v),
            |_, s| fastest = s.v.iter().fold(fastest, |m, v| m.max(v.abs())),
        );
        let (p, v) = given.toe(&end);
        End {
            speed: (v.length() / DVec3::from_array(case.toe_velocity_m_s).length() - 1.0).abs(),
            place_m: p.distance(DVec3::from_array(case.toe_m)),
            turn_rad: fastest * dt,
        }
    };
    drawn.cases.iter().map(end).collect()
}

#[test]
fn reference_two_hundred_drawn_swings_end_as_fast() {
    let drawn = read::<Drawn>("random_chains.json");
    for (steps, median, most, all) in
        [(PRODUCT_STEPS, 3e-4, 1e-2, 1e-1), (250, 1e-5, 5e-4, 2e-2), (500, 1e-6, 5e-5, 5e-3)]
    {
        let ends = ends(&drawn, steps);
        let sorted = |f: fn(&End) -> f64| {
            let mut values: Vec<f64> = ends.iter().map(f).collect();
            values.sort_by(f64::total_cmp);
            [0.5, 0.95, 1.0].map(|share| values[(share * (values.len() - 1) as f64) as usize])
        };
        let (speed, place) = (sorted(|it| it.speed), sorted(|it| it.place_m));
        let gentle: Vec<&End> = ends.iter().filter(|it| it.turn_rad < TURN_IN_A_STEP_RAD).collect();
        let worst = gentle.iter().map(|it| it.speed).fold(0.0, f64::max);
        println!(
            "drawn, {steps} steps: speed median {:.1e}, 95 % {:.1e}, max {:.1e}; place {:.1e}, {:.1e}, {:.1e} m; {} below 0.2 rad a step: max {worst:.1e}",
            speed[0],
            speed[1],
            speed[2],
            place[0],
            place[1],
            place[2],
            gentle.len()
        );
        assert!(speed[0] < median && speed[1] < most && speed[2] < all, "{steps}: {speed:?}");
        assert!(gentle.len() > 40 && worst < 5e-3, "{steps}: {} {worst}", gentle.len());
    }
}

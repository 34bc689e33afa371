//! How many tired readings narrow the band of lasting fatigue to what a fit needs.

use super::players::{Dice, by_curve, drawn, nets, pulls, read};
use backlift::calibration::calibrate;
use backlift::calibration::limit::LN_SPEED;
use rayon::prelude::*;

/// A fit lets its demand fail by 1 % of the time there is before it calls a bat another (tolerances);
/// what fatigue alone leaves open of the pull at fifty must not be more, as one standard deviation.
const NEEDED: f64 = 0.010;
/// Tired pulls, and as many fresh ones, that bring it there.
const TIRED: usize = 20;
const PLAYERS: u64 = 32;

/// Mean doubt of the speed a pull loses by fifty that the fit states, and the error it really makes.
fn lost(tired: usize) -> (f64, f64) {
    let nets = nets();
    let pull = nets.batter.stroke_index("pull").unwrap();
    let response = nets.simulated.response(0, pull).unwrap();
    let end = nets.simulated.tiredness(50.0);
    let all: Vec<(f64, f64)> = (0..PLAYERS)
        .into_par_iter()
        .map(|seed| {
            let mut dice = Dice(5000 + seed);
            let truth = drawn(&mut dice);
            let readings = read(&mut dice, &truth, 0.03, &pulls(tired, tired), &by_curve);
            let it = calibrate(&nets.order(), &nets.simulated, &readings).unwrap().surer.lost[1];
            let late = response.at(&end.tired(&truth.ln_strength, truth.lasting))[LN_SPEED];
            let lost = 1.0 - (late - response.at(&truth.ln_strength)[LN_SPEED]).exp();
            (it.sd, (it.mean - lost) * (it.mean - lost))
        })
        .collect();
    let n = all.len() as f64;
    let mean = all.iter().map(|it| it.0).sum::<f64>() / n;
    (mean, (all.iter().map(|it| it.1).sum::<f64>() / n).sqrt())
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn twenty_tired_pulls_and_twenty_fresh_ones_narrow_fatigue_to_what_a_fit_needs() {
    for tired in [5, 10, TIRED] {
        let (stated, error) = lost(tired);
        println!(
            "{tired} tired, {tired} fresh: stated {:.2} %, error {:.2} %",
            100.0 * stated,
            100.0 * error
        );
        if tired == TIRED {
            assert!(stated <= NEEDED, "{stated}");
            assert!(error <= 1.4 * NEEDED, "{error}");
        } else {
            assert!(stated > NEEDED, "{tired} would do: {stated}");
        }
    }
}

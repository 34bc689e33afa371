//! How near the fit comes to the truth, and how often its bands hold it.

use super::players::{Dice, by_curve, drawn, nets, plan, read};
use backlift::calibration::calibrate;
use backlift::calibration::limit::LN_SPEED;
use backlift::calibration::posterior::{Possible, Spread};
use rayon::prelude::*;

const PLAYERS: u64 = 240;

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn bands_of_nine_in_ten_hold_the_truth_of_nine_in_ten_players() {
    let nets = nets();
    let pull = nets.batter.stroke_index("pull").unwrap();
    let response = nets.simulated.response(0, pull).unwrap();
    let end = nets.simulated.tiredness(50.0);
    let speed = |it: &Possible, tired: bool| {
        let fresh = it.ln_strength;
        response.at(&if tired { end.tired(&fresh, it.lasting) } else { fresh })[LN_SPEED].exp()
    };
    // A player's truth, and what the fit says of it: spread before and after.
    let all: Vec<Vec<(f64, [Spread; 2])>> = (0..PLAYERS)
        .into_par_iter()
        .map(|seed| {
            let mut dice = Dice(1000 + seed);
            let truth = drawn(&mut dice);
            // Players differ in how evenly they swing, too.
            let scatter = 0.03 * (0.3 * dice.normal()).exp();
            let readings = read(&mut dice, &truth, scatter, &plan(8, 12), &by_curve);
            let it = calibrate(&nets.order(), &nets.simulated, &readings).unwrap();
            let mut out: Vec<(f64, [Spread; 2])> = it
                .parts
                .iter()
                .map(|p| (truth.ln_strength[p.part as usize], [p.before, p.after]))
                .collect();
            out.push((truth.lasting, it.lasting));
            out.push((speed(&truth, false), it.surer.fresh_pull_m_s));
            out.push((speed(&truth, true), it.surer.late_pull_m_s));
            out.push((1.0 - speed(&truth, true) / speed(&truth, false), it.surer.lost));
            out
        })
        .collect();
    let names = ["trunk", "arms", "wrists", "lasting", "fresh pull", "late pull", "pull lost"];
    for (f, name) in names.into_iter().enumerate() {
        let of = |which: usize, what: &dyn Fn(f64, Spread) -> f64| {
            all.iter().map(|it| what(it[f].0, it[f].1[which])).sum::<f64>() / all.len() as f64
        };
        let inside = |truth: f64, it: Spread| {
            if (it.low..=it.high).contains(&truth) { 1.0 } else { 0.0 }
        };
        let square = |truth: f64, it: Spread| (truth - it.mean) * (truth - it.mean);
        let [before, after] = [0, 1].map(|which| of(which, &square).sqrt());
        let coverage = of(1, &inside);
        let stated = of(1, &|_, it| it.sd);
        println!(
            "{name}: error {before:.4} before, {after:.4} after (stated {stated:.4}); band of 90 % holds {:.1} % before, {:.1} % after",
            100.0 * of(0, &inside),
            100.0 * coverage
        );
        // 240 players: one standard deviation of a true 90 % is 1.9 %.
        assert!((0.85..=0.96).contains(&coverage), "{name}: {coverage}");
        assert!(after <= before * 1.02, "{name}: {before} before, {after} after");
    }
}

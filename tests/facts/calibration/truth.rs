//! The curves between simulations against full simulations, and players whose swings are simulated.

use super::players::{Dice, by_curve, drawn, nets, plan, read};
use backlift::calibration::posterior::Possible;
use backlift::calibration::{calibrate, pull_at};
use backlift::files::stroke::{built_in, read as stroke};
use backlift::measurement::nets::{Calibration, Lasting, NetReading};
use backlift::player::calibrated::factors;
use backlift::swing::batter::Batter;
use rayon::prelude::*;
use std::cell::RefCell;
use std::collections::BTreeMap;

/// By the whole search at this strength, nothing between.
pub(super) fn by_simulation(batter: &Batter, truth: &Possible, reading: &NetReading) -> (f64, f64) {
    if_controlled(batter, truth, reading).unwrap()
}

/// The same; none where such a player does not control the stroke on these paths.
fn if_controlled(batter: &Batter, truth: &Possible, reading: &NetReading) -> Option<(f64, f64)> {
    let nets = nets();
    let stroke = batter.stroke_index(&reading.stroke).unwrap();
    let held = batter.strokes[stroke].hold(&nets.bats[reading.bat].bat).unwrap();
    let tired = nets.simulated.tiredness(reading.runs).tired(&truth.ln_strength, truth.lasting);
    let near = by_curve(truth, reading).0.exp();
    let it = held.fastest(&factors(&tired), Some(near)).ok()?;
    Some((it.stroke_time_s.ln(), it.bat_speed_m_s.ln()))
}

/// Bat, stroke and score of a swing.
type Swung = (usize, String, u64);

const PLAYERS: u64 = 16;

/// What came out for players whose swings are simulated with these strokes.
struct Fitted {
    /// Curve less simulation, on the logarithm of the time.
    curve: Vec<f64>,
    /// Error of the fastest pull: by the tables, with the readings, m/s.
    off_m_s: [f64; 2],
    inside: usize,
}

fn fitted(batter: &Batter) -> Fitted {
    let nets = nets();
    let all: Vec<(Vec<f64>, [f64; 2], bool)> = (0..PLAYERS)
        .into_par_iter()
        .filter_map(|seed| {
            let mut dice = Dice(9000 + seed);
            let truth = drawn(&mut dice);
            let swings = plan(8, 12);
            // One who does not control them on these paths would not have been filmed.
            swings
                .iter()
                .map(|it| if_controlled(batter, &truth, it))
                .collect::<Option<Vec<_>>>()?;
            // Each swing is simulated once.
            let known: RefCell<BTreeMap<Swung, (f64, f64)>> = RefCell::default();
            let swing = |_: &Possible, reading: &NetReading| {
                let key = (reading.bat, reading.stroke.clone(), reading.runs.to_bits());
                let mut known = known.borrow_mut();
                *known.entry(key).or_insert_with(|| by_simulation(batter, &truth, reading))
            };
            let plan = swings;
            let off = plan.iter().map(|it| by_curve(&truth, it).0 - swing(&truth, it).0).collect();
            let speed = swing(&truth, &plan[0]).1.exp();
            let readings = read(&mut dice, &truth, 0.03, &plan, &swing);
            let it = calibrate(&nets.order(), &nets.simulated, &readings).unwrap();
            let [before, after] = it.surer.fresh_pull_m_s;
            let inside = (after.low..=after.high).contains(&speed);
            Some((off, [before.mean - speed, after.mean - speed], inside))
        })
        .collect();
    assert!(4 * all.len() as u64 >= 3 * PLAYERS, "{} of {PLAYERS} control the strokes", all.len());
    Fitted {
        curve: all.iter().flat_map(|it| it.0.iter().copied()).collect(),
        off_m_s: [0, 1].map(|which| rms(&all.iter().map(|it| it.1[which]).collect::<Vec<_>>())),
        inside: all.iter().filter(|it| it.2).count(),
    }
}

fn rms(it: &[f64]) -> f64 {
    (it.iter().map(|it| it * it).sum::<f64>() / it.len() as f64).sqrt()
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn the_curves_and_the_fit_hold_for_swings_that_are_simulated() {
    let Fitted { curve, off_m_s: [before, after], inside } = fitted(&nets().batter);
    let largest = curve.iter().fold(0.0_f64, |a, b| a.max(b.abs()));
    println!(
        "curves off by {:.2} % (largest {:.1} %); fastest pull off by {before:.2} m/s before, {after:.2} after; {inside} of {PLAYERS} inside their bands",
        100.0 * rms(&curve),
        100.0 * largest
    );
    // A third of the 4 % by which a player's own way of a stroke may differ; the tails may be worse.
    assert!(rms(&curve) < 0.013 && largest < 0.08, "{} {largest}", rms(&curve));
    assert!(after < 0.75 * before, "{before} {after}");
    // Of 16 true nine-in-ten bands fewer than 12 hold in one case of 60.
    assert!(inside >= 12, "{inside}");
}

/// Pull and hook on the prototype's joint paths: pulls 7 % and hooks 20 % slower at the same strength.
/// No assumption of the fit says so, and it must not be fooled into worse than the tables.
#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn players_who_swing_on_other_paths_are_still_read_better_than_by_the_tables() {
    let nets = nets();
    let strokes = [
        built_in().unwrap().swap_remove(0),
        stroke(include_str!("../../../assets/reference/strokes/pull.ron")).unwrap(),
        stroke(include_str!("../../../assets/reference/strokes/hook.ron")).unwrap(),
    ];
    let batter = Batter::new(&nets.batter.player, &strokes, &nets.bats[0].bat).unwrap();
    let Fitted { off_m_s: [before, after], inside, .. } = fitted(&batter);
    println!(
        "on other paths: fastest pull off by {before:.2} m/s before, {after:.2} after; {inside} of {PLAYERS} inside their bands"
    );
    assert!(after < 0.75 * before, "{before} {after}");
}

#[test]
fn a_calibrated_player_swings_as_the_fit_says_in_every_other_command() {
    let nets = nets();
    let mut dice = Dice(31);
    let truth = drawn(&mut dice);
    let readings = read(&mut dice, &truth, 0.03, &plan(6, 6), &by_curve);
    let it = calibrate(&nets.order(), &nets.simulated, &readings).unwrap();
    let [fresh, late] = pull_at(&nets.order(), &nets.simulated, &it.calibration).unwrap();
    let player = nets.batter.player.calibrated(&it.calibration);
    let batter = nets.batter.with_strength(player.strength);
    let pull = batter.stroke_index("pull").unwrap();
    let held = batter.strokes[pull].hold(&nets.bats[0].bat).unwrap();
    let speed = |capacity: f64| held.fastest(&[capacity; 7], None).unwrap().bat_speed_m_s;
    assert!((speed(1.0) / fresh - 1.0).abs() < 1e-6);
    assert!(late < fresh);
    // The spread that the nets left stands in the player, and is what the tables had or less.
    let tables = nets.batter.player.strength.relative_sd;
    for (after, before) in player.strength.relative_sd.iter().zip(tables) {
        assert!(*after < 1.05 * before, "{after} {before}");
    }
}

#[test]
fn without_tired_readings_the_band_of_lasting_fatigue_stays_as_it_was() {
    let nets = nets();
    let mut dice = Dice(32);
    let truth = drawn(&mut dice);
    let readings = read(&mut dice, &truth, 0.03, &plan(6, 0), &by_curve);
    let it = calibrate(&nets.order(), &nets.simulated, &readings).unwrap();
    let Calibration { lasting, .. } = it.calibration;
    assert_eq!(lasting, Lasting::UNKNOWN);
}

//! The decision alone, its inputs moved by a hundredth: worth moves smoothly, and the bat to order hardly.

use super::demo::{fitted, junior};
use backlift::fit::fitting::Fitting;
use backlift::fit::map::{Cell, OneSize};
use backlift::worth::expected::Knowledge;
use backlift::worth::possible::Possible;
use backlift::worth::today::Today;

fn even(draw: u32, figure: u32) -> f64 {
    f64::from(sobol_burley::sample(draw, figure, 17))
}

/// What is moved: a factor on one figure of every possible player, or of the bowling.
const INPUTS: [fn(&mut Possible, f64); 8] = [
    |it, by| it.own_start_s *= by,
    |it, by| it.margin_sd *= by,
    |it, by| it.restitution *= by,
    |it, by| it.torque_noise *= by,
    |it, by| it.judged_place_m *= by,
    |it, by| it.ball_kg *= by,
    |it, by| it.late_ball *= by,
    |it, by| it.ball_at_bat *= by,
];

/// The same knowledge with some inputs moved; the time there is stands anew with each possible player's own spread.
fn moved(knowledge: &Knowledge, inputs: &[usize], by: f64) -> Knowledge {
    let mut out = knowledge.clone();
    let flight_s = out.delivery.flight_s();
    for (it, there_is_s) in out.draws.iter_mut().zip(&mut out.there_is_s) {
        let before_s = it.margin_sd * it.spread_s(flight_s);
        for input in inputs {
            INPUTS[*input](it, by);
        }
        let after_s = it.margin_sd * it.spread_s(flight_s);
        for it in there_is_s {
            *it += after_s - before_s;
        }
    }
    out
}

fn worths(one: &OneSize, today: &Today, cells: &[&Cell]) -> Vec<f64> {
    cells.iter().map(|it| one.worth(today, &it.made.bat).mean_m_s()).collect()
}

fn best(worths: &[f64]) -> usize {
    (0..worths.len()).max_by(|a, b| worths[*a].total_cmp(&worths[*b])).unwrap()
}

/// Set before it was seen: every bat's worth moves by less than 6 % and is straight to 0.1 %; the bat asked for keeps its
/// swing moment to 2 %, or is one of within 0.5 % of the same worth.
fn moves_smoothly(it: &Fitting, moves: std::ops::Range<u32>) {
    let [low, high] = it.one.range.size.usual_kg;
    let usual = |it: &&Cell| (low..=high).contains(&it.made.bat.mass_kg());
    let cells: Vec<&Cell> = it.map().iter().filter(usual).step_by(3).collect();
    let own = worths(&it.one, &it.now.today, &cells);
    let asked = best(&own);
    for draw in moves {
        let inputs: Vec<usize> =
            (0..3).map(|n| (even(draw, n) * INPUTS.len() as f64) as usize).collect();
        let with = |by: f64| {
            let mut today = it.now.today.clone();
            today.knowledge = moved(&today.knowledge, &inputs, by);
            worths(&it.one, &today, &cells)
        };
        let (less, more) = (with(0.99), with(1.01));
        for ((a, b), c) in less.iter().zip(&own).zip(&more) {
            assert!((c / b - 1.0).abs() < 0.06, "{inputs:?}: {b} {c}");
            assert!(((a + c) / (2.0 * b) - 1.0).abs() < 0.001, "{inputs:?}: {a} {b} {c}");
        }
        let then = best(&more);
        let swing = |cell: usize| cells[cell].made.bat.swing_moment_kg_m2();
        let near = (swing(then) / swing(asked) - 1.0).abs() < 0.02;
        assert!(near || own[then] >= 0.995 * own[asked], "{inputs:?}");
    }
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn three_inputs_moved_by_a_hundredth_move_worth_smoothly_and_the_bat_to_order_hardly() {
    // Three hundred moves as for a release; without the variable the first of them.
    let all = std::env::var_os("BACKLIFT_ALL_DRAWN").is_some();
    let each = if all { 150 } else { 12 };
    moves_smoothly(junior(), 0..each);
    moves_smoothly(&fitted("club", &[]), each..2 * each);
}

//! Facts about the stage `innings`.

mod published;

use approx::assert_relative_eq;
use backlift::innings::ball_by_ball::{BallLoads, Left, capacity_at_scores};
use backlift::innings::compartments::{Compartments, Rates};
use backlift::innings::schedule::Schedule;
use backlift::innings::slow_state::Exertion;
use backlift::measurement::nets::Lasting;
use backlift::player::joints::{GROUP_COUNT, Group};
use backlift::swing::observed::PhaseLoad;
use proptest::prelude::*;

const ROWS: [Rates; 4] = [Rates::TRUNK, Rates::SHOULDER, Rates::ELBOW, Rates::GRIP];

#[test]
fn one_run_is_not_one_runs() {
    use backlift::innings::score::runs_words;
    assert_eq!([0.0, 1.0, 50.0].map(runs_words), ["0 runs", "1 run", "50 runs"]);
}

#[test]
fn a_load_below_the_endless_share_is_held_for_ever() {
    for rates in ROWS {
        assert_eq!(rates.hold_time_s(0.99 * rates.endless_share()), f64::INFINITY);
    }
}

#[test]
fn the_slow_state_takes_nothing_at_its_low_end_and_less_in_the_middle_than_at_the_high_end() {
    let bout = Exertion { balls_faced: 42.0, runs_run: 84.0, time_s: 42.0 * 42.0 };
    assert_eq!(bout.capacity(Lasting::UNKNOWN.low), 1.0);
    let central = bout.capacity(Lasting::UNKNOWN.central);
    assert!(central < 1.0 && central > bout.capacity(Lasting::UNKNOWN.high));
}

#[test]
fn a_held_load_fails_exactly_when_the_closed_form_says() {
    for rates in ROWS {
        for share in [0.2, 0.5, 0.9] {
            let end_s = rates.hold_time_s(share);
            let at = |t: f64| Compartments::FRESH.after(rates, share, t);
            assert_relative_eq!(at(end_s).capacity(), share, max_relative = 1e-9);
            assert_relative_eq!(at(0.99 * end_s).active, share, max_relative = 1e-12);
            assert!(at(1.05 * end_s).active < share);
        }
    }
}

proptest! {
    #[test]
    fn shares_stay_between_nothing_and_all_and_two_short_loads_make_a_long_one(
        row in 0usize..4, first in 0.0..1.0_f64, share in 0.0..1.0_f64, t in 0.0..200.0_f64, part in 0.0..1.0_f64,
    ) {
        let rates = ROWS[row];
        let start = Compartments::FRESH.after(rates, first, 60.0);
        let whole = start.after(rates, share, t);
        let halves = start.after(rates, share, part * t).after(rates, share, (1.0 - part) * t);
        prop_assert!((whole.fatigued - halves.fatigued).abs() < 1e-9);
        for it in [whole.resting, whole.active, whole.fatigued] {
            prop_assert!((-1e-12..=1.0 + 1e-12).contains(&it));
        }
        prop_assert!((whole.resting + whole.active + whole.fatigued - 1.0).abs() < 1e-12);
    }
}

fn innings_of(share: f64, seconds: f64, hold: f64, strike: f64, scores: &[f64]) -> Vec<Left> {
    let phase = |duration_s, share| PhaseLoad { duration_s, share: [share; GROUP_COUNT] };
    let loads = BallLoads { stance: phase(6.0, hold), strokes: vec![vec![phase(seconds, share)]] };
    let schedule =
        Schedule { strike, over_break_s: 0.0, balls_per_run: 1.0, ..Schedule::ordinary(vec![1.0]) };
    capacity_at_scores(&schedule, &loads, scores).unwrap()
}

/// Computed beside the published constants: 0.5 s at full load a ball, 6 s of 8 %, every second ball
/// faced, 38 s a ball: 0.1–0.9 % fatigued from ball 6 to ball 100; twice the load and hold, every ball
/// faced: 1–5 %.
#[test]
fn published_constants_level_off_within_a_dozen_balls() {
    let ordinary = innings_of(1.0, 0.5, 0.08, 0.5, &[3.0, 6.0, 25.0, 50.0]);
    let hard = innings_of(1.0, 1.0, 0.16, 1.0, &[6.0, 12.0, 50.0, 100.0]);
    for group in Group::ALL {
        let tired = |left: &Left| 1.0 - left.without_slow[group as usize];
        println!(
            "{group:?}: ordinary {:.4} {:.4}; hard {:.4} {:.4}",
            tired(&ordinary[1]),
            tired(&ordinary[3]),
            tired(&hard[1]),
            tired(&hard[3])
        );
        for left in &ordinary {
            assert!((0.0005..0.0095).contains(&tired(left)), "{group:?} {:.4}", tired(left));
        }
        for left in &hard {
            assert!((0.0095..0.05).contains(&tired(left)), "{group:?} {:.4}", tired(left));
        }
        assert!((tired(&ordinary[3]) - tired(&ordinary[1])).abs() < 0.002, "{group:?} is level");
    }
}

#[test]
fn at_no_runs_everyone_is_fresh_and_later_no_group_is_fresher() {
    let left = innings_of(0.6, 0.4, 0.08, 0.5, &[50.0, 0.0, 10.0]);
    assert_eq!(left[1].without_slow, [1.0; GROUP_COUNT]);
    assert_eq!(left[1].with_slow_high, [1.0; GROUP_COUNT]);
    assert_eq!([left[0].runs, left[2].runs], [50.0, 10.0], "in the order asked");
    for g in 0..GROUP_COUNT {
        assert!(left[0].with_slow[g] < left[2].with_slow[g]);
        assert!(left[0].with_slow_high[g] < left[0].with_slow[g]);
        assert!(left[0].with_slow[g] < left[0].without_slow[g]);
    }
}

#[test]
fn a_heavier_load_leaves_less() {
    let (light, heavy) =
        (innings_of(0.5, 0.5, 0.08, 0.5, &[50.0]), innings_of(0.7, 0.5, 0.10, 0.5, &[50.0]));
    for g in 0..GROUP_COUNT {
        assert!(heavy[0].without_slow[g] < light[0].without_slow[g]);
    }
}

#[test]
fn every_stretch_of_balls_has_each_stroke_within_one_of_its_share() {
    let mix = [0.37, 0.2, 0.11];
    let schedule = Schedule::ordinary(mix.to_vec());
    let faced: Vec<_> = schedule.balls().take(1000).filter(|it| it.faced).collect();
    assert_eq!(faced.len(), 500);
    for until in [10, 57, 200, 500] {
        for (i, share) in mix.iter().enumerate() {
            let count = faced[..until].iter().filter(|it| it.stroke == Some(i)).count() as f64;
            assert!((count - share * until as f64).abs() <= 1.0, "stroke {i} of {until}: {count}");
        }
    }
}

#[test]
fn an_innings_that_cannot_be_is_refused_by_the_name_of_its_field() {
    let loads = BallLoads {
        stance: PhaseLoad { duration_s: 6.0, share: [0.08; GROUP_COUNT] },
        strokes: vec![],
    };
    let ordinary = Schedule::ordinary(vec![0.5]);
    let field = |schedule: Schedule, runs: f64| match capacity_at_scores(&schedule, &loads, &[runs])
    {
        Err(fault) => fault.field(),
        Ok(_) => "accepted",
    };
    assert_eq!(
        field(Schedule { balls_per_run: 0.0, ..ordinary.clone() }, 50.0),
        "innings.balls_per_run"
    );
    assert_eq!(field(Schedule { mix: vec![0.5, -0.1], ..ordinary.clone() }, 50.0), "innings.mix");
    assert_eq!(field(Schedule { mix: vec![0.5, 0.6], ..ordinary.clone() }, 50.0), "innings.mix");
    assert_eq!(field(ordinary.clone(), f64::NAN), "innings.runs");
    assert_eq!(field(ordinary.clone(), -1.0), "innings.runs");
    assert_eq!(field(ordinary, 50.0), "accepted");
}

#[test]
fn a_tired_group_carries_the_same_stroke_as_a_larger_share_and_tires_more() {
    let left = innings_of(0.6, 0.4, 0.08, 0.5, &[80.0])[0];
    let so_far = Exertion {
        balls_faced: f64::from(left.balls_faced),
        runs_run: left.runs_run,
        time_s: left.time_s,
    };
    let slow = so_far.capacity(Lasting::UNKNOWN.high);
    for g in 0..GROUP_COUNT {
        // What the compartments alone hold, beside the same innings without the slow state.
        assert!(left.with_slow_high[g] / slow < left.without_slow[g] - 1e-6, "{g}");
    }
}

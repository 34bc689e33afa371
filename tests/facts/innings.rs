//! Facts about the stage `innings`.

use approx::assert_relative_eq;
use backlift::innings::ball_by_ball::{BallLoads, Left, LoadPhase, capacity_at_scores};
use backlift::innings::compartments::{Compartments, Rates};
use backlift::innings::schedule::{Schedule, ScheduleFault};
use backlift::innings::slow_state::{Band, Exertion};
use backlift::player::joints::{GROUP_COUNT, Group};
use proptest::prelude::*;

const ROWS: [Rates; 4] = [Rates::TRUNK, Rates::SHOULDER, Rates::ELBOW, Rates::GRIP];

/// Frey-Law et al. 2012 constants, closed form computed elsewhere (evidence table, printed to 0.1 s).
#[test]
fn published_constants_give_the_tabulated_hold_times() {
    let rows = [
        (Rates::TRUNK, 0.5, 139.5),
        (Rates::TRUNK, 0.9, 14.8),
        (Rates::SHOULDER, 0.1, 1057.4),
        (Rates::SHOULDER, 0.6, 37.8),
        (Rates::ELBOW, 0.3, 292.7),
        (Rates::ELBOW, 0.8, 27.8),
        (Rates::GRIP, 0.2, 473.1),
        (Rates::GRIP, 0.7, 44.4),
    ];
    for (rates, share, time_s) in rows {
        assert!((rates.hold_time_s(share) - time_s).abs() <= 0.051, "{rates:?} at {share}");
    }
    let endless = [0.0904, 0.0845, 0.0934, 0.0613];
    for (rates, share) in ROWS.into_iter().zip(endless) {
        assert_relative_eq!(rates.endless_share(), share, epsilon = 5e-5);
        assert_eq!(rates.hold_time_s(0.99 * rates.endless_share()), f64::INFINITY);
    }
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

/// The same equations stepped by the classical Runge–Kutta rule at 5 ms, with a controller that follows
/// within 20 ms: an independent route to the same states through failure, partial load and rest.
#[test]
fn the_closed_form_agrees_with_the_stepped_equations() {
    let rates = Rates::SHOULDER;
    let loads = [(0.6, 60.0), (0.0, 20.0), (0.3, 40.0), (0.95, 15.0), (0.1, 90.0)];
    let (mut exact, mut y) = (Compartments::FRESH, [0.0_f64, 0.0]);
    for (target, duration_s) in loads {
        exact = exact.after(rates, target, duration_s);
        let recovery =
            rates.recovery_per_s * if target == 0.0 { rates.rest_multiplier } else { 1.0 };
        let rate = |[active, fatigued]: [f64; 2]| {
            let wanted = target.min(1.0 - fatigued);
            let drive = (wanted - active) / 0.02 + rates.fatigue_per_s * active;
            [
                drive - rates.fatigue_per_s * active,
                rates.fatigue_per_s * active - recovery * fatigued,
            ]
        };
        let add = |y: [f64; 2], k: [f64; 2], h: f64| [y[0] + h * k[0], y[1] + h * k[1]];
        let h = 0.005;
        for _ in 0..(duration_s / h) as usize {
            let k1 = rate(y);
            let k2 = rate(add(y, k1, 0.5 * h));
            let k3 = rate(add(y, k2, 0.5 * h));
            let k4 = rate(add(y, k3, h));
            for i in 0..2 {
                y[i] += h / 6.0 * (k1[i] + 2.0 * k2[i] + 2.0 * k3[i] + k4[i]);
            }
        }
        // The controller's 20 ms shift each change of load by as much: F × 0.02 s, at most 4e-4.
        assert!((exact.fatigued - y[1]).abs() < 1e-3, "{target}: {exact:?} against {y:?}");
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

/// Greatest contractions of a time with rests: capacity at the start of each.
fn repeated(rates: Rates, count: usize, work_s: f64, rest_s: f64) -> Vec<f64> {
    let mut muscle = Compartments::FRESH;
    let mut peaks = Vec::new();
    for _ in 0..count {
        peaks.push(muscle.capacity());
        muscle = muscle.after(rates, 1.0, work_s).after(rates, 0.0, rest_s);
    }
    peaks
}

fn mean(it: &[f64]) -> f64 {
    it.iter().sum::<f64>() / it.len() as f64
}

/// PMC3776088: twelve greatest grips of 3 s with 5 s rests, 21 adults: mean of the last three over the
/// first three 25.2/33.6 = 0.75. DISAGREES: the published constants give 0.86, a fall of 14 % for the
/// measured 25 %. In order of size only: accepted between half and twice the measured fall.
#[test]
fn published_twelve_grips_fall_by_the_measured_order_of_size() {
    let peaks = repeated(Rates::GRIP, 12, 3.0, 5.0);
    let fall = 1.0 - mean(&peaks[9..]) / mean(&peaks[..3]);
    println!("twelve grips: model {fall:.3}, measured 0.250");
    assert!((0.125..0.5).contains(&fall), "fall {fall:.3}");
}

/// Kramer & Knudson 1992: thirty greatest grips with 25 s rests, no fall. AGREES only roughly: with 3 s
/// a grip (assumed, not stated) the constants give a level 4.5 % below the first, reached within ten.
#[test]
fn published_thirty_grips_with_long_rests_hardly_fall() {
    let peaks = repeated(Rates::GRIP, 30, 3.0, 25.0);
    let fall = 1.0 - mean(&peaks[27..]);
    println!("thirty grips: model {fall:.3}, measured none");
    assert!(fall < 0.06, "fall {fall:.3}");
    assert!((peaks[29] - peaks[10]).abs() < 0.002, "level from the tenth on");
}

fn innings_of(share: f64, seconds: f64, hold: f64, strike: f64, scores: &[f64]) -> Vec<Left> {
    let phase = |duration_s, share| LoadPhase { duration_s, share: [share; GROUP_COUNT] };
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

/// Christie et al. 2019: knee extensors −10 % over 42 balls with 6 sprints an over, −18 % with 12.
#[test]
fn published_loss_of_the_knee_is_the_high_end_of_the_slow_band() {
    for (sprints, left) in [(42.0, 0.90), (84.0, 0.82)] {
        let bout = Exertion { balls_faced: 42.0, runs_run: sprints, time_s: 42.0 * 42.0 };
        assert_relative_eq!(bout.capacity(Band::High), left, epsilon = 5e-4);
        assert_eq!(bout.capacity(Band::Low), 1.0);
        let central = bout.capacity(Band::Central);
        assert!(central < 1.0 && central > left);
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

/// Pote & Christie 2016: five overs in 21 minutes.
#[test]
fn published_five_overs_take_twenty_one_minutes() {
    let schedule = Schedule::ordinary(vec![0.4, 0.1, 0.05]);
    let time_s: f64 = schedule.balls().take(30).map(|it| it.interval_s).sum();
    assert_relative_eq!(time_s, 21.0 * 60.0, max_relative = 1e-12);
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
        stance: LoadPhase { duration_s: 6.0, share: [0.08; GROUP_COUNT] },
        strokes: vec![],
    };
    let ordinary = Schedule::ordinary(vec![0.5]);
    let field = |schedule: Schedule, runs: f64| match capacity_at_scores(&schedule, &loads, &[runs])
    {
        Err(ScheduleFault::OutOfRange { field, .. }) => field,
        Err(ScheduleFault::MixAbove1 { .. }) => "sum",
        Ok(_) => "accepted",
    };
    assert_eq!(
        field(Schedule { balls_per_run: 0.0, ..ordinary.clone() }, 50.0),
        "innings.balls_per_run"
    );
    assert_eq!(field(Schedule { mix: vec![0.5, -0.1], ..ordinary.clone() }, 50.0), "innings.mix");
    assert_eq!(field(Schedule { mix: vec![0.5, 0.6], ..ordinary.clone() }, 50.0), "sum");
    assert_eq!(field(ordinary.clone(), f64::NAN), "innings.runs");
    assert_eq!(field(ordinary.clone(), -1.0), "innings.runs");
    assert_eq!(field(ordinary, 50.0), "accepted");
}

#[test]
fn an_innings_of_a_hundred_costs_little() {
    let start = std::time::Instant::now();
    for _ in 0..20 {
        std::hint::black_box(innings_of(0.5, 0.5, 0.08, 0.5, &[0.0, 50.0, 100.0]));
    }
    let each_ms = start.elapsed().as_secs_f64() * 50.0;
    println!("{each_ms:.3} ms");
    assert!(each_ms < 20.0, "{each_ms} ms: twenty times the budget, machine load allowed for");
}

#[test]
fn a_tired_group_carries_the_same_stroke_as_a_larger_share_and_tires_more() {
    let left = innings_of(0.6, 0.4, 0.08, 0.5, &[80.0])[0];
    let so_far = Exertion {
        balls_faced: f64::from(left.balls_faced),
        runs_run: left.runs_run,
        time_s: left.time_s,
    };
    let slow = so_far.capacity(Band::High);
    for g in 0..GROUP_COUNT {
        // What the compartments alone hold, beside the same innings without the slow state.
        assert!(left.with_slow_high[g] / slow < left.without_slow[g] - 1e-6, "{g}");
    }
}

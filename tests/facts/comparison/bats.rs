//! Two or more bats in one player's hands.

use approx::assert_relative_eq;
use backlift::bat::figures::{WeighedBat, weigh};
use backlift::comparison::bats::{BatDifference, Comparison, ComparisonFault, compare};
use backlift::comparison::carried::Common;
use backlift::comparison::figure::{Figure, StrokeFigure, When};
use backlift::comparison::noticeable::Felt;
use backlift::comparison::swung::Asked;
use backlift::files::{assets, scenario, stroke};
use backlift::fit::setting::Setting;
use backlift::measurement::bench::BatReading;
use backlift::measurement::plan::Scenario;
use backlift::player::grip::FRICTION;
use backlift::player::joints::FRESH;
use backlift::player::joints::GROUP_COUNT;
use backlift::player::player;
use backlift::swing::batter::Batter;
use std::ops::ControlFlow;
use std::sync::OnceLock;

struct Net {
    scenario: Scenario,
    batter: Batter,
    bats: Vec<WeighedBat>,
    asked_time_s: Vec<f64>,
}

impl Net {
    fn new(file: &str) -> Self {
        let file = format!("scenarios/{file}.ron");
        let scenario = scenario::load(Some(file.as_ref()), &[]).unwrap().scenario;
        let bats: Vec<_> = scenario.bats.iter().map(weighed).collect();
        let player = player(&scenario.player).unwrap();
        let strokes = stroke::usual().unwrap();
        let batter = Batter::new(&player, &strokes, &bats[0].bat).unwrap();
        let asked_time_s = Setting::asked_times_s(&batter, &bats[0].bat, 1.15).unwrap();
        Self { scenario, batter, bats, asked_time_s }
    }

    fn asked(&self) -> Asked<'_> {
        Asked {
            batter: &self.batter,
            plan: &self.scenario.innings,
            delivery: self.scenario.bowling,
            asked_time_s: &self.asked_time_s,
            ball_kg: self.scenario.fit.ball_mass_kg,
        }
    }

    fn compare(&self, bats: &[WeighedBat]) -> Comparison {
        compare(&self.asked(), bats, &|_, _| ControlFlow::Continue(())).unwrap()
    }

    fn pull(&self) -> usize {
        self.batter.stroke_index("pull").unwrap()
    }
}

/// The club player, his bats, and the comparison of them: simulated once for every fact here.
fn club() -> &'static (Net, Comparison) {
    static CLUB: OnceLock<(Net, Comparison)> = OnceLock::new();
    CLUB.get_or_init(|| both("club"))
}

/// Two bats of one weight, likewise.
fn same_weight() -> &'static (Net, Comparison) {
    static SAME_WEIGHT: OnceLock<(Net, Comparison)> = OnceLock::new();
    SAME_WEIGHT.get_or_init(|| both("same-weight"))
}

fn both(file: &str) -> (Net, Comparison) {
    let net = Net::new(file);
    let comparison = net.compare(&net.bats);
    (net, comparison)
}

fn weighed(reading: &BatReading) -> WeighedBat {
    weigh(reading, &assets::sizes().unwrap(), &assets::limits().unwrap()).unwrap()
}

fn of(comparison: &Comparison, figure: Figure) -> &BatDifference {
    comparison.differences.iter().find(|it| it.figure == figure).unwrap()
}

/// The reading of a bat with a point mass taped round its toe: balance and pendulum worked by hand.
fn with_toe_tape(plain: &WeighedBat, tape_kg: f64) -> BatReading {
    let mut reading = plain.reading.clone();
    let (mass, balance, toe) = (plain.mass_kg.value, plain.balance_m.value, plain.length_m.value);
    reading.label = "Taped".into();
    reading.mass_kg = mass + tape_kg;
    reading.balance_m = Some((mass * balance + tape_kg * toe) / (mass + tape_kg));
    let pendulum = reading.pendulum.as_mut().unwrap();
    // Period goes with the root of I / (m d) about the pivot, which is the pickup axis here.
    let axis = pendulum.pivot_from_top_m;
    let before = plain.swing_moment_kg_m2.value / (mass * (balance - axis));
    let static_kg_m = mass * (balance - axis) + tape_kg * (toe - axis);
    let after = (plain.swing_moment_kg_m2.value + tape_kg * (toe - axis).powi(2)) / static_kg_m;
    pendulum.time_s *= (after / before).sqrt();
    reading
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn of_two_identical_bats_no_difference_is_real_and_none_is_felt() {
    let net = &club().0;
    let mut twin = net.bats[0].reading.clone();
    twin.label = "Twin".into();
    let comparison = net.compare(&[net.bats[0].clone(), weighed(&twin)]);
    assert_eq!(comparison.differences.len(), comparison.figures.len());
    for it in &comparison.differences {
        assert_eq!(it.difference.value, 0.0, "{it:?}");
        assert!(!it.difference.real && it.felt.is_none_or(|it| it == Felt::No), "{it:?}");
        // A wrist that gives all it has does so whatever the bat: no doubt is left in its share.
        let may_be_sure = matches!(it.figure, Figure::Stroke(_, _, StrokeFigure::WristShare));
        assert!(it.difference.sd > 0.0 || may_be_sure, "both were weighed with doubt: {it:?}");
    }
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn thirty_grams_at_the_toe_are_real_and_slow_the_bat() {
    let net = &club().0;
    let taped = weighed(&with_toe_tape(&net.bats[0], 0.030));
    let comparison = net.compare(&[net.bats[0].clone(), taped]);
    let at = |figure| of(&comparison, figure).difference;
    let lever = net.bats[0].length_m.value - 0.1524;
    let swing = at(Figure::SwingMoment);
    assert_relative_eq!(swing.value, 0.030 * lever * lever, max_relative = 2e-3);
    for figure in [Figure::DeadWeight, Figure::Balance, Figure::HoldMoment] {
        assert!(at(figure).real && at(figure).value > 0.0, "{figure:?} {:?}", at(figure));
    }
    for stroke in 0..3 {
        for when in [When::Fresh, When::AtFifty] {
            let at = |figure| at(Figure::Stroke(stroke, when, figure));
            assert!(at(StrokeFigure::BatSpeed).value < 0.0);
            assert!(at(StrokeFigure::StrokeTime).value > 0.0);
            assert!(at(StrokeFigure::TimeInHand).value < 0.0);
            assert!(at(StrokeFigure::FastestBall).value < 0.0);
            // Nought where the wrist gives all it has with either bat.
            assert!(at(StrokeFigure::WristShare).value >= 0.0);
        }
    }
}

#[test]
fn the_players_doubt_cancels_between_bats() {
    let (net, comparison) = club();
    for figure in [StrokeFigure::BatSpeed, StrokeFigure::StrokeTime, StrokeFigure::ExitSpeed] {
        let figure = Figure::Stroke(net.pull(), When::AtFifty, figure);
        let index = comparison.figures.iter().position(|it| *it == figure).unwrap();
        let apart = of(comparison, figure).difference.sd;
        for bat in &comparison.bats {
            let (_, sd) = bat.value_sd(index);
            assert!(apart < 0.25 * sd, "{figure:?}: {apart} against {sd}");
        }
    }
}

/// What is carried comes from three to six swings each; here the changed player is searched to the end.
#[test]
fn a_weaker_player_searched_anew_loses_what_is_carried() {
    let (net, comparison) = club();
    let grip_sd = 0.05; // both grips measured
    let strength = net.batter.player.strength.times(&[1.0 - grip_sd; GROUP_COUNT]);
    let taken_up = net.batter.with_strength(strength).take_up(&net.bats[0].bat).unwrap();
    for (stroke, held) in taken_up.iter().enumerate() {
        let found = held.fastest(&FRESH, Some(0.4)).unwrap();
        let at = |figure| {
            let figure = Figure::Stroke(stroke, When::Fresh, figure);
            let index = comparison.figures.iter().position(|it| *it == figure).unwrap();
            comparison.bats[0].carried[index]
        };
        for (figure, searched) in [
            (StrokeFigure::StrokeTime, found.stroke_time_s),
            (StrokeFigure::BatSpeed, found.bat_speed_m_s),
        ] {
            let carried = at(figure);
            // The last digits of a swing (up to 0.05 %) are a twentieth of so small a change.
            let said = carried.by_common[0][0];
            let change = searched - carried.value;
            assert!((said - change).abs() < 0.05 * change.abs(), "{figure:?} {said} {change}");
        }
    }
}

/// A trunk weaker by a third, the longest way any doubt goes.
#[test]
fn a_player_with_a_much_weaker_trunk_searched_anew_loses_what_is_carried() {
    let (net, comparison) = club();
    let mut factors = [1.0; GROUP_COUNT];
    factors[0] = 0.7; // its own ±30 %, beside the grip
    let strength = net.batter.player.strength.times(&factors);
    for (n, bat) in net.bats.iter().enumerate() {
        let taken_up = net.batter.with_strength(strength).take_up(&bat.bat).unwrap();
        let found = taken_up[net.pull()].fastest(&FRESH, Some(0.4)).unwrap();
        let figure = Figure::Stroke(net.pull(), When::Fresh, StrokeFigure::BatSpeed);
        let index = comparison.figures.iter().position(|it| *it == figure).unwrap();
        let carried = comparison.bats[n].carried[index];
        let change = found.bat_speed_m_s - carried.value;
        assert_relative_eq!(carried.by_common[1][0], change, max_relative = 0.05);
    }
}

/// The slope in the swing moment against a bat built to differ in that alone, searched to the end.
#[test]
fn a_bat_with_more_swing_moment_searched_anew_loses_what_the_slopes_say() {
    let (net, comparison) = club();
    let it = &net.bats[0];
    let more = 0.004;
    let swing = it.swing_moment_kg_m2.value + more;
    let bat = it.with(it.mass_kg.value, it.balance_m.value, swing).unwrap();
    let taken_up = net.batter.take_up(&bat).unwrap();
    let pull = net.pull();
    let found = taken_up[pull].fastest(&FRESH, Some(0.4)).unwrap();
    let figure = Figure::Stroke(pull, When::Fresh, StrokeFigure::BatSpeed);
    let index = comparison.figures.iter().position(|it| *it == figure).unwrap();
    let carried = comparison.bats[0].carried[index];
    let change = found.bat_speed_m_s - carried.value;
    assert!(change < 0.0);
    assert_relative_eq!(carried.by_bat[2] * more, change, max_relative = 0.05);
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn the_same_bats_compare_to_the_same_bits_on_one_thread_or_more() {
    let (net, many) = same_weight();
    let pool = rayon::ThreadPoolBuilder::new().num_threads(1).build().unwrap();
    assert_eq!(*many, pool.install(|| net.compare(&net.bats)));
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn a_pair_of_one_weight_differs_in_pickup_and_not_in_weight() {
    let (net, comparison) = same_weight();
    let weight = of(comparison, Figure::DeadWeight);
    assert!(!weight.difference.real && weight.felt == Some(Felt::No), "{weight:?}");
    let swing = of(comparison, Figure::SwingMoment);
    assert!(swing.difference.real && swing.difference.value > 0.0, "{swing:?}");
    let speed = of(comparison, Figure::Stroke(net.pull(), When::AtFifty, StrokeFigure::BatSpeed));
    assert!(speed.difference.value < 0.0, "{speed:?}");
}

#[test]
fn the_doubt_of_the_grip_needed_is_mostly_friction_which_both_bats_share() {
    let (net, comparison) = club();
    let figure = Figure::Stroke(net.pull(), When::Fresh, StrokeFigure::GripShare);
    let place = comparison.figures.iter().position(|it| *it == figure).unwrap();
    let (value, sd) = comparison.bats[0].value_sd(place);
    assert!(sd > FRICTION.relative_sd() * value && sd < 0.5 * value, "{value} ± {sd}");
    let carried = &comparison.bats[0].carried[place];
    let [drier, wetter] = [1, 0].map(|way| carried.by_common[Common::Friction as usize][way]);
    assert!(drier < 0.0 && wetter > -drier, "{drier} {wetter}: goes with one over friction");
    assert!(of(comparison, figure).difference.sd < 0.5 * sd);
}

#[test]
fn one_bat_is_no_comparison_and_a_stop_is_heard() {
    let net = &club().0;
    let go_on = |_: &'static str, _: f64| ControlFlow::Continue(());
    let alone = compare(&net.asked(), &net.bats[..1], &go_on);
    assert_eq!(alone, Err(ComparisonFault::TooFew { count: 1 }));
    let stopped = compare(&net.asked(), &net.bats, &|_, _| ControlFlow::Break(()));
    assert_eq!(stopped, Err(ComparisonFault::Stopped));
}

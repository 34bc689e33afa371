use backlift::measurement::person::{PersonReading, Sex};
use backlift::measurement::plan::{Bowling, HowOften};
use backlift::normal;
use backlift::player::player;
use backlift::worth::evidence::{Weighed, chance_of, seen, unseen};
use backlift::worth::possible::{DRAWS, Possible, Prior};

fn prior(seen: bool) -> Prior {
    let player = player(&PersonReading::of(Sex::Male, 13.0, 1.60)).unwrap();
    Prior::new(&player, &Bowling::usual_at(13.0), 0.1385, 2, seen)
}

fn share_in_time(weighed: &Weighed) -> f64 {
    let sum: f64 = weighed.draws.iter().map(|it| normal::below(it.margin_sd)).sum();
    sum / weighed.draws.len() as f64
}

/// Seen fresh with the bat now used: the chance of being in time is the margin's own.
fn fresh(how_often: HowOften, balls: u32) -> impl Fn(&Possible) -> f64 + Sync {
    move |it: &Possible| chance_of(how_often, balls, normal::below(it.margin_sd))
}

#[test]
fn the_four_answers_share_out_all_that_can_happen() {
    for balls in [1, 7, 20, 60] {
        for in_time in [0.03, 0.4, 0.77, 0.99] {
            let sum: f64 = HowOften::ALL.iter().map(|it| chance_of(*it, balls, in_time)).sum();
            assert!((sum - 1.0).abs() < 1e-9, "{balls} {in_time}: {sum}");
        }
    }
}

#[test]
fn what_was_seen_orders_how_often_the_player_is_in_time() {
    let all = prior(true);
    let share = |it: HowOften| share_in_time(&seen(&all, |p| vec![fresh(it, 20)(p)]));
    let [nearly, most, half, few] = HowOften::ALL.map(share);
    assert!(nearly > most && most > half && half > few, "{nearly} {most} {half} {few}");
    for (answer, share) in HowOften::ALL.into_iter().zip([nearly, most, half, few]) {
        let [low, high] = answer.shares();
        assert!((low..=high).contains(&share), "{answer:?}: {share}");
    }
}

#[test]
fn more_balls_leave_less_doubt() {
    let all = prior(true);
    let spread = |balls: u32| {
        let weighed = seen(&all, |p| vec![fresh(HowOften::Most, balls)(p)]);
        let mean = share_in_time(&weighed);
        let off = |it: &Possible| (normal::below(it.margin_sd) - mean).powi(2);
        weighed.draws.iter().map(off).sum::<f64>() / DRAWS as f64
    };
    assert!(spread(60) < spread(6), "{} {}", spread(60), spread(6));
}

#[test]
fn one_answer_fixes_the_slack_and_leaves_the_spread_as_it_was() {
    let all = prior(true);
    let flight_s = 0.7;
    let mean = |draws: &[Possible]| {
        draws.iter().map(|it| it.spread_s(flight_s)).sum::<f64>() / draws.len() as f64
    };
    let before = mean(&unseen(&all));
    let after = mean(&seen(&all, |p| vec![fresh(HowOften::Half, 20)(p)]).draws);
    assert!((after / before - 1.0).abs() < 0.03, "{before} {after}");
}

#[test]
fn answers_that_no_one_player_gives_are_told_to_contradict() {
    let all = prior(true);
    let both = |a: HowOften, b: HowOften| {
        seen(&all, |p| vec![fresh(a, 40)(p), fresh(b, 40)(p)]).contradicts()
    };
    assert!(both(HowOften::NearlyAll, HowOften::Few));
    assert!(!both(HowOften::Most, HowOften::Most));
    assert!(!both(HowOften::NearlyAll, HowOften::Most));
}

#[test]
fn with_nothing_seen_the_share_in_time_is_the_assumption_and_nothing_else() {
    let draws = unseen(&prior(false));
    assert_eq!(draws.len(), DRAWS);
    for it in &draws {
        let share = normal::below(it.margin_sd);
        assert!((0.60 - 1e-6..=0.97 + 1e-6).contains(&share), "{share}");
    }
}

#[test]
fn the_same_player_is_drawn_again_the_same() {
    assert_eq!(unseen(&prior(false)), unseen(&prior(false)));
}

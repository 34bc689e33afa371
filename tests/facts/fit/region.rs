//! One region of good bats, and limits that hold together.

use super::demo::junior;
use backlift::bat::expected::bat_with_swing_moment;
use backlift::bat::pendulum::time_for_swings_s;
use backlift::fit::region::{MAY_LOSE, Region};
use backlift::measurement::bench::{PICKUP_AXIS_FROM_TOP_M, USUAL_AMPLITUDE_RAD};

/// A number between 0 and 1 for each draw and figure, without chance.
fn even(draw: u32, figure: u32) -> f64 {
    f64::from(sobol_burley::sample(draw, figure, 3))
}

fn between([low, high]: [f64; 2], share: f64) -> f64 {
    low + share * (high - low)
}

const DRAWN: u32 = 10_000;

#[test]
fn any_bat_within_all_printed_limits_is_accepted() {
    let it = &junior().recommendation;
    let t = it.tolerances;
    assert!(t.mass_kg[1] > t.mass_kg[0] && t.balance_m[1] > t.balance_m[0]);
    for draw in 0..DRAWN {
        let [mass, balance, swing] = [
            between(t.mass_kg, even(draw, 0)),
            between(t.balance_m, even(draw, 1)),
            between(t.swing_moment_kg_m2, even(draw, 2)),
        ];
        assert!(it.region.takes(mass, balance, swing), "{mass} {balance} {swing}");
    }
}

#[test]
fn any_time_printed_for_a_weight_is_a_swing_moment_within_its_limits_at_any_balance() {
    let t = junior().recommendation.tolerances;
    let mut told = 0;
    for draw in 0..DRAWN {
        let mass = between(t.mass_kg, even(draw, 0));
        let balance = between(t.balance_m, even(draw, 1));
        let Some(times) = t.times_at(mass, 30) else { continue };
        told += 1;
        let time = between([times.low_s, times.high_s], even(draw, 2));
        // The swing moment of this time, found by halving.
        let seconds = |swing: f64| {
            time_for_swings_s(mass, balance, swing, 30, PICKUP_AXIS_FROM_TOP_M, USUAL_AMPLITUDE_RAD)
                .unwrap()
        };
        let (mut low, mut high) = (0.05, 0.6);
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            if seconds(middle) < time { low = middle } else { high = middle }
        }
        let [least, most] = t.swing_moment_kg_m2;
        assert!((least - 1e-6..=most + 1e-6).contains(&low), "{low} of {least} to {most}");
    }
    assert!(told > DRAWN / 2, "times are printed for {told} of {DRAWN} weights");
}

#[test]
fn no_accepted_bat_is_worth_less_than_a_refused_one() {
    let region = junior().recommendation.region;
    let (mut accepted, mut refused) = (f64::NEG_INFINITY, f64::INFINITY);
    for draw in 0..DRAWN {
        let mass = region.mass_kg * between([0.95, 1.05], even(draw, 0));
        let balance = region.balance_m + between([-0.012, 0.012], even(draw, 1));
        let swing = region.swing_moment_kg_m2 * between([0.93, 1.07], even(draw, 2));
        let Some(lost) = region.worth_lost_share(mass, balance, swing) else { continue };
        match region.takes(mass, balance, swing) {
            true => accepted = accepted.max(lost),
            false => refused = refused.min(lost),
        }
    }
    assert!(accepted <= refused && accepted <= MAY_LOSE, "{accepted} {refused}");
}

#[test]
fn the_region_says_of_a_bat_what_its_swings_say() {
    // Set before it was seen: a tenth of a per cent of the worth.
    let it = junior();
    let region: Region = it.recommendation.region;
    let own = it.recommendation.worth.mean_m_s();
    let family = &it.one.swings.domain.family;
    let mut worst: f64 = 0.0;
    for draw in 0..60 {
        let mass = region.mass_kg * between([0.96, 1.04], even(draw, 0));
        let balance = region.balance_m + between([-0.008, 0.008], even(draw, 1));
        let lever =
            (balance - PICKUP_AXIS_FROM_TOP_M) / (region.balance_m - PICKUP_AXIS_FROM_TOP_M);
        let swing = region.swing_moment_kg_m2
            * (mass / region.mass_kg)
            * lever
            * between([0.98, 1.02], even(draw, 2));
        let bat = bat_with_swing_moment(family, "", mass, balance, swing).unwrap();
        let lost = 1.0 - it.one.worth(&it.now.today, &bat).mean_m_s() / own;
        let told = region.worth_lost_share(mass, balance, swing).unwrap();
        worst = worst.max((told - lost).abs());
    }
    assert!(worst < 0.001, "{worst}");
}

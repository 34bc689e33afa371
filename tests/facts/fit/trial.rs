use approx::assert_relative_eq;
use backlift::files::assets;
use backlift::fit::trial::{Near, Pickup, Place, SAME_SPEED, Tape, Trial, places, trial};
use backlift::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use backlift::ounce::cost::{Cost, StrokeOunce};

const OWNED: Pickup = Pickup { mass_kg: 1.1, balance_m: 0.52, swing_moment_kg_m2: 0.225 };

fn four() -> [Place; 4] {
    let sizes = assets::sizes().unwrap();
    places(&sizes.last().unwrap().reference)
}

const SPEED_M_S: f64 = 17.0;

/// A stroke about an axis this far above the top of the handle.
fn about(above_top_m: f64) -> StrokeOunce {
    let cost = |x: f64| Cost {
        from_top_m: x,
        speed_change_m_s_per_kg: -5.0 * (x + above_top_m) * (x + above_top_m),
    };
    StrokeOunce::through("pull", SPEED_M_S, 0.85, [0.0, 0.4, 0.85].map(cost))
}

fn pull() -> StrokeOunce {
    about(0.3)
}

/// How far the reached bat's speed is off, as a share, by a cost law about the wanted bat.
fn speed_off_share(found: &Trial, cost: &StrokeOunce) -> f64 {
    cost.change_m_s(found.reached.moments() - found.wanted.moments()) / cost.bat_speed_m_s
}

/// How far the reached bat's speed is off, as a share, worked by hand as a sum of point masses: the tape's cost,
/// less that of the wanted bat's.
fn speed_off(found: &Trial, wanted: &[(f64, f64)]) -> f64 {
    let cost = |grams: f64, x: f64| grams / 1000.0 * pull().at(x);
    let tape: f64 =
        found.weights.iter().map(|it| cost(f64::from(it.grams), it.place.from_top_m)).sum();
    let asked: f64 = wanted.iter().map(|(grams, x)| cost(*grams, *x)).sum();
    (tape - asked) / SPEED_M_S
}

/// Weights in grams at stations in metres, worked by hand from a sum of point masses.
fn by_hand(owned: Pickup, weights: &[(f64, f64)]) -> Pickup {
    let added: f64 = weights.iter().map(|(grams, _)| grams / 1000.0).sum();
    let moment: f64 = weights.iter().map(|(grams, at)| grams / 1000.0 * at).sum();
    let swing: f64 = weights.iter().map(|(g, at)| g / 1000.0 * (at - 0.1524) * (at - 0.1524)).sum();
    let mass_kg = owned.mass_kg + added;
    Pickup {
        mass_kg,
        balance_m: (owned.mass_kg * owned.balance_m + moment) / mass_kg,
        swing_moment_kg_m2: owned.swing_moment_kg_m2 + swing,
    }
}

#[test]
fn a_bat_with_a_known_mass_at_a_known_station_is_found_again() {
    for (place, grams) in [(3, 37), (2, 60), (1, 90)] {
        let station = four()[place].from_top_m;
        let wanted = by_hand(OWNED, &[(f64::from(grams), station)]);
        let found = trial(OWNED, wanted, &four(), &pull());
        assert_eq!(found.near, Near::Alike, "{found:?}");
        // Bat speed to a gram or so at the toe; swing and hold moment to a hundredth.
        let off = speed_off(&found, &[(f64::from(grams), station)]);
        assert!(off.abs() <= 5e-4, "{off}: {found:?}");
        assert_relative_eq!(speed_off_share(&found, &pull()), off, epsilon = 1e-12);
        let (got, asked) = (found.reached, found.wanted);
        assert_relative_eq!(
            got.swing_moment_kg_m2,
            asked.swing_moment_kg_m2,
            max_relative = 1.1e-2
        );
        assert_relative_eq!(got.hold_moment_n_m(), asked.hold_moment_n_m(), max_relative = 1.1e-2);
        let used: u32 = found.weights.iter().map(|it| it.grams).sum();
        assert!(used <= grams + 5, "{grams} g would do: {found:?}");
    }
}

#[test]
fn what_is_reached_is_the_sum_of_the_parts() {
    let wanted = Pickup { mass_kg: 1.2, balance_m: 0.525, swing_moment_kg_m2: 0.25 };
    let found = trial(OWNED, wanted, &four(), &pull());
    assert!(!found.weights.is_empty());
    let parts: Vec<(f64, f64)> =
        found.weights.iter().map(|it| (f64::from(it.grams), it.place.from_top_m)).collect();
    let hand = by_hand(OWNED, &parts);
    assert_relative_eq!(found.reached.mass_kg, hand.mass_kg, max_relative = 1e-12);
    assert_relative_eq!(found.reached.balance_m, hand.balance_m, max_relative = 1e-12);
    assert_relative_eq!(
        found.reached.swing_moment_kg_m2,
        hand.swing_moment_kg_m2,
        max_relative = 1e-12
    );
}

/// Every way to tape two of the places, tried one by one.
#[test]
fn no_way_with_less_tape_comes_as_near() {
    let wanted = Pickup { mass_kg: 1.16, balance_m: 0.535, swing_moment_kg_m2: 0.247 };
    let found = trial(OWNED, wanted, &four(), &pull());
    let used: u32 = found.weights.iter().map(|it| it.grams).sum();
    let miss = |it: &Pickup| {
        let speed = pull().change_m_s(it.moments() - wanted.moments()) / SPEED_M_S;
        let swing = it.swing_moment_kg_m2 / wanted.swing_moment_kg_m2 - 1.0;
        let hold = it.hold_moment_n_m() / wanted.hold_moment_n_m() - 1.0;
        (speed.abs(), swing.abs().max(hold.abs()))
    };
    let four = four();
    let (speed, feel) = miss(&found.reached);
    // A step of each above the nearest there is, which is within one step of the wanted here.
    assert!(speed < 6e-4 && feel < 0.0205, "{speed} {feel} {found:?}");
    for (one, other) in [(0, 3), (1, 3), (2, 3), (1, 2), (0, 2)] {
        for a in 0..=150 {
            for b in 0..=150 {
                let tape = |grams, place: usize| Tape { grams, place: four[place] };
                let it = OWNED.taped(&[tape(a, one), tape(b, other)]);
                let (s, f) = miss(&it);
                // A place less is worth five grams.
                let places = u32::from(a > 0) + u32::from(b > 0);
                let worse = a + b + 5 * places >= used + 5 * found.weights.len() as u32;
                assert!(worse || s > 4.9e-4 || f > 0.0099, "{a} g and {b} g do as well");
            }
        }
    }
}

/// What is taped for one stroke is not what another asks: the same wanted bat, two axes.
#[test]
fn the_stroke_decides_how_much_is_taped_where() {
    // Heavier in the handle and no heavier to swing about the pickup axis: a stroke about a far axis feels it.
    let wanted = by_hand(OWNED, &[(120.0, PICKUP_AXIS_FROM_TOP_M)]);
    assert_relative_eq!(wanted.swing_moment_kg_m2, OWNED.swing_moment_kg_m2, epsilon = 1e-12);
    for axis_m in [0.1, 0.3, 0.6] {
        let cost = about(axis_m);
        let found = trial(OWNED, wanted, &four(), &cost);
        let slower = -cost.change_m_s(wanted.moments() - OWNED.moments()) / SPEED_M_S;
        assert!(slower > 0.001, "{axis_m}: {slower}");
        assert!(!found.weights.is_empty(), "{axis_m}: the pickup is alike, the stroke is not");
        assert!(speed_off_share(&found, &cost).abs() < 5e-4, "{axis_m}: {found:?}");
    }
}

#[test]
fn tape_never_makes_a_bat_lighter_and_says_so() {
    let wanted = Pickup { mass_kg: 1.0, balance_m: 0.5, swing_moment_kg_m2: 0.2 };
    let found = trial(OWNED, wanted, &four(), &pull());
    assert_eq!(found.near, Near::OwnedHeavier);
    assert!(found.weights.is_empty());
    assert_eq!(found.reached, OWNED);
    assert!(speed_off_share(&found, &pull()) < -SAME_SPEED, "{found:?}");
}

#[test]
fn a_bat_far_too_light_is_brought_as_near_as_tape_allows() {
    let wanted = Pickup { mass_kg: 2.0, balance_m: 0.6, swing_moment_kg_m2: 0.5 };
    let found = trial(OWNED, wanted, &four(), &pull());
    assert_eq!(found.near, Near::TooFar);
    assert!(found.reached.swing_moment_kg_m2 < wanted.swing_moment_kg_m2);
    assert!(found.weights.iter().any(|it| it.grams == 150), "{found:?}");
}

#[test]
fn weights_are_whole_grams_at_three_places_at_most_on_the_bat() {
    for mass in [1.08, 1.12, 1.2, 1.25] {
        for swing in [0.222, 0.23, 0.25, 0.28] {
            let wanted = Pickup { mass_kg: mass, balance_m: 0.53, swing_moment_kg_m2: swing };
            let found = trial(OWNED, wanted, &four(), &pull());
            assert!(found.weights.len() <= 3);
            assert!(found.weights.iter().map(|it| it.grams).sum::<u32>() <= 250);
            assert!(found.weights.iter().all(|it| (1..=150).contains(&it.grams)));
            assert!(found.reached.mass_kg >= OWNED.mass_kg);
            assert!(found.reached.swing_moment_kg_m2 >= OWNED.swing_moment_kg_m2);
            assert_eq!(found, trial(OWNED, wanted, &four(), &pull()), "the same again");
        }
    }
}

#[test]
fn the_places_run_down_the_bat_with_one_above_the_hands() {
    let places = four();
    assert!(places.windows(2).all(|it| it[0].from_top_m < it[1].from_top_m), "{places:?}");
    assert!(places[0].from_top_m < PICKUP_AXIS_FROM_TOP_M);
    assert!(places[1].from_top_m > PICKUP_AXIS_FROM_TOP_M);
}

use super::sample::card;
use backlift::card::Figure;
use backlift::card::returned_bat::{Check, DecidedBy, ReturnedBat, Within, check};
use backlift::uncertain::Uncertain;

fn as_ordered() -> ReturnedBat {
    let card = card();
    let figures = Figure::ALL.map(|it| match it {
        Figure::DeadWeight => Some(Uncertain::measured(card.mass_kg(), 0.001)),
        Figure::Balance => Some(Uncertain::measured(card.balance_m(), 0.001)),
        Figure::SwingMoment => Some(Uncertain::computed(card.swing_moment_kg_m2(), 0.0007)),
        Figure::HandleDiameter => Some(Uncertain::measured(card.handle_diameter_m(), 0.0002)),
        Figure::SweetSpot => None,
    });
    ReturnedBat { figures }
}

/// The same with one figure measured anew.
fn with(mut bat: ReturnedBat, figure: Figure, measured: Uncertain) -> ReturnedBat {
    bat.figures[figure as usize] = Some(measured);
    bat
}

fn as_ordered_without(figure: Figure) -> ReturnedBat {
    let mut bat = as_ordered();
    bat.figures[figure as usize] = None;
    bat
}

fn within(check: &Check, figure: Figure) -> Within {
    check.items.iter().find(|it| it.figure == figure).unwrap().within
}

#[test]
fn a_bat_as_ordered_is_accepted_by_its_swing_moment() {
    let check = check(&card(), &as_ordered());
    assert!(check.accepted);
    assert_eq!(check.decided_by, DecidedBy::SwingMoment);
    assert_eq!(within(&check, Figure::SweetSpot), Within::NotMeasured);
}

#[test]
fn a_bat_of_the_right_weight_and_balance_but_the_wrong_swing_moment_goes_back() {
    let bat = with(as_ordered(), Figure::SwingMoment, Uncertain::computed(0.167, 0.0007));
    let check = check(&card(), &bat);
    assert!(!check.accepted, "{check:?}");
    assert_eq!(check.decided_by, DecidedBy::SwingMoment);
    assert_eq!(within(&check, Figure::DeadWeight), Within::Yes);
}

#[test]
fn a_bat_of_the_right_swing_moment_but_the_wrong_weight_stays_and_the_maker_is_told() {
    let bat = with(as_ordered(), Figure::DeadWeight, Uncertain::measured(1.06, 0.001));
    let check = check(&card(), &bat);
    assert!(check.accepted);
    assert!(check.sentence().contains("its dead weight is outside"), "{}", check.sentence());
}

#[test]
fn without_a_swing_moment_weight_and_balance_decide_together() {
    let unproved = as_ordered_without(Figure::SwingMoment);
    let kept = check(&card(), &unproved);
    assert!(kept.accepted && kept.decided_by == DecidedBy::WeightAndBalance);
    let heavy = with(unproved, Figure::DeadWeight, Uncertain::measured(1.06, 0.001));
    assert!(!check(&card(), &heavy).accepted);
    let mut unbalanced = unproved;
    unbalanced.figures[Figure::Balance as usize] = None;
    let neither = check(&card(), &unbalanced);
    assert!(!neither.accepted && neither.decided_by == DecidedBy::TooLittleMeasured);
}

#[test]
fn a_swing_moment_that_reads_outside_is_not_accepted_even_within_its_error() {
    let [low, high] = card().asked(Figure::SwingMoment).tolerance;
    let reading = |value: f64| {
        with(as_ordered(), Figure::SwingMoment, Uncertain::measured(value, high - low))
    };
    let outside = check(&card(), &reading(high + 0.2 * (high - low)));
    assert_eq!(within(&outside, Figure::SwingMoment), Within::Unsure);
    assert!(!outside.accepted && outside.decided_by == DecidedBy::SwingMomentReading);
    assert!(check(&card(), &reading(0.5 * (low + high))).accepted);
}

#[test]
fn an_estimated_swing_moment_neither_condemns_a_bat_nor_clears_it() {
    let bat = with(as_ordered(), Figure::SwingMoment, Uncertain::estimated(0.2, 0.0001));
    let check = check(&card(), &bat);
    assert_eq!(within(&check, Figure::SwingMoment), Within::NotMeasured);
    assert_eq!(check.decided_by, DecidedBy::WeightAndBalance);
}

/// The normal distribution's 95 % point is 1.645 standard deviations (any table of it).
#[test]
fn published_a_figure_is_within_from_1_645_standard_deviations_inside_its_limit() {
    let high = card().asked(Figure::DeadWeight).tolerance[1];
    let verdict = |sds: f64| {
        let sd = 0.001;
        let mass_kg = Uncertain::measured(high - sds * sd, sd);
        within(
            &check(&card(), &with(as_ordered(), Figure::DeadWeight, mass_kg)),
            Figure::DeadWeight,
        )
    };
    assert_eq!(verdict(1.66), Within::Yes);
    assert_eq!(verdict(1.63), Within::Unsure);
    assert_eq!(verdict(-1.63), Within::Unsure);
    assert_eq!(verdict(-1.66), Within::No);
}

#[test]
fn a_reading_without_error_is_within_up_to_the_limit_itself() {
    let high = card().asked(Figure::DeadWeight).tolerance[1];
    let verdict = |mass_kg: f64| {
        let mass_kg = Uncertain::measured(mass_kg, 0.0);
        within(
            &check(&card(), &with(as_ordered(), Figure::DeadWeight, mass_kg)),
            Figure::DeadWeight,
        )
    };
    assert_eq!(verdict(high), Within::Yes);
    assert_eq!(verdict(high + 1e-6), Within::No);
}

#[test]
fn a_reading_that_is_not_a_number_never_gets_a_bat_accepted() {
    let nothing = Uncertain::measured(f64::NAN, 0.001);
    let bat = ReturnedBat { figures: [Some(nothing); Figure::ALL.len()] };
    assert!(!check(&card(), &bat).accepted);
}

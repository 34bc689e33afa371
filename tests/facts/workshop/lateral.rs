//! How long a reading of the balance across a blade holds.

use backlift::bat::sizes::{Size, named};
use backlift::card::Card;
use backlift::files::{assets, card};
use backlift::workshop::history::now;
use backlift::workshop::lateral::left_m;
use backlift::workshop::plane::{Place, lever_m};
use backlift::workshop::stages::{Entry, Moment, Stage};

fn card() -> (Card, Size) {
    let card = card::read(include_str!("../../commands/card.ron")).unwrap();
    let size = named(&assets::sizes().unwrap(), &card.size).unwrap().clone();
    (card, size)
}

/// A shaped blade that balances 2 mm to the left, and what was read of it after.
fn entries(after: &[(Option<Place>, f64)]) -> Vec<Entry> {
    let weighed = |n: i64, mass_kg: f64| Entry {
        balance_m: Some(0.512),
        ..Entry::weighed(Stage::Shaped, Moment::from_minutes(n), mass_kg)
    };
    let mut out = vec![Entry { left_m: Some(0.002), ..weighed(0, 0.980) }];
    for (n, (planed, mass_kg)) in after.iter().enumerate() {
        out.push(Entry { again: true, planed: *planed, ..weighed(n as i64 + 1, *mass_kg) });
    }
    out
}

fn left_of(entries: &[Entry]) -> f64 {
    let (card, size) = card();
    left_m(entries, &now(entries, &card, &size, None, 0.10).unwrap())
}

#[test]
fn a_reading_of_the_sides_holds_while_nothing_evens_them() {
    assert_eq!(left_of(&entries(&[])), 0.002);
    let near = |a: f64, b: f64| assert!((a - b).abs() < 1e-12, "{a} {b}");
    // Read again, and planed where there are no two sides: as heavy on the left as it was.
    near(left_of(&entries(&[(None, 0.980)])), 0.002);
    let (spine, toe) = (Some(Place::Spine), Some(Place::Toe));
    near(left_of(&entries(&[(spine, 0.972), (toe, 0.968)])), 0.002 * 0.980 / 0.968);
}

/// A pass evens at most by what the two sides may differ: 0.8 and 0.2 of it, at their lever.
#[test]
fn a_pass_on_both_sides_evens_as_much_as_it_can_and_many_even_all() {
    let (card, size) = card();
    let read = entries(&[(Some(Place::Edges), 0.960)]);
    let shapes = now(&read, &card, &size, None, 0.10).unwrap();
    let lever_m = lever_m(&shapes.planed.from, &shapes.shape).unwrap();
    let taken_kg = shapes.planed.from.mass_moments().mass_kg - shapes.shape.mass_moments().mass_kg;
    let heavy_kg_m = 0.980 * 0.002 - 0.6 * taken_kg * lever_m;
    assert!((left_of(&read) - heavy_kg_m / 0.960).abs() < 1e-9, "{}", left_of(&read));
    assert!(left_of(&read) > 0.0005 && left_of(&read) < 0.002);
    let passes = (1..=5).map(|n| (Some(Place::Edges), 0.980 - 0.015 * f64::from(n)));
    let mut many = entries(&passes.collect::<Vec<_>>());
    many[0].left_m = Some(0.001);
    assert!(left_of(&many).abs() < 1e-9, "{}", left_of(&many));
}

#[test]
fn another_reading_or_a_blade_cut_anew_ends_what_was_read() {
    let mut again = entries(&[(None, 0.980), (Some(Place::Spine), 0.972)]);
    again[1].left_m = Some(-0.001);
    assert!((left_of(&again) + 0.001 * 0.980 / 0.972).abs() < 1e-12);
    again[2].left_m = Some(0.0);
    assert_eq!(left_of(&again), 0.0);
    let mut anew = entries(&[(None, 0.940)]);
    anew[1].again = false;
    assert_eq!(left_of(&anew), 0.0);
}

//! The middle and the handle that a customer wishes, among shapes that meet the card.

use backlift::bat::handle::HandleShape;
use backlift::bat::laws::Limits;
use backlift::bat::sizes::Size;
use backlift::card::order::{Order, Wish};
use backlift::card::{Card, Figure};
use backlift::files::assets;
use backlift::fit::middle_of::{middle_of, swells_m};
use backlift::measurement::plan::Middle;
use backlift::workshop::carved::Held;
use backlift::workshop::to_card::{Answer, Start, ToCard, plainest, to_card};
use backlift::worth::constants::USUAL_MIDDLE;

use super::to_card::keeps_to;

fn ordered(wish: Wish) -> Card {
    super::to_card::card().ordered(Order { number: None, wish }.said())
}

fn carved(wish: Wish, held: Held) -> (ToCard, Card, Size) {
    let (card, limits): (Card, Limits) = (ordered(wish), assets::limits().unwrap());
    let size = super::to_card::size(&card.size);
    (to_card(&start(&size, &limits, held), &card, &|| false), card, size)
}

fn start<'a>(size: &'a Size, limits: &'a Limits, held: Held) -> Start<'a> {
    Start { held, ..super::to_card::start(size, limits) }
}

fn of(middle: Middle) -> Wish {
    Wish { middle: Some(middle), ..Wish::default() }
}

#[test]
fn shapes_with_the_wished_middle_come_first_and_every_shape_keeps_to_the_card() {
    for middle in Middle::ALL {
        let (out, card, size) = carved(of(middle), Held::default());
        let (wished, standard_m) = (out.wished.unwrap(), size.reference.swell_from_toe_m());
        assert_eq!(wished.middle, middle);
        // This card balances so near the hands that only a lower swell carries its swing moment.
        assert_eq!(wished.have_it > 0, middle != Middle::High, "{middle:?}");
        for (n, it) in out.answers.iter().enumerate() {
            let swell_m = it.bat.shape.swell_from_toe_m();
            assert_eq!(it.middle, middle_of(swell_m, standard_m), "{}", it.name);
            assert_eq!(it.middle == middle, n < wished.have_it, "{}", it.name);
            keeps_to(&card, it);
        }
    }
}

#[test]
fn a_wish_changes_and_hides_no_shape_that_is_found_without_it() {
    let (without, ..) = carved(Wish::default(), Held::default());
    assert_eq!(without.wished, None);
    for middle in Middle::ALL {
        let (with, ..) = carved(of(middle), Held::default());
        for it in &without.answers {
            assert!(with.answers.contains(it), "{} is gone or changed", it.name);
        }
    }
}

#[test]
fn where_no_shape_has_the_wished_middle_the_nearest_comes_first_with_how_far_it_is_off() {
    let (_, _, size) = carved(Wish::default(), Held::default());
    let swell_m = size.reference.swell_from_toe_m();
    let held = Held { swell_from_toe_m: Some(swell_m), ..Held::default() };
    let (out, ..) = carved(of(Middle::Low), held);
    let wished = out.wished.unwrap();
    assert_eq!(wished.have_it, 0);
    assert!(!out.answers.is_empty());
    // All stand at the standard bat's swell: as far off as a usual middle reaches.
    assert!((wished.first_away_m - USUAL_MIDDLE.value).abs() < 1e-6, "{}", wished.first_away_m);
    let held = |it: &Answer| (it.bat.shape.swell_from_toe_m() - swell_m).abs() < 1e-9;
    assert!(out.answers.iter().all(held), "what is held stands above the wish");
}

/// That none has it is no want of looking: no plain shape with a swell anywhere in the wished middle meets the card, and
/// none that lies nearer by more than a step of the search (a twentieth of the way, 3 mm here).
#[test]
fn a_wished_middle_that_no_shape_has_is_met_at_no_swell_and_nearer_at_none() {
    let (out, card, size) = carved(of(Middle::High), Held::default());
    let (first, limits) = (&out.answers[0], assets::limits().unwrap());
    assert_eq!(out.wished.unwrap().have_it, 0);
    let met = |swell_m: f64| {
        let held = Held { swell_from_toe_m: Some(swell_m), ..Held::default() };
        plainest(&start(&size, &limits, held), &card).is_ok()
    };
    let nearest_m = first.bat.shape.swell_from_toe_m();
    assert!(met(nearest_m), "the first has a swell that can be made");
    let most_m = size.craft.swell_from_toe[1] * first.bat.shape.blade.length_m;
    let mut swell_m = nearest_m + 0.003;
    while swell_m < most_m {
        assert!(!met(swell_m), "{swell_m}");
        swell_m += 0.002;
    }
}

#[test]
fn the_handle_of_a_shape_has_the_section_that_is_wished() {
    for (section, oval) in [(HandleShape::Round, [1.0, 1.0]), (HandleShape::SemiOval, [0.93, 1.0])]
    {
        let wish = Wish { handle_shape: Some(section), ..Wish::default() };
        let (out, ..) = carved(wish, Held::default());
        assert!(!out.answers.is_empty());
        for it in &out.answers {
            assert_eq!(it.bat.shape.handle.oval, oval, "{}", it.name);
            assert_eq!(it.met.len(), Figure::ALL.len(), "{}", it.name);
        }
    }
}

#[test]
fn every_swell_has_the_middle_in_whose_range_it_lies() {
    let (standard_m, makers_m) = (0.190, [0.148, 0.254]);
    for n in 0..=106 {
        // Off the two lines themselves, which belong to the usual middle.
        let swell_m = makers_m[0] + 1e-3 * f64::from(n) + 1e-6;
        let holds: Vec<Middle> = Middle::ALL
            .into_iter()
            .filter(|it| {
                let [low_m, high_m] = swells_m(*it, standard_m, makers_m);
                (low_m..=high_m).contains(&swell_m)
            })
            .collect();
        let all = swell_m <= makers_m[1];
        assert_eq!(holds, Vec::from_iter(all.then(|| middle_of(swell_m, standard_m))), "{swell_m}");
    }
}

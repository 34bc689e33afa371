//! Blades that meet a card.

use approx::assert_relative_eq;
use backlift::bat::described::Cleft;
use backlift::bat::laws::Limits;
use backlift::bat::shape::BatShape;
use backlift::bat::sizes::{Size, named};
use backlift::bat::willow::USUAL_DENSITY_KG_M3;
use backlift::card::{Asked, Card, Figure};
use backlift::files::{assets, card};
use backlift::workshop::carved::{Figures, Held, carve};
use backlift::workshop::middles::middles;
use backlift::workshop::to_card::{Answer, Start, to_card};

pub fn card() -> Card {
    card::read(include_str!("../../commands/card.ron")).unwrap()
}

pub fn size(name: &str) -> Size {
    named(&assets::sizes().unwrap(), name).unwrap().clone()
}

pub fn start<'a>(size: &'a Size, limits: &'a Limits) -> Start<'a> {
    Start {
        shape: size.reference.clone(),
        density_kg_m3: USUAL_DENSITY_KG_M3,
        willow_given: false,
        cleft: None,
        size,
        limits,
        held: Held::default(),
    }
}

/// A shape meets every figure of its card, and the Laws.
pub fn keeps_to(card: &Card, it: &Answer) {
    assert_eq!(it.met.len(), Figure::ALL.len(), "{}: {:?}", it.name, it.met);
    for (figure, value) in &it.met {
        let [low, high] = card.asked(*figure).tolerance;
        assert!((low - 1e-9..=high + 1e-9).contains(value), "{figure:?} {value}");
    }
    assert!(it.bat.law.breaches.is_empty(), "{}", it.name);
}

#[test]
fn a_carved_blade_has_the_figures_asked_and_what_was_held() {
    let size = size("short handle");
    let figures = Figures { mass_kg: 1.17, balance_m: 0.530, swing_moment_kg_m2: Some(0.224) };
    let held = Held { edge_m: Some(0.036), depth_m: Some(0.060), ..Held::default() };
    let carved = carve(&size.reference, &size.craft, &figures, &held).unwrap();
    let moments = carved.shape.mass_moments();
    assert_relative_eq!(moments.mass_kg, 1.17, epsilon = 1e-9);
    assert_relative_eq!(moments.com_B().x, 0.530, epsilon = 1e-9);
    assert_relative_eq!(moments.swing_moment_kg_m2(), 0.224, epsilon = 1e-9);
    assert_relative_eq!(carved.shape.blade.thickest_edge_m(), 0.036, epsilon = 1e-9);
    assert_relative_eq!(carved.shape.blade.deepest().unwrap().depth_m, 0.060, epsilon = 1e-9);
}

#[test]
fn the_demos_card_is_met_in_every_figure_and_within_the_laws() {
    let (card, limits) = (card(), assets::limits().unwrap());
    let size = size(&card.size);
    let out = to_card(&start(&size, &limits), &card, &|| false);
    assert!(out.answers.len() > 1, "{out:#?}");
    assert!(out.broken.is_empty());
    for it in &out.answers {
        keeps_to(&card, it);
    }
}

#[test]
fn an_edge_that_is_held_stays_in_every_answer() {
    let (card, limits) = (card(), assets::limits().unwrap());
    let size = size(&card.size);
    let held = Held { edge_m: Some(0.031), ..Held::default() };
    let out = to_card(&Start { held, ..start(&size, &limits) }, &card, &|| false);
    assert!(!out.answers.is_empty());
    for it in &out.answers {
        assert_relative_eq!(it.bat.shape.blade.thickest_edge_m(), 0.031, epsilon = 1e-9);
    }
}

#[test]
fn a_swing_moment_out_of_reach_is_named_with_the_nearest_that_can_be_made() {
    let limits = assets::limits().unwrap();
    let mut card = card();
    let was = card.swing_moment_kg_m2();
    card.figures[Figure::SwingMoment as usize] = Asked::new(1.15 * was, [1.14 * was, 1.16 * was]);
    card.figures[Figure::SweetSpot as usize].tolerance = [0.0, 0.4];
    let size = size(&card.size);
    let out = to_card(&start(&size, &limits), &card, &|| false);
    assert!(out.answers.is_empty());
    let broken = out.broken.iter().find(|it| it.figure == Figure::SwingMoment).unwrap();
    let nearest = broken.nearest.unwrap();
    assert!(nearest < 1.14 * was && nearest > 0.95 * was, "{nearest} {was}");
    assert!(!broken.why.is_empty());
    let made = out.nearest.unwrap();
    assert!(made.bat.law.breaches.is_empty());
}

#[test]
fn a_cleft_too_thin_is_what_stands_in_the_way() {
    let (card, limits) = (card(), assets::limits().unwrap());
    let size = size(&card.size);
    let cleft =
        Cleft { mass_kg: 1.5, length_m: 0.7, width_m: 0.11, depth_m: 0.045, moisture: None };
    let out = to_card(&Start { cleft: Some(cleft), ..start(&size, &limits) }, &card, &|| false);
    assert!(out.answers.is_empty());
    assert!(out.broken[0].why.contains("cleft"), "{}", out.broken[0].why);
}

#[test]
fn a_low_middle_picks_up_heavier_at_the_same_dead_weight() {
    let limits = assets::limits().unwrap();
    let size = size("short handle");
    let out = middles(&size.reference, USUAL_DENSITY_KG_M3, &size, &limits);
    let [high, own, low] = &out[..] else { panic!("{}", out.len()) };
    for (name, it) in [high, low] {
        assert_relative_eq!(it.bat.mass_kg(), own.1.bat.mass_kg(), max_relative = 1e-9);
        assert!(!name.is_empty());
    }
    let swing = |it: &(&str, backlift::bat::shaped::ShapedBat)| it.1.bat.swing_moment_kg_m2();
    assert!(swing(high) < swing(own) && swing(own) < swing(low));
    let node = |it: &(&str, backlift::bat::shaped::ShapedBat)| it.1.bending_node_m.unwrap().value;
    assert!(node(high) < node(low), "the quiet place goes with the middle");
}

#[test]
fn a_swell_and_a_hollow_that_are_held_are_the_finished_blades_own() {
    let (card, limits) = (card(), assets::limits().unwrap());
    let size = size(&card.size);
    for (swell_m, hollow) in [(0.150, None), (0.170, None), (0.160, Some(0.25))] {
        let held = Held { swell_from_toe_m: Some(swell_m), hollow, ..Held::default() };
        let start = Start { held, ..start(&size, &limits) };
        let out = to_card(&start, &card, &|| false);
        let plain = out.answers.iter().find(|it| it.name == "plain").unwrap();
        assert_relative_eq!(plain.bat.shape.swell_from_toe_m(), swell_m, epsilon = 1e-9);
        if let Some(hollow) = hollow {
            let now = plain.bat.shape.blade.deepest().unwrap().hollow;
            assert_relative_eq!(now, hollow, epsilon = 1e-9);
        }
    }
}

#[test]
fn answers_are_named_for_how_they_differ_from_the_plain_one() {
    let (card, limits) = (card(), assets::limits().unwrap());
    let size = size(&card.size);
    let out = to_card(&start(&size, &limits), &card, &|| false);
    let shape =
        |name: &str| out.answers.iter().find(|it| it.name == name).map(|it| it.bat.shape.clone());
    let plain = shape("plain").unwrap();
    let hollow = |it: &BatShape| it.blade.deepest().unwrap().hollow;
    let mut compared = 0;
    for (name, way, of) in [
        ("lower middle", -1.0, (|it: &BatShape| it.swell_from_toe_m()) as fn(&BatShape) -> f64),
        ("higher middle", 1.0, |it| it.swell_from_toe_m()),
        ("thinner edges", -1.0, |it| it.blade.thickest_edge_m()),
        ("thicker edges", 1.0, |it| it.blade.thickest_edge_m()),
        ("fuller back", -1.0, hollow as fn(&BatShape) -> f64),
        ("hollower back", 1.0, hollow),
    ] {
        if let Some(it) = shape(name) {
            assert!(way * (of(&it) - of(&plain)) > 0.0, "{name}: {} {}", of(&it), of(&plain));
            compared += 1;
        }
    }
    assert!(compared >= 4, "{compared}");
}

/// Held a millimetre at a time over all places that makers of the size cut a swell at: bats within a twentieth of the
/// size's own weight are met at every one, exactly there. One so light that balances so near the toe is not met at one end,
/// where the spine would have to be raised by more than is a swell; but nowhere between two places that are.
#[test]
fn a_swell_that_is_held_is_met_wherever_it_can_be_and_no_place_between_is_refused() {
    let mut met = 0;
    for name in ["6", "short handle"] {
        let size = size(name);
        let own = size.reference.mass_moments();
        let length_m = size.reference.blade.length_m;
        let [low_m, high_m] = size.craft.swell_from_toe.map(|it| it * length_m);
        for (heavier, further_m, more, everywhere) in [
            (1.0, 0.0, Some(1.0), true),
            (1.0, 0.0, None, true),
            (0.95, -0.004, Some(0.99), true),
            (1.05, 0.004, Some(1.01), true),
            (0.92, 0.006, None, false),
            (1.0, -0.008, None, true),
        ] {
            let mass_kg = heavier * own.mass_kg;
            let balance_m = own.com_B().x + further_m;
            let swing_moment_kg_m2 = more
                .map(|it: f64| it * heavier * own.swing_moment_kg_m2() * (1.0 + 3.0 * further_m));
            let figures = Figures { mass_kg, balance_m, swing_moment_kg_m2 };
            let mut can = Vec::new();
            for n in 0..=((high_m - low_m) / 0.001) as usize {
                let swell_m = low_m + 0.001 * n as f64;
                let held = Held { swell_from_toe_m: Some(swell_m), ..Held::default() };
                let carved = carve(&size.reference, &size.craft, &figures, &held);
                can.push(carved.is_some());
                let Some(carved) = carved else { continue };
                assert_relative_eq!(carved.shape.swell_from_toe_m(), swell_m, epsilon = 1e-9);
                assert_relative_eq!(carved.shape.mass_moments().mass_kg, mass_kg, epsilon = 1e-9);
                met += 1;
            }
            let turns = can.windows(2).filter(|it| it[0] != it[1]).count();
            let (first, last) = (can.first(), can.last());
            let inside_out = first == Some(&true) && last == Some(&true) && turns > 0;
            let refused = can.iter().filter(|it| !**it).count();
            assert!(!everywhere || refused == 0, "{name} {figures:?}: {refused} of {}", can.len());
            assert!(turns <= 2 && !inside_out, "{name} {figures:?}: {can:?}");
        }
    }
    assert!(met > 600, "{met}");
}

#[test]
fn swells_are_proposed_only_where_makers_of_the_size_cut_them() {
    let (card, limits) = (card(), assets::limits().unwrap());
    let size = size(&card.size);
    let out = to_card(&start(&size, &limits), &card, &|| false);
    assert!(out.answers.len() > 1);
    for it in &out.answers {
        let shape = &it.bat.shape;
        let [low_m, high_m] = size.craft.swell_from_toe.map(|it| it * shape.blade.length_m);
        let swell_m = shape.swell_from_toe_m();
        assert!((low_m - 1e-9..=high_m + 1e-9).contains(&swell_m), "{}: {swell_m}", it.name);
    }
    // Four and a half inches from the toe is no swell of an adult bat nor of this one.
    for of in [&size, &self::size("short handle")] {
        assert!(0.1143 < of.craft.swell_from_toe[0] * of.reference.blade.length_m);
    }
}

#[test]
fn the_first_answer_is_the_one_nearest_to_the_bat_it_is_carved_from() {
    let (card, limits) = (card(), assets::limits().unwrap());
    let size = size(&card.size);
    let out = to_card(&start(&size, &limits), &card, &|| false);
    let first = &out.answers[0];
    let own = &size.reference;
    assert_relative_eq!(
        first.away.swell_m,
        // The card's blade is as long as the size's own but for its handle's length.
        first.bat.shape.swell_from_toe_m()
            - own.swell_from_toe_m() * first.bat.shape.blade.length_m / own.blade.length_m,
        epsilon = 1e-9
    );
    let far = |it: &backlift::workshop::to_card::Answer| {
        let a = &it.away;
        [a.edge_m / 0.003, a.depth_m / 0.003, a.swell_m / 0.025, a.hollow / 0.25]
            .iter()
            .map(|it| it * it)
            .sum::<f64>()
    };
    assert!(out.answers.iter().all(|it| far(first) <= far(it) + 1e-12));
}

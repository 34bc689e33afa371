//! Which willow a card can be made of, and which cleft suits it.

use backlift::bat::described::Cleft;
use backlift::bat::laws::Limits;
use backlift::bat::sizes::{Size, named};
use backlift::card::{Asked as Wanted, Card, Figure};
use backlift::files::{assets, card};
use backlift::workshop::orders::rack::RackCleft;
use backlift::workshop::orders::suits::{Blades, Unfit};
use backlift::workshop::orders::willow::{Asked, STEP_KG_M3, Willow};
use std::sync::OnceLock;

struct Bench {
    card: Card,
    size: Size,
    limits: Limits,
    willow: Willow,
}

impl Bench {
    fn of(card: Card) -> Self {
        let size = named(&assets::sizes().unwrap(), &card.size).unwrap().clone();
        let limits = assets::limits().unwrap();
        let willow = Asked { card: &card, size: &size, limits: &limits }.willow().unwrap();
        Self { card, size, limits, willow }
    }

    fn asked(&self) -> Asked<'_> {
        Asked { card: &self.card, size: &self.size, limits: &self.limits }
    }
}

/// The card of the demo.
fn bench() -> &'static Bench {
    static BENCH: OnceLock<Bench> = OnceLock::new();
    let card = || card::read(include_str!("../../commands/card.ron")).unwrap();
    BENCH.get_or_init(|| Bench::of(card()))
}

fn cleft(kg_m3: f64, [length_m, width_m, depth_m]: [f64; 3], moisture: Option<f64>) -> RackCleft {
    let dry = moisture.map_or(1.0, |it| (1.0 + it) / 1.12);
    let mass_kg = kg_m3 * length_m * width_m * depth_m * dry;
    let cleft = Cleft { mass_kg, length_m, width_m, depth_m, moisture };
    RackCleft { label: "A".to_owned(), cleft, grains: None, note: None }
}

const LARGE: [f64; 3] = [0.7, 0.12, 0.08];

#[test]
fn every_density_within_the_limits_has_a_blade_that_meets_the_card_and_none_just_beyond() {
    let it = bench();
    let [low, high] = it.willow.density_kg_m3;
    assert!(low < it.willow.best_kg_m3 && it.willow.best_kg_m3 < high, "{:?}", it.willow);
    for n in 0..=12 {
        let density = low + (high - low) * f64::from(n) / 12.0;
        let shape = it.asked().shape(density).unwrap_or_else(|why| panic!("{density}: {why}"));
        let bat = shape.bat("").unwrap();
        for (figure, value) in [
            (Figure::DeadWeight, bat.mass_kg()),
            (Figure::Balance, bat.balance_m()),
            (Figure::SwingMoment, bat.swing_moment_kg_m2()),
        ] {
            let [least, most] = it.card.asked(figure).tolerance;
            assert!((least - 1e-9..=most + 1e-9).contains(&value), "{density} {figure:?} {value}");
        }
        assert_eq!(shape.blade.density_kg_m3, density);
        let deepest_m = shape.blade.deepest().unwrap().depth_m;
        assert!(
            deepest_m <= it.limits.depth_m && shape.blade.thickest_edge_m() <= it.limits.edge_m
        );
        assert!(shape.blade.thinnest_edge_m() >= it.size.craft.thinnest_edge_m);
    }
    for beyond in [low - STEP_KG_M3, high + STEP_KG_M3] {
        assert!(it.asked().shape(beyond).is_err(), "{beyond}");
    }
    assert!(it.willow.beyond.iter().all(|it| !it.is_empty()));
}

#[test]
fn a_heavier_bat_asks_for_heavier_willow() {
    let mut heavier = bench().card.clone();
    let by = 1.06;
    for figure in [Figure::DeadWeight, Figure::SwingMoment] {
        let Wanted { target, tolerance } = heavier.asked(figure);
        heavier.figures[figure as usize] = Wanted::new(by * target, tolerance.map(|it| by * it));
    }
    let (light, heavy) = (&bench().willow, Bench::of(heavier).willow);
    assert!(heavy.best_kg_m3 > light.best_kg_m3, "{light:?} {heavy:?}");
    assert!(heavy.density_kg_m3[0] > light.density_kg_m3[0], "{light:?} {heavy:?}");
}

#[test]
fn a_cleft_in_the_middle_suits_and_one_at_the_end_of_the_limits_is_even_odds() {
    let it = bench();
    let mut blades = Blades::of(it.asked(), &it.willow);
    let [low, high] = it.willow.density_kg_m3;
    let middle = blades.judge(&cleft(0.5 * (low + high), LARGE, Some(0.12))).unwrap();
    assert!(middle.chance > 0.95, "{middle:?}");
    let best = blades.judge(&cleft(it.willow.best_kg_m3, LARGE, Some(0.12))).unwrap();
    assert!((best.off_kg_m3 / best.density_kg_m3.sd - 1.0).abs() < 1e-9, "{best:?}");
    // At the limit one way lies in, the other out: refused, as one that is too light.
    let end = blades.judge(&cleft(low, LARGE, Some(0.12)));
    assert!(matches!(end, Err(Unfit::Density { .. })), "{end:?}");
}

#[test]
fn a_cleft_whose_water_was_not_read_is_less_sure_and_a_wet_one_as_light_as_its_wood() {
    let [read, unread] = [Some(0.12), None].map(|it| cleft(440.0, LARGE, it).density_kg_m3());
    assert!((read.value - unread.value).abs() < 1e-9 && unread.sd > 1.2 * read.sd, "{unread:?}");
    let wet = cleft(440.0, LARGE, Some(0.20));
    assert!((wet.density_kg_m3().value - 440.0).abs() < 1e-9);
    assert!(wet.cleft.mass_kg > cleft(440.0, LARGE, Some(0.12)).cleft.mass_kg);
}

#[test]
fn a_blade_is_not_sawn_out_of_a_cleft_that_is_too_small() {
    let it = bench();
    let mut blades = Blades::of(it.asked(), &it.willow);
    for small in [[0.5, 0.12, 0.08], [0.7, 0.09, 0.08], [0.7, 0.12, 0.04]] {
        let judged = blades.judge(&cleft(it.willow.best_kg_m3, small, Some(0.12)));
        assert!(matches!(judged, Err(Unfit::Small(_))), "{small:?} {judged:?}");
    }
    let usual = &it.willow.usual_cleft;
    let usual =
        cleft(it.willow.best_kg_m3, [usual.length_m, usual.width_m, usual.depth_m], Some(0.12));
    assert!(blades.judge(&usual).is_ok(), "the usual cleft does");
}

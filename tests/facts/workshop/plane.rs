//! The planing plan, followed with a noisy plane.

use backlift::bat::laws::Limits;
use backlift::bat::shape::BatShape;
use backlift::bat::sizes::{Size, named};
use backlift::card::{Card, Figure};
use backlift::files::{assets, card};
use backlift::measurement::bench::{BALANCE_SD_M, SCALE_SD_KG};
use backlift::uncertain::Uncertain;
use backlift::workshop::carved::{Figures, Held, carve};
use backlift::workshop::combined::Reading;
use backlift::workshop::plane::bench::OVERSHOOT;
use backlift::workshop::plane::cuts::{amount_for, cut, room};
use backlift::workshop::plane::pass::SMALLEST_PASS_KG;
use backlift::workshop::plane::{
    self, Bench, Finish, PickupMoments, Place, Planed, TooLight, plan, thinner_m,
};
use rand::rngs::SmallRng;
use rand::{RngExt, SeedableRng};

const PLANING_SD: f64 = 0.10;
/// One standard deviation of a swing moment by thirty swings, as a share.
const SWING_SD: f64 = 0.006;
const BARE: Finish = Finish::BARE;

fn card() -> Card {
    card::read(include_str!("../../commands/card.ron")).unwrap()
}

fn size(name: &str) -> Size {
    named(&assets::sizes().unwrap(), name).unwrap().clone()
}

/// A finished bat's shape of the card's size with so much more wood than the card asks, kg, balanced so much
/// nearer the toe, m.
fn part_made(card: &Card, size: &Size, more_kg: f64, nearer_toe_m: f64) -> BatShape {
    let figures = Figures {
        mass_kg: card.mass_kg() + more_kg,
        balance_m: card.balance_m() + nearer_toe_m,
        swing_moment_kg_m2: None,
    };
    let start = size.reference.with_length_m(card.length_m);
    carve(&start, &size.craft, &figures, &Held::default()).unwrap().shape
}

/// The bat of that shape without twine, grip, guard, labels and oil: what lies on the bench.
fn bare(shape: &BatShape, card: &Card) -> PickupMoments {
    let all = Finish {
        grips: card.condition.grips,
        bound: true,
        toe_guard: card.condition.toe_guard,
        oiled: card.condition.oiled,
        labels: true,
    };
    let adds = backlift::workshop::plane::additions::additions(shape, &BARE, &all);
    adds.iter().fold(PickupMoments::of_shape(shape), |sum, it| sum - it.adds)
}

struct Noise(SmallRng);

impl Noise {
    /// A standard normal, as the sum of twelve even ones.
    fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.0.random::<f64>()).sum::<f64>() - 6.0
    }
}

fn bench<'a>(true_: &PickupMoments, planed: &'a Planed, noise: &mut Noise) -> Bench<'a> {
    let read = |value: f64, sd: f64, noise: &mut Noise| {
        Uncertain::measured(value + sd * noise.normal(), sd)
    };
    Bench {
        reading: Reading {
            mass_kg: read(true_.mass_kg, SCALE_SD_KG, noise),
            balance_m: read(true_.balance_m(), BALANCE_SD_M, noise),
            swing_moment_kg_m2: read(true_.second_kg_m2, SWING_SD * true_.second_kg_m2, noise),
        },
        shape: &planed.from,
        planed,
        finish: BARE,
        besides: Vec::new(),
        planing_sd: PLANING_SD,
        left_m: 0.0,
    }
}

#[test]
fn each_place_takes_off_where_it_says() {
    let size = size("6");
    let shape = size.reference.clone();
    for place in Place::ALL {
        let room = room(&shape, place, &size.craft, 0.02).unwrap();
        let at_m = room.off.balance_m();
        let (low_m, high_m) = match place {
            Place::Handle => (0.0, 0.40),
            Place::Shoulders => (0.28, 0.40),
            Place::HollowAbove => (0.35, 0.60),
            Place::Edges | Place::Spine => (0.45, 0.75),
            Place::HollowBelow => (0.60, 0.80),
            Place::Toe => (0.74, 0.81),
        };
        assert!((low_m..high_m).contains(&at_m), "{place:?} {at_m}");
        let half = amount_for(&shape, &room, 0.5 * room.off.mass_kg);
        let off_kg = shape.mass_moments().mass_kg - cut(&shape, place, half).mass_moments().mass_kg;
        approx::assert_relative_eq!(off_kg, 0.5 * room.off.mass_kg, max_relative = 1e-4);
    }
}

#[test]
fn what_a_grip_a_guard_and_twine_add_is_their_own_weight() {
    let size = size("short handle");
    let shape = &size.reference;
    let all = Finish::ALL;
    let adds = backlift::workshop::plane::additions::additions(shape, &BARE, &all);
    assert_eq!(adds.len(), 5, "{adds:?}");
    let grip = adds[0];
    // A tube 1.6 mm thick and 280 mm long of rubber: closed form, mean radius of the two half-axes.
    let handle = &shape.handle;
    let mean_m = |x: f64| 0.5 * (handle.half_y_m(x) + handle.half_z_m(x)) + handle.twine_m;
    let tube_kg = 1150.0 * std::f64::consts::TAU * (mean_m(0.14) + 0.0008) * 0.0016 * 0.28;
    approx::assert_relative_eq!(grip.adds.mass_kg, tube_kg, max_relative = 0.01);
}

#[test]
fn a_bat_too_light_already_has_no_plan_and_a_bat_at_its_target_no_pass() {
    let (card, size) = (card(), size(&card().size));
    let mut noise = Noise(SmallRng::seed_from_u64(3));
    let light = part_made(&card, &size, -0.12, 0.0);
    let now = bare(&light, &card);
    let refused = plan(&bench(&now, &Planed::not_yet(&light), &mut noise), &card, &size.craft);
    assert!(matches!(refused, Err(TooLight { .. })), "{refused:?}");
    let right = part_made(&card, &size, 0.0, 0.0);
    let now = bare(&right, &card);
    let made =
        plan(&bench(&now, &Planed::not_yet(&right), &mut noise), &card, &size.craft).unwrap();
    let off_kg: f64 = made.passes.iter().map(|it| it.off_kg).sum();
    assert!(off_kg < 0.012, "{off_kg}");
}

#[test]
fn no_pass_of_a_plan_overshoots_with_more_than_its_chance_and_the_heavy_side_comes_first() {
    let (card, size) = (card(), size(&card().size));
    let mut noise = Noise(SmallRng::seed_from_u64(4));
    for more_kg in [0.03, 0.08, 0.16] {
        let shape = part_made(&card, &size, more_kg, 0.004);
        let now = bare(&shape, &card);
        let made =
            plan(&bench(&now, &Planed::not_yet(&shape), &mut noise), &card, &size.craft).unwrap();
        assert!(!made.passes.is_empty());
        let mut before_kg = now.mass_kg + 3.0 * SCALE_SD_KG;
        for pass in &made.passes {
            assert!(pass.overshoot <= OVERSHOOT, "{pass:?}");
            assert!(pass.then.mass_kg < before_kg && pass.off_kg >= SMALLEST_PASS_KG);
            before_kg = pass.then.mass_kg;
        }
    }
}

/// Follows the plan to its end: plane the first pass, weigh again, ask anew.
fn follow(card: &Card, size: &Size, seed: u64) -> (bool, bool, f64) {
    let mut noise = Noise(SmallRng::seed_from_u64(seed));
    let more_kg = 0.02 + 0.12 * noise.0.random::<f64>();
    let nearer_m = 0.008 * (noise.0.random::<f64>() - 0.5);
    let mut shape = part_made(card, size, more_kg, nearer_m);
    let mut overshot = false;
    let low = |figure: Figure| card.asked(figure).tolerance[0];
    for _ in 0..60 {
        let now = bare(&shape, card);
        let planed = Planed::not_yet(&shape);
        let read = bench(&now, &planed, &mut noise);
        let Ok(made) = plan(&read, card, &size.craft) else { break };
        let Some(pass) = made.passes.first() else { break };
        let off_kg = pass.off_kg * (1.0 + PLANING_SD * noise.normal());
        let Some(room) =
            room(&shape, pass.place, &size.craft, card.asked(Figure::HandleDiameter).tolerance[0])
        else {
            break;
        };
        shape = cut(&shape, pass.place, amount_for(&shape, &room, off_kg.max(0.0)));
        let after = PickupMoments::of_shape(&shape);
        overshot |= after.mass_kg < low(Figure::DeadWeight)
            || after.second_kg_m2 < low(Figure::SwingMoment);
        if after.mass_kg < 0.5 {
            break;
        }
    }
    let end = PickupMoments::of_shape(&shape);
    let within = |figure: Figure, value: f64| {
        let [low, high] = card.asked(figure).tolerance;
        (low..=high).contains(&value)
    };
    let all = within(Figure::DeadWeight, end.mass_kg)
        && within(Figure::Balance, end.balance_m())
        && within(Figure::SwingMoment, end.second_kg_m2);
    let now = bare(&shape, card);
    let stated = plan(&bench(&now, &Planed::not_yet(&shape), &mut noise), card, &size.craft)
        .map_or(0.0, |it| it.chance);
    (all, overshot, stated)
}

#[test]
fn random_part_made_bats_end_within_tolerance_at_the_stated_rate() {
    let (card, size) = (card(), size(&card().size));
    let _: &Limits = &assets::limits().unwrap();
    const BATS: u64 = 120;
    let ends: Vec<(bool, bool, f64)> = (0..BATS).map(|seed| follow(&card, &size, seed)).collect();
    let count = |of: fn(&(bool, bool, f64)) -> bool| ends.iter().filter(|it| of(it)).count() as f64;
    let (within, overshot) = (count(|it| it.0) / BATS as f64, count(|it| it.1) / BATS as f64);
    let stated = ends.iter().map(|it| it.2).sum::<f64>() / BATS as f64;
    println!("within {within} stated {stated} overshot {overshot}");
    // Three standard deviations of a count of so many.
    let spread = 3.0 * libm::sqrt(stated * (1.0 - stated) / BATS as f64);
    assert!(within >= stated - spread, "within {within}, stated {stated}");
    assert!(within >= 0.85, "within {within}");
    // Several passes to a bat, each with its own chance.
    assert!(overshot <= 0.10, "overshot {overshot}");
}

#[test]
fn what_a_pass_takes_off_is_the_wood_between_the_blade_before_and_after() {
    let card = card();
    let size = size(&card.size);
    let mut before = part_made(&card, &size, 0.08, 0.0);
    // The guard gets thinner with the toe, and is no wood.
    before.blade.toe_guard_m = 0.0;
    for place in [
        Place::HollowBelow,
        Place::HollowAbove,
        Place::Edges,
        Place::Spine,
        Place::Shoulders,
        Place::Toe,
    ] {
        let room =
            room(&before, place, &size.craft, card.asked(Figure::HandleDiameter).tolerance[0])
                .unwrap();
        let after = cut(&before, place, amount_for(&before, &room, 0.6 * room.off.mass_kg));
        // Midpoints of a grid over the blade, both halves.
        const GRID: [u32; 2] = [800, 40];
        let blade = &before.blade;
        let mut volume_m3 = 0.0;
        for a in 0..GRID[0] {
            let from_shoulder = (f64::from(a) + 0.5) / f64::from(GRID[0]);
            let width_m = blade.at(from_shoulder).unwrap().width_m;
            for c in 0..GRID[1] {
                let u = (f64::from(c) + 0.5) / f64::from(GRID[1]);
                let patch_m2 = blade.length_m / f64::from(GRID[0]) * width_m / f64::from(GRID[1]);
                volume_m3 += patch_m2 * thinner_m(blade, &after.blade, from_shoulder, u);
            }
        }
        let off_kg = before.mass_moments().mass_kg - after.mass_moments().mass_kg;
        let painted_kg = volume_m3 * blade.density_kg_m3;
        assert!((painted_kg / off_kg - 1.0).abs() < 2e-3, "{place:?}: {painted_kg} {off_kg}");
    }
}

#[test]
fn a_bat_that_was_only_weighed_and_balanced_is_drawn_with_what_it_reads() {
    let card = card();
    let size = size(&card.size);
    let all = Finish::ALL;
    let like = size.reference.with_length_m(card.length_m);
    let made = |now: &Finish| plane::part_made(&like, &size.craft, [1.05, 0.52], now, &all);
    let moments = made(&all).unwrap().mass_moments();
    assert!((moments.mass_kg - 1.05).abs() < 1e-9 && (moments.com_B().x - 0.52).abs() < 1e-9);
    // A bat that still wants its grip reads the same, and is a heavier solid balanced nearer the handle.
    let gripless = Finish { grips: 0, ..all };
    let grip = plane::additions::additions(&like, &gripless, &all)[0].adds;
    let whole = made(&gripless).unwrap().mass_moments();
    assert!((whole.mass_kg - 1.05 - grip.mass_kg).abs() < 1e-9);
    let bare = PickupMoments::of(whole.mass_kg, whole.com_B().x, whole.swing_moment_kg_m2()) - grip;
    assert!((bare.balance_m() - 0.52).abs() < 1e-9, "{}", bare.balance_m());
}

#[test]
fn the_watch_is_foretold_at_the_amplitude_that_a_maker_swings() {
    let bat = PickupMoments::of(0.95, 0.52, 0.165);
    let read = bat.ten_swings_s().unwrap();
    // 2π √(I / m g d), and 1 + θ²/16 + 11 θ⁴/3072 for a swing of θ either way: any text on the pendulum.
    let small =
        10.0 * std::f64::consts::TAU * libm::sqrt(0.165 / (0.95 * 9.80665 * (0.52 - 0.1524)));
    let theta = 5.0_f64.to_radians();
    let factor = 1.0 + theta.powi(2) / 16.0 + 11.0 * theta.powi(4) / 3072.0;
    assert!((read / (small * factor) - 1.0).abs() < 1e-8, "{read} {small}");
}

/// The moment about the middle that the two sides differ by is that of the bat off its middle.
#[test]
fn sides_are_evened_until_the_blade_balances_on_its_middle() {
    let (card, size) = (card(), size(&card().size));
    let mut noise = Noise(SmallRng::seed_from_u64(5));
    let shape = part_made(&card, &size, 0.10, 0.0);
    let planed = Planed::not_yet(&shape);
    let now = bare(&shape, &card);
    for left_m in [0.0005, -0.0008] {
        let bench = Bench { left_m, ..bench(&now, &planed, &mut noise) };
        let made = plan(&bench, &card, &size.craft).unwrap();
        let (mut evened_kg_m, mut before) = (0.0, &shape);
        for pass in &made.passes {
            if let Some([left_kg, right_kg]) = pass.sides_kg {
                approx::assert_relative_eq!(left_kg + right_kg, pass.off_kg, max_relative = 1e-9);
                assert!(left_kg > 0.0 && right_kg > 0.0);
                let lever_m = plane::lever_m(before, &pass.shape).unwrap();
                evened_kg_m += (left_kg - right_kg) * lever_m;
            }
            before = &pass.shape;
        }
        approx::assert_relative_eq!(
            evened_kg_m,
            bench.reading.mass_kg.value * left_m,
            max_relative = 1e-9
        );
    }
}

/// Wood spread evenly over one side lies a quarter of the width off the middle, a share of it thinned from an edge that
/// falls off to the middle a third of the half.
#[test]
fn the_lever_of_a_side_is_that_of_its_wood() {
    let size = size("6");
    let shape = &size.reference;
    let width_m = shape.blade.width_m();
    for (place, low, high) in [(Place::HollowBelow, 0.15, 0.35), (Place::Edges, 0.25, 0.5)] {
        let room = room(shape, place, &size.craft, 0.02).unwrap();
        let lever_m = plane::lever_m(shape, &cut(shape, place, 0.2 * room.amount)).unwrap();
        assert!((low..high).contains(&(lever_m / width_m)), "{place:?} {}", lever_m / width_m);
    }
}

#[test]
fn a_handle_too_thick_for_its_card_is_shaved_first_and_two_thicknesses_have_two_plans() {
    let (card, size) = (card(), size(&card().size));
    let mut noise = Noise(SmallRng::seed_from_u64(6));
    let mut shaved_kg = Vec::new();
    for thicker_m in [0.0, 0.003, 0.006] {
        let handle_m = card.handle_diameter_m() + thicker_m;
        let shape = part_made(&card, &size, 0.12, 0.0).with_handle_over_grip_m(handle_m);
        let planed = Planed::not_yet(&shape);
        let now = bare(&shape, &card);
        let made = plan(&bench(&now, &planed, &mut noise), &card, &size.craft).unwrap();
        assert!(made.handle_m.1, "{:?}", made.handle_m);
        if thicker_m > 0.0 {
            assert_eq!(made.passes[0].place, Place::Handle);
        }
        let off = made.passes.iter().filter(|it| it.place == Place::Handle);
        shaved_kg.push(off.map(|it| it.off_kg).sum::<f64>());
    }
    assert!(
        shaved_kg[1] > shaved_kg[0] + 0.01 && shaved_kg[2] > shaved_kg[1] + 0.01,
        "{shaved_kg:?}"
    );
}

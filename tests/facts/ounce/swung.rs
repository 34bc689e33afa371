//! The cost of simulated bats.

use std::sync::OnceLock;

use backlift::bat::Bat;
use backlift::bat::figures::weigh;
use backlift::bat::sizes::named;
use backlift::files::{assets, scenario, stroke};
use backlift::fit::setting::Setting;
use backlift::innings::played::{FIFTY, left_at};
use backlift::measurement::person::Handed;
use backlift::ounce::cost::StrokeOunce;
use backlift::ounce::moments::TopMoments;
use backlift::ounce::swung::{cost_at, ounce_cost};
use backlift::player::{Player, player};
use backlift::swing::batter::Batter;

use super::exponents::Exponents;
use crate::swing::players::{FRESH, adult, adult_bat, bat_with, boy_of_twelve, boys_bat};

fn batter(player: &Player, bat: &Bat) -> Batter {
    Batter::new(player, &stroke::usual().unwrap(), bat).unwrap()
}

fn man() -> &'static (Batter, Vec<StrokeOunce>) {
    static MAN: OnceLock<(Batter, Vec<StrokeOunce>)> = OnceLock::new();
    MAN.get_or_init(|| {
        let batter = batter(&adult(Handed::Right), &adult_bat());
        let costs = ounce_cost(&batter, &adult_bat(), &FRESH).unwrap();
        (batter, costs)
    })
}

fn boy() -> &'static (Batter, Vec<StrokeOunce>) {
    static BOY: OnceLock<(Batter, Vec<StrokeOunce>)> = OnceLock::new();
    BOY.get_or_init(|| {
        let batter = batter(&boy_of_twelve(Handed::Right), &boys_bat());
        let costs = ounce_cost(&batter, &boys_bat(), &FRESH).unwrap();
        (batter, costs)
    })
}

fn shown(who: &str, it: &StrokeOunce, bat: &Bat) {
    let axis = it.axis();
    let km_h = |share: f64| -3.6 * it.ounce_at_m_s(share * it.length_m);
    let e = Exponents::of(it, bat);
    println!(
        "ounce {who} {}: km/h {:.3} at the top, {:.3} in the middle, {:.3} at the toe; axis {:.3} m above, left {:.1} %; exponents I|m {:.3}, m|I {:.3}",
        it.stroke,
        km_h(0.0),
        km_h(0.5),
        km_h(1.0),
        axis.above_top_m,
        100.0 * axis.residual_share,
        e.swing_moment_at_fixed_mass,
        e.mass_at_fixed_swing_moment,
    );
}

/// Accepted, before it was looked at: 2 % of what the ounce costs at the toe.
#[test]
fn the_curve_holds_where_it_was_not_fitted() {
    for (who, (batter, costs), bat) in [("man", man(), adult_bat()), ("boy", boy(), boys_bat())] {
        for (stroke, it) in batter.strokes.iter().zip(costs) {
            shown(who, it, &bat);
            let near_s = stroke.hold(&bat).unwrap().fastest(&FRESH, None).unwrap().stroke_time_s;
            for share in [0.25, 0.8] {
                let at_m = share * bat.length_m();
                let swung = cost_at(stroke, &bat, &FRESH, near_s, at_m).unwrap();
                let off = (it.at(at_m) - swung.speed_change_m_s_per_kg).abs();
                let toe = it.at(bat.length_m()).abs();
                println!(
                    "curve {who} {} {share}: off by {:.2} % of the toe",
                    it.stroke,
                    100.0 * off / toe
                );
                assert!(off < 0.02 * toe, "{who} {} at {at_m}: {off} of {toe}", it.stroke);
            }
        }
    }
}

/// The law knows mass, first and second moment; a bat is more than masses on a line. Half the difference of
/// two bats balanced 5 mm up and down. Accepted, before it was looked at: 3 % of the change. The drive disagrees since the
/// hands hold with both their sides: 4.7 %. Its cost also moves with the mass that is tried; why was not
/// looked into.
#[test]
fn a_moved_balance_point_costs_what_its_moments_say_but_in_the_drive() {
    let (batter, costs) = man();
    let moved = |by_m: f64| bat_with(1.20, 0.85, 0.53 + by_m, adult_bat().I_Com_B().y_axis.y);
    let (up, down) = (moved(-0.005), moved(0.005));
    let by = TopMoments::of_bat(&down) - TopMoments::of_bat(&up);
    for (stroke, it) in batter.strokes.iter().zip(costs) {
        let speed =
            |bat: &Bat| stroke.hold(bat).unwrap().fastest(&FRESH, None).unwrap().bat_speed_m_s;
        let (swung, said) = (speed(&down) - speed(&up), it.change_m_s(by));
        println!("balance {}: swung {swung:.4} m/s, by the law {said:.4} m/s", it.stroke);
        let agrees = (said / swung - 1.0).abs() < 0.03;
        assert_eq!(agrees, it.stroke != "drive", "{}: {said} {swung}", it.stroke);
    }
}

#[test]
fn a_left_hander_pays_the_same() {
    let (_, right) = man();
    let left = batter(&adult(Handed::Left), &adult_bat());
    let left = ounce_cost(&left, &adult_bat(), &FRESH).unwrap();
    for (l, r) in left.iter().zip(right) {
        assert_eq!(l.stroke, r.stroke);
        for (a, b) in l.curve().iter().zip(r.curve()) {
            let toe = r.at(r.length_m).abs();
            let off = (a.speed_change_m_s_per_kg - b.speed_change_m_s_per_kg).abs();
            assert!(off < 1e-5 * toe, "{}: {a:?} {b:?}", l.stroke);
        }
    }
}

/// The players of a demo, with what fifty runs leave them.
fn at_fifty(file: &str) -> (Bat, Vec<StrokeOunce>) {
    let file = format!("scenarios/{file}.ron");
    let s = scenario::load(Some(file.as_ref()), &[]).unwrap().scenario;
    let (sizes, laws) = (assets::sizes().unwrap(), assets::limits().unwrap());
    let bat = weigh(&s.bats[0], &sizes, &laws).unwrap().bat;
    let batter = batter(&player(&s.player).unwrap(), &bat);
    let asked = Setting::asked_times_s(&batter, &bat, s.fit.asked_time_factor).unwrap();
    let left = left_at(&batter, &batter.take_up(&bat).unwrap(), &s.innings, &asked, FIFTY).unwrap();
    let costs = ounce_cost(&batter, &bat, &left.with_slow).unwrap();
    (bat, costs)
}

fn costs_more_towards_the_toe(file: &str) {
    let (bat, costs) = at_fifty(file);
    for it in costs {
        shown(file, &it, &bat);
        let curve = it.curve();
        let falls =
            curve.windows(2).all(|w| w[1].speed_change_m_s_per_kg < w[0].speed_change_m_s_per_kg);
        assert!(falls, "{file} {}: {curve:?}", it.stroke);
    }
}

#[test]
fn an_ounce_costs_more_the_nearer_it_sits_to_the_toe() {
    costs_more_towards_the_toe("junior");
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn an_ounce_costs_every_demo_player_more_the_nearer_it_sits_to_the_toe() {
    for file in ["club", "girl15", "left-hander", "maker", "measured-well"] {
        costs_more_towards_the_toe(file);
    }
}

/// Neither at the same weight nor at the same swing moment does a bat swing as before. Figures in `assets/records/ounce.md`.
#[test]
fn both_weight_and_swing_moment_slow_a_man() {
    let sizes = assets::sizes().unwrap();
    let size = named(&sizes, "short handle").unwrap();
    let bat = size.reference.bat("short handle").unwrap();
    let batter = batter(&adult(Handed::Right), &bat);
    for it in ounce_cost(&batter, &bat, &FRESH).unwrap() {
        shown("standard man", &it, &bat);
        for x in [0.0, 0.1524, 0.45, 0.70, 0.85] {
            println!("standard man {} at {x} m: {:.3} km/h", it.stroke, -3.6 * it.ounce_at_m_s(x));
        }
        let e = Exponents::of(&it, &bat);
        assert!(e.swing_moment_at_fixed_mass < 0.0, "{}: {e:?}", it.stroke);
        assert!(e.mass_at_fixed_swing_moment < 0.0, "{}: {e:?}", it.stroke);
        assert!(it.axis().above_top_m > 0.0, "{}: {:?}", it.stroke, it.axis());
    }
}

//! Facts about the stage `impact`.

mod bow;

use std::ops::ControlFlow;

use backlift::bat::shape::BatShape;
use backlift::comparison::collision::{apparent_restitution, exit_speed_m_s, recoil_ratio};
use backlift::files::assets::sizes;
use backlift::files::reference::off_middle;
use backlift::files::reference::off_middle::Case;
use backlift::impact::ball::{Ball, loss};
use backlift::impact::doubt::{Spread, doubted};
use backlift::impact::face::face_map;
use backlift::impact::hand::Hand;
use backlift::impact::hit::Hit;
use backlift::impact::parts::{BatError, Parts};
use backlift::impact::splice::{Cane, Hinge};
use backlift::impact::strike::{Until, strike, strike_in_steps};
use backlift::measurement::plan::BALL_KG;
use backlift::validation::checks;

use crate::outside::{agrees, disagrees_only_in};

pub fn shape() -> BatShape {
    sizes().unwrap().last().unwrap().reference.clone()
}

pub fn hit(shape: &BatShape, hinge_n_m: Option<f64>, held: bool, from_toe_m: f64) -> Hit {
    let parts = Parts::of(shape);
    let stiffness = hinge_n_m.unwrap_or_else(|| Cane::of(2.5e9).hinge_n_m(&shape.handle));
    let hand = |at_m: f64| Hand::of(0.43, at_m, 400.0, 0.034);
    Hit {
        parts,
        hinge: Hinge::of(stiffness, &parts),
        ball: Ball::of(BALL_KG),
        hands: if held { vec![hand(0.06), hand(0.165)] } else { vec![] },
        contact_from_top_m: parts.toe_m - from_toe_m,
        across_m: 0.0,
        bat_m_s: 20.0,
        turns_about_m: 0.1524,
        ball_m_s: 25.0,
    }
}

#[test]
fn reference_hits_over_time_are_met_free_and_held() {
    agrees(&checks(), "hit over time");
}

#[test]
fn a_stiff_free_bat_gives_the_closed_form_of_the_rigid_bat_turning_or_not() {
    agrees(&checks(), "rigid limit");
}

#[test]
fn reference_hits_off_the_middle_are_met_and_published_losses_where_said() {
    // 7.1 to 8.9 % for the 6 % measured; why, stands in the rows.
    let known = ["law of the hit", "hit over time, held"].map(|which| {
        ["20 mm across", "20 mm across and 45 mm along, the worse way"]
            .map(|what| format!("ball off the middle, {which}: speed lost {what}"))
    });
    let known: Vec<&str> = known.iter().flatten().map(String::as_str).collect();
    disagrees_only_in(&checks(), "off the middle", &known);
}

/// What the rows' notes say of friction and of a bulging face, by another integrator's own bat: each pair is a hit in the
/// middle and one 20 mm off it.
#[test]
fn reference_friction_and_a_bulging_face_hardly_explain_what_is_lost_off_the_middle() {
    let reference = off_middle().unwrap();
    let lost = |pair: &[Case]| {
        let [middle, off] = pair else { panic!("a pair") };
        assert_eq!([middle.hit.across_m, off.hit.across_m], [0.0, 0.020]);
        100.0 * (1.0 - off.found.exit_whole_m_s / middle.found.exit_whole_m_s)
    };
    let smooth = lost(&reference.cases[..2]);
    let more = |what: &str| lost(&reference.left_out[what]) - smooth;
    assert!(more("friction").abs() < 0.1, "{}", more("friction"));
    for what in ["bulge", "both"] {
        assert!((-0.8..-0.5).contains(&more(what)), "{what}: {}", more(what));
        assert!(reference.left_out[what][1].found.aside_rad.to_degrees() < 10.0);
    }
    // An instant contact loses as much more as the face's turning spares.
    assert!((1.0..1.4).contains(&more("sudden")), "{}", more("sudden"));
}

#[test]
fn the_splice_is_as_stiff_as_beam_theory_says() {
    agrees(&checks(), "splice stiffness");
}

#[test]
fn a_hit_keeps_what_must_be_kept_and_is_of_second_order() {
    agrees(&checks(), "hit accounts");
}

#[test]
fn momentum_and_energy_are_accounted_for_and_the_better_the_smaller_the_step() {
    let shape = shape();
    for across_m in [0.0, 0.02] {
        let it = Hit { across_m, ..hit(&shape, None, true, 0.15) };
        let mut opens = Vec::new();
        for dt in [2e-5, 1e-5, 5e-6, 2.5e-6] {
            let struck = strike_in_steps(&it, Until::Felt, dt).unwrap();
            println!(
                "{across_m} {dt}: exit {} bend {} {:?} twist {} {} contact {} {} N {:?}",
                struck.exit_m_s,
                struck.bend_rad.to_degrees(),
                struck.hands,
                struck.twist_rad_s,
                struck.twist_rad,
                struck.contact_s,
                struck.contact_peak_n,
                struck.account
            );
            opens.push(struck.account);
        }
        for account in &opens {
            assert!(account.momentum_share < 1e-9, "{opens:#?}");
            assert!(account.energy_share.abs() < 1e-3, "{opens:#?}");
        }
        for account in &opens[2..] {
            assert!(account.moment_share < 1e-6, "{opens:#?}");
        }
        // Of second order: a quarter.
        for (coarse, fine) in opens.iter().zip(&opens[1..]) {
            assert!(fine.moment_share < 0.3 * coarse.moment_share, "{opens:#?}");
            assert!(fine.energy_share.abs() < 0.3 * coarse.energy_share.abs(), "{opens:#?}");
        }
    }
}

#[test]
fn a_loss_of_the_ball_gives_its_restitution_back() {
    for e in [0.2, 0.5, 0.8, 1.0] {
        let d = loss(e);
        let speed_left = d * (1.0 + e) - libm::log((1.0 + d) / (1.0 - e * d));
        assert!(speed_left.abs() < 1e-9, "{e}: {d}");
    }
}

#[test]
fn a_bat_off_by_an_error_has_the_figures_asked_for() {
    let parts = Parts::of(&shape());
    let mass = |it: &Parts| it.handle.mass_kg + it.blade.mass_kg;
    let balance = |it: &Parts| {
        let both = it.handle.com_B * it.handle.mass_kg + it.blade.com_B * it.blade.mass_kg;
        both.x / mass(it)
    };
    let error = BatError { mass_kg: 0.005, balance_m: 0.002, swing_moment_kg_m2: 0.003 };
    let off = parts.off_by(-0.5, &error);
    assert!((mass(&off) - mass(&parts) + 0.0025).abs() < 1e-12);
    assert!((balance(&off) - balance(&parts) + 0.001).abs() < 1e-12);
    let moment = off.swing_moment_kg_m2() - parts.swing_moment_kg_m2();
    assert!((moment + 0.0015).abs() < 1e-12, "{moment}");
}

#[test]
fn what_is_wrong_with_the_weighing_is_in_the_doubt_as_the_closed_form_has_it() {
    let it = hit(&shape(), Some(1e7), false, 0.15);
    let bare = Spread { hinge_n_m: [1e7; 2], bat_m_s: 0.0, bat: vec![] };
    let error = BatError { swing_moment_kg_m2: 0.02, ..BatError::default() };
    let spread = Spread { bat: vec![error], ..bare.clone() };
    let [without, with] = [bare, spread].map(|spread| doubted(&it, &spread).unwrap().exit_m_s.sd);
    let own = libm::sqrt(with * with - without * without);
    // Exit speed of the rigid bat by its moment about the balance point, by a small difference.
    let exit = |by: f64| {
        let bat = shape().bat("").unwrap();
        let offset_m = it.contact_from_top_m - bat.balance_m();
        let moment = bat.I_Com_B().y_axis.y + by;
        let r = recoil_ratio(BALL_KG, bat.mass_kg(), offset_m, moment);
        exit_speed_m_s(apparent_restitution(0.5, r), 25.0, 20.0)
    };
    let slope = (exit(1e-5) - exit(-1e-5)) / 2e-5;
    assert!((own / (slope * 0.02).abs() - 1.0).abs() < 0.05, "{own} {slope}");
}

#[test]
fn the_map_is_as_wide_as_the_face_and_says_what_a_hit_there_says() {
    let shape = shape();
    let it = hit(&shape, None, true, 0.15);
    let map = face_map(&it, &shape.blade, &|_| ControlFlow::Continue(())).unwrap();
    let (columns, rows) = (map.from_top_m.len(), map.across_share.len());
    assert_eq!(map.exit_m_s.len(), columns * rows);
    let widest = map.half_width_m.iter().copied().fold(0.0, f64::max);
    assert!((widest - 0.5 * shape.blade.width_m()).abs() < 1e-9);
    assert_eq!([map.across_share[0], map.across_share[rows - 1]], [-1.0, 1.0]);
    let best = (0..map.exit_m_s.len())
        .max_by(|a, b| map.exit_m_s[*a].total_cmp(&map.exit_m_s[*b]))
        .unwrap();
    let (column, row) = (best % columns, best / columns);
    assert!(map.across_share[row].abs() < 1e-9, "{}", map.across_share[row]);
    assert!(column > 0 && column < columns - 1);
    let there = Hit {
        contact_from_top_m: map.from_top_m[column],
        bat_m_s: it.turning_rad_s() * (map.from_top_m[column] - it.turns_about_m),
        ..it
    };
    let alone = strike(&there, Until::Away).unwrap().exit_m_s;
    assert!((alone - map.exit_m_s[best]).abs() < 1e-12);
}

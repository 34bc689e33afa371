//! Facts about the stage `impact`.

use approx::assert_relative_eq;
use backlift::bat::shape::BatShape;
use backlift::comparison::collision::{BALL_KG, exit_speed_off_bat_m_s};
use backlift::files::assets::sizes;
use backlift::impact::ball::{Ball, loss};
use backlift::impact::hand::Hand;
use backlift::impact::parts::Parts;
use backlift::impact::splice::{Cane, Hinge};
use backlift::impact::strike::{Hit, Until, strike, strike_in_steps};

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
fn a_stiff_free_bat_gives_the_closed_form_of_the_rigid_bat() {
    let shape = shape();
    let bat = shape.bat("").unwrap();
    for from_toe_m in [0.03, 0.10, 0.20, 0.30] {
        let it = hit(&shape, Some(1e7), false, from_toe_m);
        let ours = strike(&it, Until::Away).unwrap();
        let theirs = exit_speed_off_bat_m_s(&bat, it.contact_from_top_m, 20.0, 25.0, BALL_KG, 0.5);
        println!("{from_toe_m}: {} {} {:?}", ours.exit_m_s, theirs, ours.account);
        assert_relative_eq!(ours.exit_m_s, theirs, max_relative = 5e-3);
    }
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
        // The engine's multibody turns by the rate at the start of a step: what stays open is of first order.
        for account in &opens[2..] {
            assert!(account.momentum_share < 5e-4, "{opens:#?}");
            assert!(account.moment_share < 5e-4, "{opens:#?}");
            assert!(account.energy_share.abs() < 2e-3, "{opens:#?}");
        }
        for (coarse, fine) in opens.iter().zip(&opens[1..]) {
            assert!(fine.momentum_share < 0.6 * coarse.momentum_share, "{opens:#?}");
            assert!(fine.energy_share.abs() < 0.6 * coarse.energy_share.abs(), "{opens:#?}");
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
fn an_even_handle_bends_as_a_cantilever_under_its_own_mass() {
    let mut handle = shape().handle;
    handle.shoulder_diameter_m = handle.top_diameter_m;
    let solid = Cane { modulus_pa: 2.5e9, rubber_shear_pa: 1e15, strip_m: 1e-3 };
    let [a, b] = handle.half_axes_m(0.1);
    let stiff = 2.5e9 * std::f64::consts::FRAC_PI_4 * a * b * b * b;
    assert_relative_eq!(solid.bending_n_m2([a, b], 0.3), stiff, max_relative = 1e-6);
    let k = solid.hinge_n_m(&handle);
    println!("k {k} of {stiff}");
    assert_relative_eq!(k, 40.0 / 11.0 * stiff / handle.length_m, max_relative = 1e-6);
    for e in [1e9, 2.5e9, 4e9] {
        let shape = shape();
        println!(
            "{e} {} {} {}",
            Cane::of(e).hinge_n_m(&shape.handle),
            Cane { rubber_shear_pa: 1e-3, ..Cane::of(e) }.hinge_n_m(&shape.handle),
            Cane { rubber_shear_pa: 1e15, ..Cane::of(e) }.hinge_n_m(&shape.handle)
        );
    }
    let mut speed = Vec::new();
    for k in [50.0, 100., 200.0, 400.0, 800.0, 1600.0] {
        let it = hit(&shape(), Some(k), true, 0.15);
        let s = strike(&it, Until::Felt).unwrap();
        speed.push((k, s.exit_m_s, s.bend_rad.to_degrees()));
    }
    println!("{speed:?}");
}

use backlift::comparison::collision::{
    FreeBat, Meeting, apparent_restitution, exit_speed_m_s, recoil_ratio,
};
use backlift::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use backlift::worth::meeting::{Scatter, Struck};

/// An adult's bat, its figures round.
fn struck() -> Struck {
    Struck {
        mass_kg: 1.2,
        balance_m: 0.52,
        swing_moment_kg_m2: 0.245,
        twist_moment_kg_m2: 0.0010,
        length_m: 0.85,
        half_width_m: 0.054,
    }
}

fn scatter(along_m: f64, across_m: f64) -> Scatter {
    Scatter { along_m, across_m, restitution: 0.5, contact_s: 1.1e-3, ball_kg: 0.16 }
}

const CONTACT_M: f64 = 0.70;

#[test]
fn with_no_scatter_a_ball_goes_off_as_from_a_free_rigid_bat() {
    let bat = struck();
    let lever = bat.balance_m - PICKUP_AXIS_FROM_TOP_M;
    let com_moment = bat.swing_moment_kg_m2 - bat.mass_kg * lever * lever;
    let recoil = recoil_ratio(0.16, bat.mass_kg, CONTACT_M - bat.balance_m, com_moment);
    let closed = exit_speed_m_s(apparent_restitution(0.5, recoil), 25.0, 18.0);
    let met = bat.met(CONTACT_M, CONTACT_M, 43.0, &scatter(1e-5, 1e-5));
    let ours = met.exit_speed_m_s(25.0, 18.0, 30.0);
    // Three standard deviations either side are counted: 0.27 % of the hits are left out along and across.
    let counted = 0.9973 * 0.9973;
    assert!((ours / (counted * closed) - 1.0).abs() < 1e-4, "{ours} {closed}");
}

#[test]
fn the_mean_over_the_face_is_what_a_fine_sum_gives() {
    let bat = struck();
    let it = scatter(0.05, 0.02);
    let met = bat.met(0.72, CONTACT_M, 43.0, &it);
    let (n, mut sum) = (600, 0.0);
    let density = |z: f64| (-0.5 * z * z).exp() / (2.0 * std::f64::consts::PI).sqrt();
    let lever = bat.balance_m - PICKUP_AXIS_FROM_TOP_M;
    let com_moment = bat.swing_moment_kg_m2 - bat.mass_kg * lever * lever;
    let step = 6.0 / f64::from(n);
    for i in 0..n {
        let zx = -3.0 + step * (f64::from(i) + 0.5);
        let x = 0.72 + it.along_m * zx;
        for j in 0..n {
            let zy = -3.0 + step * (f64::from(j) + 0.5);
            let y = it.across_m * zy;
            if x > bat.length_m || y.abs() > bat.half_width_m {
                continue;
            }
            // As the law has it: H = 56 mm, an impulse of m (1 + e) V/(1 + r).
            let middle = recoil_ratio(0.16, bat.mass_kg, x - bat.balance_m, com_moment);
            let sudden = middle + 0.16 * y * y / bat.twist_moment_kg_m2;
            let more = 0.25 * 0.056 * (0.16 * 1.5 * 43.0 / (1.0 + sudden)) * 1.1e-3;
            let recoil = middle + 0.16 * y * y / (bat.twist_moment_kg_m2 + more);
            let e = apparent_restitution(0.5, recoil);
            let off = exit_speed_m_s(e, 25.0, 18.0 + 30.0 * (x - CONTACT_M));
            sum += off.max(0.0) * density(zx) * density(zy) * step * step;
        }
    }
    let ours = met.exit_speed_m_s(25.0, 18.0, 30.0);
    assert!((ours / sum - 1.0).abs() < 5e-4, "{ours} {sum}");
}

#[test]
fn a_face_that_turns_under_the_ball_loses_less_and_in_an_instant_as_much_as_the_rigid_bat() {
    let bat = FreeBat {
        mass_kg: 1.2,
        balance_m: 0.52,
        com_moment_kg_m2: 0.083,
        twist_moment_kg_m2: 0.0010,
    };
    let at = |contact_s: f64, closing_m_s: f64| {
        let meeting = Meeting { ball_kg: 0.16, restitution: 0.5, closing_m_s, contact_s };
        bat.recoil_ratio([0.62, 0.020], &meeting)
    };
    let sudden = recoil_ratio(0.16, 1.2, 0.10, 0.083) + 0.16 * 0.020 * 0.020 / 0.0010;
    assert!((at(0.0, 47.0) - sudden).abs() < 1e-12, "{} {sudden}", at(0.0, 47.0));
    assert!(at(1.1e-3, 47.0) < sudden);
    assert!(at(1.1e-3, 47.0) < at(0.7e-3, 47.0));
    // A slow ball turns it less.
    assert!(at(1.1e-3, 47.0) < at(1.1e-3, 25.0));
}

#[test]
fn hits_that_scatter_more_make_slower_balls() {
    let bat = struck();
    let speed = |along: f64, across: f64| {
        let it = scatter(along, across);
        let aim = bat.best_place_m(CONTACT_M, &it, [25.0, 18.0, 30.0]);
        bat.met(aim, CONTACT_M, 43.0, &it).exit_speed_m_s(25.0, 18.0, 30.0)
    };
    assert!(speed(0.03, 0.012) > speed(0.05, 0.02));
    assert!(speed(0.05, 0.02) > speed(0.08, 0.032));
}

#[test]
fn the_best_place_moves_with_the_middle_of_the_bat() {
    let it = scatter(0.05, 0.02);
    let low = struck();
    let high = low.read_as([1.2, 0.50, 0.228]);
    let place = |bat: &Struck| bat.best_place_m(CONTACT_M, &it, [25.0, 18.0, 30.0]);
    assert!(place(&high) < place(&low), "{} {}", place(&high), place(&low));
}

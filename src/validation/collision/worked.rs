//! The formula of rebound: worked cases, each closed back on momentum, energy and the restitution put in.

use crate::bat::{Bat, BatFault};
use crate::comparison::collision::{apparent_restitution, exit_speed_off_bat_m_s, recoil_ratio};
use crate::frames::{DMat3, DVec3};
use crate::validation::{Accept, CheckFault, Checked, Row};

const SOURCE: &str = "rigid bat and point ball along the normal (Cross & Nathan 2006, Am J Phys 74:896), \
                      worked from round inputs to six decimals, two hands";
/// To the printed digit.
const PRINTED: Accept = Accept::Within(5.1e-7);

/// Inputs of all cases: ball towards the bat, bat at the point struck, m/s; restitution.
const BALL_M_S: f64 = 25.0;
const BAT_M_S: f64 = 20.0;
const E: f64 = 0.5;
/// Balance point of the bat of the cases, m: nothing rests on it.
const BALANCE_M: f64 = 0.5;

/// Ball and bat mass, kg; point struck from the balance point, m; moment about it, kg m²; and of these
/// recoil ratio, apparent restitution, ball speed off the bat, m/s, and energy lost, J.
const WORKED: [[f64; 8]; 4] = [
    [0.16, 1.2, 0.00, 0.08, 0.133_333, 0.323_529, 34.558_824, 107.205_882],
    [0.16, 1.2, 0.10, 0.08, 0.153_333, 0.300_578, 33.526_012, 105.346_821],
    [0.16, 1.2, 0.20, 0.08, 0.213_333, 0.236_264, 30.631_868, 100.137_363],
    [0.14, 1.0, 0.15, 0.05, 0.203_000, 0.246_883, 31.109_726, 88.372_818],
];

fn bat(mass_kg: f64, moment_kg_m2: f64) -> Result<Bat, BatFault> {
    let I = DMat3::from_diagonal(DVec3::new(0.0012, moment_kg_m2, moment_kg_m2 + 0.001));
    Bat::new("rod", 0.85, mass_kg, DVec3::new(BALANCE_M, 0.0, 0.0), I)
}

pub(super) fn check() -> Result<Checked, CheckFault> {
    let mut rows = Vec::new();
    let mut left_open = [0.0_f64; 2];
    for [m, M, b, I, r, e_a, exit, lost_j] in WORKED {
        let case = format!("ball {m} kg, bat {M} kg struck {b} m from its balance point");
        let recoil = recoil_ratio(m, M, b, I);
        let v = exit_speed_off_bat_m_s(&bat(M, I)?, [BALANCE_M + b, 0.0], BAT_M_S, BALL_M_S, m, E);
        // The bat afterwards, from momentum and angular momentum alone; before, it moves without turning.
        let impulse = m * (v + BALL_M_S);
        let (com_m_s, rad_s) = (BAT_M_S - impulse / M, -impulse * b / I);
        let before_j = 0.5 * (m * BALL_M_S * BALL_M_S + M * BAT_M_S * BAT_M_S);
        let after_j = 0.5 * (m * v * v + M * com_m_s * com_m_s + I * rad_s * rad_s);
        let parting = (v - com_m_s - rad_s * b) / (BALL_M_S + BAT_M_S);
        left_open[0] = left_open[0].max((parting - E).abs());
        let by_formula =
            0.5 * (1.0 - E * E) * m / (1.0 + recoil) * (BALL_M_S + BAT_M_S) * (BALL_M_S + BAT_M_S);
        left_open[1] = left_open[1].max((before_j - after_j - by_formula).abs());
        let row = |what: &str, unit, expected, ours| {
            let what = format!("{what}: {case}");
            Row::compared(what, SOURCE, unit, expected, ours, PRINTED)
        };
        rows.extend([
            row("recoil ratio", "", r, recoil),
            row("apparent restitution", "", e_a, apparent_restitution(E, recoil)),
            row("ball speed off the bat", "m/s", exit, v),
            row("energy lost, from momentum kept", "J", lost_j, before_j - after_j),
        ]);
    }
    let closed = |what: &str, unit, ours| {
        let source = "momentum, angular momentum and the restitution put in";
        Row::compared(what, source, unit, 0.0, ours, Accept::Within(1e-12))
    };
    rows.push(closed(
        "parting speed over closing speed, less the restitution put in",
        "",
        left_open[0],
    ));
    rows.push(closed("energy before less after, less what restitution takes", "J", left_open[1]));
    Ok(rows.into())
}

//! Rods swung by one arm, as Cross and Bower had four students swing theirs.
//!
//! Set on 2026-11-29 before any of it was computed. Theirs: six rods swung overarm as fast as can be, three of one mass
//! and three of one swing moment; speed ∝ I^−0.27 above 0.03 kg m², about the same whatever the mass at one swing
//! moment (abstract read; the rods' own figures and the axis of their moment were not: taken as the hand's). Ours: four
//! rods each, a plane, one arm on a trunk that stands still. Other implements have −0.25 and −0.26 on the same page,
//! and four people differ: ±0.05 is accepted. "About the same": twice the mass within 3.5 %, an exponent of ±0.05. That
//! mass costs nothing at one moment says that an ounce costs nothing at the axis of that moment: the hand, ±0.05 m.

mod arm;

use rayon::prelude::*;

use super::slope;
use crate::dynamics::symmetric::{add_outer, cholesky, mirror, solve};
use crate::measurement::person::{PersonReading, Sex};
use crate::player::capacity::REFERENCE_STATURE_M;
use crate::player::player;
use crate::validation::{Accept, CheckFault, Checked, Curve, Row, readings};
use arm::{OneArm, POINT_M, Rod, fastest};

const SOURCE: &str =
    "Cross & Bower 2006, J Sports Sci 24:23 (abstract read), four students, six rods";
const EXPONENT: f64 = -0.27;
const WITHIN: Accept = Accept::Within(0.05);
/// Swing moments of the rods of one mass, kg m², and that mass.
const MOMENTS_KG_M2: [f64; 4] = [0.03, 0.05, 0.07, 0.105];
const MASS_KG: f64 = 0.40;
/// Masses of the rods of one swing moment, kg, and that moment.
const MASSES_KG: [f64; 4] = [0.25, 0.40, 0.60, 0.90];
const MOMENT_KG_M2: f64 = 0.05;
/// The ounce, kg, and where it is put, m from the middle of the hand along the rod.
const OUNCE_KG: f64 = 0.028_35;
const AT_M: [f64; 7] = [-0.15, -0.05, 0.05, 0.15, 0.30, 0.45, 0.60];

/// Searches for the first rod, and for each of the others.
const FIRST: u32 = 40;
const EACH: u32 = 16;

/// Where the swing ends: the rod level, and upright.
const ENDS: [(&str, f64); 2] = [("level", 0.0), ("upright", std::f64::consts::FRAC_PI_2)];

pub(super) fn check() -> Result<Checked, CheckFault> {
    let mut checked = Checked::default();
    for (end, level_rad) in ENDS {
        let found = swung(level_rad)?;
        checked.rows.extend(rows(end, &found));
        checked.curves.push(curve(end, &found));
    }
    Ok(checked)
}

/// Logarithms of speed, as swung.
struct Swung {
    by_moment: Vec<(f64, f64)>,
    by_mass: Vec<(f64, f64)>,
    /// Place of the ounce and what it does to ln v.
    ounce: Vec<(f64, f64)>,
}

fn swung(level_rad: f64) -> Result<Swung, CheckFault> {
    let man = player(&PersonReading::of(Sex::Male, 25.0, REFERENCE_STATURE_M))?;
    let base = Rod::even(MASS_KG, MOMENT_KG_M2);
    let arm = |rod: &Rod| OneArm::new(&man.segments, rod, level_rad);
    let (_, told) = fastest(&arm(&base)?, FIRST, &[]);
    let all = |searches: u32, rods: Vec<(f64, Rod)>| -> Result<Vec<(f64, f64)>, CheckFault> {
        let one = |(x, rod): (f64, Rod)| match fastest(&arm(&rod)?, searches, &[told]).0 {
            speed_m_s if speed_m_s > 0.0 => Ok((x, libm::log(speed_m_s))),
            _ => Err("a rod that never comes round".into()),
        };
        rods.into_par_iter().map(one).collect()
    };
    // An ounce changes little: its searches start where that without it ended, and so does that without it.
    let plain = all(0, vec![(0.0, base)])?.into_iter().map(|(_, ln)| ln).sum::<f64>();
    let ounce = all(0, AT_M.map(|at_m| (at_m, base.with(OUNCE_KG, at_m))).to_vec())?;
    Ok(Swung {
        by_moment: all(EACH, MOMENTS_KG_M2.map(|it| (it, Rod::even(MASS_KG, it))).to_vec())?,
        by_mass: all(EACH, MASSES_KG.map(|it| (it, Rod::even(it, MOMENT_KG_M2))).to_vec())?,
        ounce: ounce.into_iter().map(|(at_m, ln)| (at_m, ln - plain)).collect(),
    })
}

/// Slope of y on ln x.
fn exponent(points: &[(f64, f64)]) -> f64 {
    let logs = points.iter().map(|(x, y)| (libm::log(*x), *y));
    slope(&logs.collect::<Vec<_>>())
}

/// Coefficients of the parabola through the points by least squares: constant, slope, square.
fn parabola(points: &[(f64, f64)]) -> [f64; 3] {
    let mut H = [[0.0; 3]; 3];
    let mut g = [0.0; 3];
    for (x, y) in points {
        let powers = [1.0, *x, x * x];
        add_outer(&mut H, 1.0, &powers);
        for (g, p) in g.iter_mut().zip(powers) {
            *g += p * y;
        }
    }
    mirror(&mut H);
    cholesky(&mut H);
    solve(&H, &mut g);
    g
}

fn rows(end: &str, it: &Swung) -> Vec<Row> {
    let [constant, slope, square] = parabola(&it.ounce);
    let least_m = -0.5 * slope / square;
    let left = constant - 0.25 * slope * slope / square;
    let row = |what: &str, unit, expected: f64, ours: f64, note: &str| {
        let what = format!("one arm, rods swung till {end}: {what}");
        Row::compared(what, SOURCE, unit, expected, ours, WITHIN).noted(note)
    };
    let at_one_mass = exponent(&it.by_moment);
    let at_one_moment = exponent(&it.by_mass);
    vec![
        row("exponent of speed on swing moment at one mass", "", EXPONENT, at_one_mass, BY_MOMENT),
        row("exponent of speed on mass at one swing moment", "", 0.0, at_one_moment, BY_MASS),
        row("where an ounce costs least, from the middle of the hand", "m", 0.0, least_m, AXIS),
        Row::no_data(
            format!("one arm, rods swung till {end}: speed lost by an ounce there"),
            "%",
            Some(-100.0 * left),
            "theirs does not say what an ounce in the hand costs",
        ),
    ]
}

const BY_MOMENT: &str = "flatter than theirs by 0.07 to 0.09. Torque falls with the joints' speed: were it not to fall, ours would be −0.35 \
                         (level) and −0.29 (upright), and theirs lies between. A rod held square to the forearm like a hammer, not at 40° \
                         like a racket: −0.24 and −0.22. Gravity, a wrist twice or half as strong and a torque that rises in 105 ms move it \
                         by 0.02 at the most (each tried once). Assumed: no trunk, no turning of the upper arm about its length, a start at rest";
const BY_MASS: &str = "3.6 times the mass at one moment about the hand costs 8 to 9 % of speed: the hand moves and carries it. Kept about an \
                       axis 50 mm behind the middle of the hand, near the end of a handle, −0.04 and −0.05; 100 mm behind it −0.00 and \
                       −0.02; held square to the forearm −0.04 and −0.05; with a wrist twice as strong −0.04 and −0.06 (each tried once). \
                       Which axis theirs was about, and how they were held, was not read";
const AXIS: &str = "behind the middle of the hand: upright 70 mm, where the wrist is (78 mm); level 190 mm, of a parabola that is flat there (an \
                    ounce costs nothing at 150 mm and 0.1 % at 50 mm). The parabola goes through seven ounces";

fn curve(end: &str, it: &Swung) -> Curve {
    let speeds: Vec<(f64, f64)> = it.by_moment.iter().map(|(x, ln)| (*x, libm::exp(*ln))).collect();
    let (i, v) = speeds.get(1).copied().unwrap_or((1.0, 0.0));
    let law = |x: f64| v * libm::pow(x / i, EXPONENT);
    Curve {
        title: format!("One arm: speed {POINT_M} m from the hand against swing moment, till {end}"),
        x_label: "swing moment (kg m²)".into(),
        y_label: "speed (m/s)".into(),
        theirs: readings(speeds.iter().map(|(x, _)| (*x, law(*x)))),
        ours: speeds,
        source: format!("the power law of {SOURCE}; laid through the second of ours"),
    }
}

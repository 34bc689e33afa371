//! Bat speed against swing moment: the whole curve, by moving the balance and by adding mass.

use rayon::prelude::*;

use super::slope;
use super::typical::{Typical, adult as man, adult_with_feet_still, boy_of_twelve};
use crate::bat::{Bat, BatFault};
use crate::frames::DVec3;
use crate::player::joints::FRESH;
use crate::swing::player_stroke::SwingFault;
use crate::validation::{Accept, CheckFault, Checked, Curve, Row, readings};

const SOURCE: &str = "Cross & Bower 2006, J Sports Sci 24:23 (read): rods −0.27; the same page quotes softball \
                      bats −0.25 and golf clubs −0.26";
const PUBLISHED: f64 = -0.27;
/// Theirs are one implement swung freely, feet still; ours are two hands on a path to be kept.
const BAND: Accept = Accept::Between(-0.40, -0.15);

/// What is changed about the bat, in words, and the bat so many steps heavier in the swing.
type Change = (&'static str, fn(&Bat, f64) -> Result<Bat, BatFault>);

const CHANGES: [Change; 2] = [
    ("moving the balance", |bat, step| changed(bat, 1.0, 0.01 * step)),
    ("adding mass", |bat, step| changed(bat, 1.0 + 0.04 * step, 0.0)),
];

/// The bat with its wood made denser and its balance point moved, its spread about it kept.
fn changed(bat: &Bat, mass_factor: f64, balance_by_m: f64) -> Result<Bat, BatFault> {
    Bat::new(
        bat.label(),
        bat.length_m(),
        mass_factor * bat.mass_kg(),
        bat.com_B() + DVec3::new(balance_by_m, 0.0, 0.0),
        bat.I_Com_B() * mass_factor,
    )
}

/// Fresh bat speeds of one stroke with several bats, each search started where the last one ended.
fn speeds_m_s(who: &Typical, stroke: usize, bats: &[Bat]) -> Result<Vec<f64>, SwingFault> {
    let mut guess = None;
    bats.iter()
        .map(|bat| {
            let found = who.batter.strokes[stroke].hold(bat)?.fastest(&FRESH, guess)?;
            guess = Some(found.stroke_time_s);
            Ok(found.bat_speed_m_s)
        })
        .collect()
}

/// One stroke with the bats of one family.
struct Swung {
    stroke: String,
    /// What is changed about the bat.
    by: &'static str,
    /// Swing moment, kg m², and bat speed, m/s.
    points: Vec<(f64, f64)>,
}

impl Swung {
    /// Slope of ln v on ln I by least squares.
    fn exponent(&self) -> f64 {
        let logs = self.points.iter().map(|(i, v)| (libm::log(*i), libm::log(*v)));
        slope(&logs.collect::<Vec<_>>())
    }

    /// Ours and the published law through the middle of ours.
    fn curve(&self, who: &Typical) -> Option<Curve> {
        let (middle, speed) = *self.points.get(self.points.len() / 2)?;
        let law = |i: f64| speed * libm::pow(i / middle, PUBLISHED);
        Some(Curve {
            title: format!("{}: bat speed of the {}, {}", who.words, self.stroke, self.by),
            x_label: "swing moment (kg m²)".into(),
            y_label: "bat speed (m/s)".into(),
            ours: self.points.clone(),
            theirs: readings(self.points.iter().map(|(x, _)| (*x, law(*x)))),
            source: format!("the power law of {SOURCE}; laid through the middle of ours"),
        })
    }
}

fn swung(who: &Typical) -> Result<Vec<Swung>, CheckFault> {
    let strokes = 0..who.batter.strokes.len();
    let cases: Vec<(usize, Change)> =
        strokes.flat_map(|stroke| CHANGES.map(|change| (stroke, change))).collect();
    cases
        .into_par_iter()
        .map(|(stroke, (by, change))| {
            // From light to heavy in the swing, the middle one the bat itself.
            let steps = (-3..=3).map(f64::from);
            let bats = steps.map(|it| change(&who.bat, it)).collect::<Result<Vec<Bat>, _>>()?;
            let speeds = speeds_m_s(who, stroke, &bats)?;
            let points = bats.iter().map(Bat::swing_moment_kg_m2).zip(speeds).collect();
            let stroke = who.batter.strokes[stroke].stroke.name.clone();
            Ok(Swung { stroke, by, points })
        })
        .collect()
}

fn what(who: &Typical, it: &Swung) -> String {
    format!("{}: exponent of {} speed on swing moment, {}", who.words, it.stroke, it.by)
}

fn compared(who: &Typical, it: &Swung, note: &str) -> Row {
    let ours = it.exponent();
    let row = Row::compared(what(who, it), SOURCE, "", PUBLISHED, ours, BAND);
    row.noted(note)
}

/// With the stride that the stroke has.
pub(super) fn adult() -> Result<Checked, CheckFault> {
    let who = man()?;
    let swung = swung(&who)?;
    let rows = swung.iter().map(|it| compared(&who, it, MOVING)).collect();
    Ok(Checked { rows, curves: swung.iter().filter_map(|it| it.curve(&who)).collect() })
}

const MOVING: &str = "band −0.15 to −0.40: theirs are free swings of one implement with the feet still. Part of \
                      the speed comes from the stride, which the bat does not slow: flatter. The hook lifts the \
                      bat, so that weight costs twice: steeper";

/// As in the published swings.
pub(super) fn feet_still() -> Result<Checked, CheckFault> {
    let who = adult_with_feet_still()?;
    let rows: Vec<Row> = swung(&who)?.iter().map(|it| compared(&who, it, STILL)).collect();
    Ok(rows.into())
}

const STILL: &str = "the same joint paths on a pelvis that turns but does not stride, which is nearer to the published \
                     swings. The pull with the balance moved is just outside the band (−0.136). Reasoned, not measured: \
                     hips and spine, which turn the body more than the bat, are what limits it";

/// Nothing published for a child.
pub(super) fn junior() -> Result<Checked, CheckFault> {
    let who = boy_of_twelve()?;
    let swung = swung(&who)?;
    let row = |it: &Swung| {
        let why = "no child's swing against swing moment was ever measured; adults' −0.27 is no law for him. \
                   Steeper because gravity, which does not shrink with strength, takes a larger part of it";
        Row::no_data(what(&who, it), "", Some(it.exponent()), why)
    };
    let rows = swung.iter().map(row).collect();
    Ok(Checked { rows, curves: swung.iter().filter_map(|it| it.curve(&who)).collect() })
}

const CONSTANT: &str = "Cross & Bower 2006 (read): constant speed when only mass changed";
const WEIGHT: &str = "half a percent is our reading of constant. Ours falls in every stroke, by 0.27 to 0.46 %. Reasoned, not \
     measured: a freely swung rod turns about an axis near the hands, where weight at the same swing moment does \
     not count; here the hands carry the bat along too, and the hook lifts it";

/// "Constant speed when only mass changed at fixed moment" (the same study).
pub(super) fn dead_weight() -> Result<Checked, CheckFault> {
    const MORE_KG: f64 = 0.05;
    let who = man()?;
    let heavier = 1.0 + MORE_KG / who.bat.mass_kg();
    // The balance point up the handle until the swing moment is the old one.
    let (mut near, mut far) = (-0.1, 0.0);
    for _ in 0..60 {
        let half = 0.5 * (near + far);
        if changed(&who.bat, heavier, half)?.swing_moment_kg_m2() < who.bat.swing_moment_kg_m2() {
            near = half;
        } else {
            far = half;
        }
    }
    let bats = [who.bat.clone(), changed(&who.bat, heavier, near)?];
    let mut rows = Vec::new();
    for (stroke, it) in who.batter.strokes.iter().enumerate() {
        let speeds = speeds_m_s(&who, stroke, &bats)?;
        let [plain, heavy] = speeds[..] else { return Err("two bats were swung".into()) };
        let change = format!("{}: change of {} speed", who.words, it.stroke.name);
        let what = format!("{change} by 50 g at the same swing moment");
        let (ours, accept) = (heavy / plain - 1.0, Accept::Within(0.005));
        rows.push(Row::compared(what, CONSTANT, "share", 0.0, ours, accept).noted(WEIGHT));
    }
    Ok(rows.into())
}

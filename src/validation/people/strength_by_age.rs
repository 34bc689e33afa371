//! Strength of women and children beside that of men.

use super::ages_y;
use super::strength::torque;
use super::typical::median;
use crate::measurement::person::Sex;
use crate::player::Player;
use crate::player::joints::{BOTTOM_ARM, TOP_ARM};
use crate::validation::{Accept, CheckFault, Checked, Curve, Reading, Row};

const FALK: &str = "Falk et al. 2009, Appl Physiol Nutr Metab 34:609, 15 boys and 16 men (read)";
const GIRLS: &str =
    "meta-analysis of 33 studies, 17 263 children, doi 10.51224/SRXIV.451 (preprint, read)";
const AXELSSON: &str = "Axelsson et al. 2018, J Hand Surg Am 43:677 (read): about 70 % more";
/// Age; elbow flexion and its SD, N m (Falk et al. 2009).
const BOYS: (f64, f64, f64) = (9.7, 19.5, 5.8);
const MEN: (f64, f64, f64) = (22.1, 68.5, 11.0);

fn elbow_n_m(age_y: f64) -> Result<f64, CheckFault> {
    torque(&median(Sex::Male, age_y)?, "elbow_flexion", true)
}

/// Mean of all torques of the top arm, N m.
fn arm_n_m(player: &Player) -> f64 {
    let arm = TOP_ARM..BOTTOM_ARM;
    let count = 2.0 * arm.len() as f64;
    let of = |j: usize| player.strength.positive_n_m[j] + player.strength.negative_n_m[j];
    arm.map(of).sum::<f64>() / count
}

pub(super) fn check() -> Result<Checked, CheckFault> {
    let mut rows = elbows()?;
    rows.extend(girls_beside_boys()?);
    let roll = |sex| torque(&median(sex, 35.0)?, "forearm_pronation", true);
    let ratio = roll(Sex::Male)? / roll(Sex::Female)?;
    let what = "men over women of 35: forearm torque";
    rows.push(Row::compared(what, AXELSSON, "", 1.7, ratio, Accept::Within(0.2)));
    for (what, why) in [
        (
            "strength of children but for grip and the elbow",
            "no torque of a child's shoulder, forearm or wrist was read; they go with grip and stature",
        ),
        (
            "strength of women but for grip and forearm",
            "no greatest torque of a woman's elbow, shoulder or wrist was read; they go with grip and stature",
        ),
    ] {
        rows.push(Row::no_data(what, "", None, why));
    }
    Ok(Checked { rows, curves: vec![elbow_by_age()?] })
}

fn elbows() -> Result<Vec<Row>, CheckFault> {
    let row = |what: &str, unit, expected, ours, accept| {
        Row::compared(what, FALK, unit, expected, ours, accept)
    };
    let sd = Accept::Deviations(1.0);
    let (boys, men) = (elbow_n_m(BOYS.0)?, elbow_n_m(MEN.0)?);
    let ratio = "boys of 9.7 over men of 22: elbow flexion";
    Ok(vec![
        row("men of 22: elbow flexion", "N m", (MEN.1, Some(MEN.2)), men, sd),
        row("boys of 9.7: elbow flexion", "N m", (BOYS.1, Some(BOYS.2)), boys, sd),
        row(ratio, "", (BOYS.1 / MEN.1, None), boys / men, Accept::Between(0.22, 0.35))
            .noted("within the boys' standard deviation; the grip of boys of 10 is from memory"),
    ])
}

fn girls_beside_boys() -> Result<Vec<Row>, CheckFault> {
    [
        (
            7.5,
            (0.845, 0.082),
            "girls' arms are scaled by this figure; by grip and stature alone they would be 0.95 of boys'",
        ),
        (
            15.5,
            (0.647, 0.061),
            "girls' arms are scaled by this figure; by grip and stature alone they would be 0.77 of boys'",
        ),
    ]
    .into_iter()
    .map(|(age_y, (mean, sd), note)| {
        let ratio = arm_n_m(&median(Sex::Female, age_y)?) / arm_n_m(&median(Sex::Male, age_y)?);
        let what = format!("girls over boys of {age_y}: arm torques");
        let accept = Accept::Deviations(1.0);
        Ok(Row::compared(what, GIRLS, "", (mean, Some(sd)), ratio, accept).by_construction(note))
    })
    .collect()
}

fn elbow_by_age() -> Result<Curve, CheckFault> {
    let of_age = |age_y| Ok((age_y, elbow_n_m(age_y)?));
    Ok(Curve {
        title: "Elbow flexion by age, boys and men".into(),
        x_label: "age (years)".into(),
        y_label: "greatest torque (N m)".into(),
        ours: ages_y().map(of_age).collect::<Result<_, CheckFault>>()?,
        theirs: [BOYS, MEN].map(|(x, y, sd)| Reading { x, y, sd: Some(sd) }).to_vec(),
        source: FALK.into(),
    })
}

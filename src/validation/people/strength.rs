//! Torques of joints, and how fast they rise.

use super::GROUP;
use super::typical::{median, reading};
use crate::measurement::person::{PersonReading, Sex};
use crate::player::capacity::{REFERENCE_GRIP_N, REFERENCE_MAN, REFERENCE_STATURE_M};
use crate::player::force_velocity::HillCurve;
use crate::player::joints::JOINTS;
use crate::player::{Player, player};
use crate::swing::activation::ACTIVATION_TIME_S;
use crate::validation::{Accept, CheckFault, Checked, Curve, Reading, Row};

const DELP: &str = "Delp, Grierson & Buchanan 1996, J Biomech 29:1371, 10 men (read)";
const FALK: &str = "Falk et al. 2009, Appl Physiol Nutr Metab 34:609, 15 boys and 16 men (read)";
const HOLZBAUR: &str = "Holzbaur et al. 2007, J Biomech 40:2442, 10 adults of both sexes (read)";
const OSULLIVAN: &str = "O'Sullivan & Gallwey 2002, J Electromyogr Kinesiol 12:275, 24 men (read)";
const ELITE: &str = "one elite gymnast (Jackson 2010, Kentel et al. 2011; read second-hand)";
const GIRLS: &str =
    "meta-analysis of 33 studies, 17 263 children, doi 10.51224/SRXIV.451 (preprint, read)";
const LATEGAN: &str = "Lategan & Kruger 2003, 199 young men (read)";
const AXELSSON: &str = "Axelsson et al. 2018, J Hand Surg Am 43:677 (read): about 70 % more";
const MIN_KIM: &str = "Min & Kim 2025, Arch Hand Microsurg 30:36, 500 adults, T-handle (read)";

/// Why a row cannot but agree.
const BUILT: &str = "by construction: the strength of all others is scaled from him";

/// Torque of a joint of the top arm in the positive or the negative direction, N m.
fn torque(player: &Player, joint: &str, positive: bool) -> Result<f64, CheckFault> {
    let name = format!("top_{joint}");
    let j = JOINTS.iter().position(|it| it.name == name).ok_or("a joint of that name")?;
    let strength = &player.strength;
    Ok(if positive { strength.positive_n_m[j] } else { strength.negative_n_m[j] })
}

/// Mean of all torques of the top arm, N m.
fn arm_mean(player: &Player) -> f64 {
    let arm = 3..10;
    let sum: f64 = arm
        .clone()
        .map(|j| player.strength.positive_n_m[j] + player.strength.negative_n_m[j])
        .sum();
    sum / (2.0 * arm.len() as f64)
}

fn row(
    what: &str,
    source: &str,
    unit: &'static str,
    expected: (f64, Option<f64>),
    ours: f64,
    accept: Accept,
) -> Row {
    Row::compared(GROUP, what, source, unit, expected, ours, accept)
}

pub(super) fn check() -> Result<Checked, CheckFault> {
    let mut rows = men()?;
    rows.extend(women_and_children()?);
    rows.extend(speed());
    rows.push(Row::no_data(
        GROUP,
        "man of 25: turn of the trunk",
        "N m",
        Some(median(Sex::Male, 25.0)?.strength.positive_n_m[0]),
        "no torque was read anywhere; ±30 %, and it limits the pull: advice is asked again with it moved",
    ));
    Ok(Checked { rows, curves: vec![elbow_by_age()?] })
}

fn elbow_by_age() -> Result<Curve, CheckFault> {
    let ours = (16..=80)
        .map(|half| 0.5 * f64::from(half))
        .map(|age_y| Ok((age_y, torque(&median(Sex::Male, age_y)?, "elbow_flexion", true)?)))
        .collect::<Result<_, CheckFault>>()?;
    Ok(Curve {
        title: "Elbow flexion by age, boys and men".into(),
        x_label: "age (years)".into(),
        y_label: "greatest torque (N m)".into(),
        ours,
        theirs: vec![
            Reading { x: 9.7, y: 19.5, sd: Some(5.8) },
            Reading { x: 22.1, y: 68.5, sd: Some(11.0) },
        ],
        source: FALK.into(),
    })
}

fn men() -> Result<Vec<Row>, CheckFault> {
    let man = median(Sex::Male, 25.0)?;
    let woman = median(Sex::Female, 25.0)?;
    let reference = player(&PersonReading {
        grip_top_n: Some(REFERENCE_GRIP_N),
        grip_bottom_n: Some(REFERENCE_GRIP_N),
        ..reading(Sex::Male, 25.0, REFERENCE_STATURE_M)
    })?;
    let (sd, exact) = (Accept::Deviations(1.0), Accept::Share(1e-9));
    let mut rows = Vec::new();
    for (what, joint, positive, mean, sd_n_m) in [
        ("wrist flexion", "wrist_flexion", true, 12.2, 3.7),
        ("wrist extension", "wrist_flexion", false, 7.1, 2.1),
        ("wrist to the thumb", "wrist_radial", true, 11.0, 2.0),
        ("wrist to the little finger", "wrist_radial", false, 9.5, 2.2),
    ] {
        let ours = torque(&reference, joint, positive)?;
        let what = format!("man of 25 with a grip of 48 kgf: {what}");
        rows.push(row(&what, DELP, "N m", (mean, Some(sd_n_m)), ours, exact).noted(BUILT));
    }
    let young = torque(&median(Sex::Male, 22.1)?, "elbow_flexion", true)?;
    rows.push(row("men of 22: elbow flexion", FALK, "N m", (68.5, Some(11.0)), young, sd));
    let elbow = torque(&man, "elbow_flexion", true)? / torque(&man, "elbow_flexion", false)?;
    rows.push(row(
        "men: elbow flexion over extension",
        LATEGAN,
        "",
        (1.19, Some(0.198)),
        elbow,
        sd,
    ));
    for (what, positive, theirs) in [("pronation", true, 13.1), ("supination", false, 16.2)] {
        let what = format!("man of 25 with a grip of 48 kgf: forearm {what}");
        let ours = torque(&reference, "forearm_pronation", positive)?;
        rows.push(row(&what, OSULLIVAN, "N m", (theirs, None), ours, exact).noted(BUILT));
    }
    let both = |joint: &str, positive: bool| -> Result<f64, CheckFault> {
        Ok(0.5 * (torque(&man, joint, positive)? + torque(&woman, joint, positive)?))
    };
    let roll = both("forearm_pronation", true)?;
    rows.push(row("adults: forearm pronation on a T-handle", MIN_KIM, "N m", (3.36, Some(1.18)), roll, sd).noted(
        "three times theirs: another grip and handle; published methods differ fourfold among themselves \
         and ours rests on the other one",
    ));
    let adduction = both("shoulder_abduction", false)?;
    rows.push(row(
        "adults: shoulder adduction",
        HOLZBAUR,
        "N m",
        (67.9, Some(28.4)),
        adduction,
        sd,
    ));
    let extension = both("wrist_flexion", false)?;
    rows.push(row("adults: wrist extension", HOLZBAUR, "N m", (10.2, Some(4.6)), extension, sd));
    let ratio = torque(&man, "shoulder_abduction", false)? / torque(&man, "wrist_flexion", false)?;
    rows.push(row("adults: shoulder adduction over wrist extension", HOLZBAUR, "", (6.5, Some(1.2)), ratio, sd).noted(
        "ours has the wrist of one study (Delp, 7.1 N m) and the shoulder of another, whose own wrists \
         were stronger (10.2): so our shoulders are half again too strong for our wrists, or our wrists \
         too weak. Which, no source says; the wrists' and shoulders' doubt (15 and 20 %) does not cover it",
    ));
    rows.extend(below_the_gymnast()?);
    Ok(rows)
}

/// An envelope: no typical man above the elite one.
fn below_the_gymnast() -> Result<Option<Row>, CheckFault> {
    let man = median(Sex::Male, 30.0)?;
    let mut largest = 0.0_f64;
    for (joint, positive, negative) in [
        ("shoulder_flexion", 91.1, 127.4),
        ("shoulder_rotation", 50.5, 43.6),
        ("elbow_flexion", 101.4, 69.9),
        ("wrist_flexion", 39.2, 15.6),
        ("wrist_radial", 23.8, 31.4),
    ] {
        largest = largest.max(torque(&man, joint, true)? / positive);
        largest = largest.max(torque(&man, joint, false)? / negative);
    }
    let what = "man of 30: largest torque of an arm joint over an elite athlete's";
    Ok(Some(row(what, ELITE, "", (1.0, None), largest, Accept::AtMost)))
}

fn women_and_children() -> Result<Vec<Row>, CheckFault> {
    let sd = Accept::Deviations(1.0);
    let boy = torque(&median(Sex::Male, 9.7)?, "elbow_flexion", true)?;
    let young_man = torque(&median(Sex::Male, 22.1)?, "elbow_flexion", true)?;
    let roll =
        |sex| -> Result<f64, CheckFault> { torque(&median(sex, 35.0)?, "forearm_pronation", true) };
    let girls_to_boys = |age_y| -> Result<f64, CheckFault> {
        Ok(arm_mean(&median(Sex::Female, age_y)?) / arm_mean(&median(Sex::Male, age_y)?))
    };
    Ok(vec![
        row("boys of 9.7: elbow flexion", FALK, "N m", (19.5, Some(5.8)), boy, sd),
        row("boys of 9.7 over men of 22: elbow flexion", FALK, "", (0.2847, None), boy / young_man, Accept::Share(0.30)),
        row("men over women of 35: forearm torque", AXELSSON, "", (1.7, None), roll(Sex::Male)? / roll(Sex::Female)?, Accept::Within(0.2)),
        row("girls over boys of 7.5: arm torques", GIRLS, "", (0.845, Some(0.082)), girls_to_boys(7.5)?, sd).noted(
            "girls of 5 to 10 come out an eighth too strong beside boys: both grips there are from memory and \
             alike (8 and 16 kgf beside 8 and 17). A measured grip replaces them",
        ),
        row("girls over boys of 15.5: arm torques", GIRLS, "", (0.647, Some(0.061)), girls_to_boys(15.5)?, sd).noted(
            "girls of 14 to 17 come out a fifth too strong beside boys: their median grip at 15 (24 kgf, from \
             memory) is the likely fault. A measured grip replaces it",
        ),
        Row::no_data(GROUP, "strength of children but for grip and the elbow", "", None, "no torque of shoulder, forearm or wrist of a child was read; they go with grip and stature"),
        Row::no_data(GROUP, "strength of women but for grip and forearm", "", None, "no maximum of a woman's elbow, shoulder or wrist was read; they go with grip and stature"),
    ])
}

/// How torque falls with joint speed.
fn speed() -> Vec<Row> {
    let at_half = [0.250, 0.250, 0.214, 0.224, 0.285, 0.229, 0.251, 0.208];
    let mean = at_half.iter().sum::<f64>() / at_half.len() as f64;
    let half = HillCurve::JOINT.at(0.5).value;
    // Wrist flexion is joint 8: its greatest speed was set from this row.
    let wrist = HillCurve::JOINT.at(18.2 / REFERENCE_MAN[8].max_rate_rad_s).value;
    let power = |w: f64| w * HillCurve::FIBRE.at(w).value;
    let best = (1..900)
        .map(|it| 1e-3 * f64::from(it))
        .fold(0.0, |a, b| if power(b) > power(a) { b } else { a });
    let computed = "Hill's curve with κ = 0.25: √(κ² + κ) − κ (computed)";
    vec![
        row(
            "torque left at half the greatest speed, shoulder and forearm",
            ELITE,
            "share",
            (mean, None),
            half,
            Accept::Within(0.045),
        )
        .noted("mean of eight rows of 0.208 to 0.285"),
        row(
            "torque left in wrist flexion at 18.2 rad/s",
            ELITE,
            "share",
            (0.115, None),
            wrist,
            Accept::Within(0.02),
        ),
        row(
            "speed of greatest power of a fibre, over its greatest speed",
            computed,
            "",
            (0.3090, None),
            best,
            Accept::Within(1e-3),
        ),
        row(
            "that power, over greatest force times greatest speed",
            computed,
            "",
            (0.0955, None),
            power(0.3090),
            Accept::Within(5.1e-5),
        ),
    ]
}

/// The steepest rise of torque from rest, as a share of the greatest, each second.
pub(super) fn rise() -> Result<Checked, CheckFault> {
    let ours = 1.0 / ACTIVATION_TIME_S;
    let note = "ours is the model's time constant, 30 ms, for everyone; theirs is an isometric effort from rest. \
                With the men's rise (105 ms) and the paths as they are, a man's fastest drive would take 0.46 s \
                instead of 0.30 s, longer than the 0.36 s of ordinary play, and his pull be a fifth slower \
                (13.2 for 16.5 m/s): so slow a rise does not fit the strokes, whose muscles are at work before \
                they are called on. That a boy's torque rises slower than a man's is not in the model";
    let of = |what: &str, mean, sd| {
        row(what, FALK, "1/s", (mean, Some(sd)), ours, Accept::Deviations(1.0)).noted(note)
    };
    let rows = vec![
        of("men: steepest rise of elbow torque from rest", 9.5, 1.6),
        of("boys of 9.7: steepest rise of elbow torque from rest", 7.2, 1.7),
    ];
    Ok(Checked { rows, curves: vec![] })
}

//! Greatest torques of men's joints.

use super::typical::median;
use crate::measurement::person::{PersonReading, Sex};
use crate::player::capacity::{REFERENCE_GRIP_N, REFERENCE_STATURE_M};
use crate::player::joints::{HIP_TURN, JOINTS, SPINE_TURN};
use crate::player::{Player, player};
use crate::validation::{Accept, CheckFault, Checked, Row};

const DELP: &str = "Delp, Grierson & Buchanan 1996, J Biomech 29:1371, 10 men (read)";
const HOLZBAUR: &str = "Holzbaur et al. 2007, J Biomech 40:2442, 10 adults of both sexes (read)";
const OSULLIVAN: &str = "O'Sullivan & Gallwey 2002, J Electromyogr Kinesiol 12:275, 24 men (read)";
const ELITE: &str = "one elite gymnast (Jackson 2010, Kentel et al. 2011; read second-hand)";
const LATEGAN: &str = "Lategan & Kruger 2003, 199 young men (read)";
const MIN_KIM: &str = "Min & Kim 2025, Arch Hand Microsurg 30:36, 500 adults, T-handle (read)";

/// Why a row cannot but agree.
const BUILT: &str = "the strength of all others is scaled from him";
const T_HANDLE: &str = "three times theirs: another grip and handle; published methods differ fourfold among themselves, and \
     ours rests on the other one";
const TWO_STUDIES: &str = "ours has the wrist of one study (Delp, 7.1 N m) and the shoulder of another, whose own wrists were \
     stronger (10.2): our shoulders are half again too strong for our wrists, or our wrists too weak. \
     Which, no source says; their doubts (15 and 20 %) do not cover it";

/// Torque of a joint of the top arm in the positive or the negative direction, N m.
pub(super) fn torque(player: &Player, joint: &str, positive: bool) -> Result<f64, CheckFault> {
    let name = format!("top_{joint}");
    let j = JOINTS.iter().position(|it| it.name == name).ok_or("a joint of that name")?;
    let strength = &player.strength;
    Ok(if positive { strength.positive_n_m[j] } else { strength.negative_n_m[j] })
}

pub(super) fn check() -> Result<Checked, CheckFault> {
    let mut rows = reference_man()?;
    rows.extend(adults()?);
    rows.push(below_the_gymnast()?);
    let man = median(Sex::Male, 25.0)?.strength.positive_n_m;
    let turn = |what: &str, n_m: f64| {
        let why = "no torque was read that could be trusted; ±30 %, and it limits the pull: advice is asked again \
                   with it moved";
        Row::no_data(format!("man of 25: turn of the {what}"), "N m", Some(n_m), why)
    };
    rows.push(turn("spine on the pelvis", man[SPINE_TURN]));
    rows.push(turn("pelvis on the ground", man[HIP_TURN]));
    Ok(rows.into())
}

/// The man all others are scaled from: what was copied from the studies.
fn reference_man() -> Result<Vec<Row>, CheckFault> {
    let man = player(&PersonReading {
        grip_top_n: Some(REFERENCE_GRIP_N),
        grip_bottom_n: Some(REFERENCE_GRIP_N),
        ..PersonReading::of(Sex::Male, 25.0, REFERENCE_STATURE_M)
    })?;
    [
        ("wrist flexion", "wrist_flexion", true, DELP, (12.2, Some(3.7))),
        ("wrist extension", "wrist_flexion", false, DELP, (7.1, Some(2.1))),
        ("wrist to the thumb", "wrist_radial", true, DELP, (11.0, Some(2.0))),
        ("wrist to the little finger", "wrist_radial", false, DELP, (9.5, Some(2.2))),
        ("forearm pronation", "forearm_pronation", true, OSULLIVAN, (13.1, None)),
        ("forearm supination", "forearm_pronation", false, OSULLIVAN, (16.2, None)),
    ]
    .into_iter()
    .map(|(what, joint, positive, source, expected)| {
        let what = format!("man of 25 with a grip of 48 kgf: {what}");
        let ours = torque(&man, joint, positive)?;
        let row = Row::compared(what, source, "N m", expected, ours, Accept::Share(1e-9));
        Ok(row.by_construction(BUILT))
    })
    .collect()
}

fn adults() -> Result<[Row; 5], CheckFault> {
    let (man, woman) = (median(Sex::Male, 25.0)?, median(Sex::Female, 25.0)?);
    let both = |joint: &str, positive: bool| -> Result<f64, CheckFault> {
        Ok(0.5 * (torque(&man, joint, positive)? + torque(&woman, joint, positive)?))
    };
    let of_man = |joint: &str, positive: bool| torque(&man, joint, positive);
    let elbow = of_man("elbow_flexion", true)? / of_man("elbow_flexion", false)?;
    let shoulder = of_man("shoulder_abduction", false)? / of_man("wrist_flexion", false)?;
    let sd = |what: &str, source, unit, (mean, sd): (f64, f64), ours| {
        Row::compared(what, source, unit, (mean, Some(sd)), ours, Accept::Deviations(1.0))
    };
    let (adduction, extension) =
        (both("shoulder_abduction", false)?, both("wrist_flexion", false)?);
    let roll = both("forearm_pronation", true)?;
    let apart = "adults: shoulder adduction over wrist extension";
    Ok([
        sd("men: elbow flexion over extension", LATEGAN, "", (1.19, 0.198), elbow),
        sd("adults: shoulder adduction", HOLZBAUR, "N m", (67.9, 28.4), adduction),
        sd("adults: wrist extension", HOLZBAUR, "N m", (10.2, 4.6), extension),
        sd(apart, HOLZBAUR, "", (6.5, 1.2), shoulder).noted(TWO_STUDIES),
        sd("adults: forearm pronation on a T-handle", MIN_KIM, "N m", (3.36, 1.18), roll)
            .noted(T_HANDLE),
    ])
}

/// An envelope: no typical man above the elite one.
fn below_the_gymnast() -> Result<Row, CheckFault> {
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
    Ok(Row::compared(what, ELITE, "", 1.0, largest, Accept::AtMost))
}

//! Segments and proportions.

use super::GROUP;
use super::de_leva::{BODIES, Body, Published, SOURCE};
use crate::measurement::person::{PersonReading, Sex};
use crate::player::grip::comfortable_diameter_m;
use crate::player::{Segment, Segments, player};
use crate::validation::{Accept, CheckFault, Checked, Row};

const JENSEN: &str = "Jensen 1986, J Biomech 19:359, 12 boys of 4–15 years (read second-hand, one printed \
                      coefficient corrected)";

pub(super) fn segments() -> Result<Checked, CheckFault> {
    let mut rows = Vec::new();
    for body in &BODIES {
        rows.extend(adult(body)?);
    }
    rows.extend(heads()?);
    rows.push(Row::no_data(
        GROUP,
        "masses and inertia of a child's arm",
        "",
        None,
        "the tables of 12 boys (Jensen 1986) could not be read; a child has an adult's arm, lighter by what \
         the larger head takes",
    ));
    Ok(Checked { rows, curves: vec![] })
}

fn adult(body: &Body) -> Result<[Row; 3], CheckFault> {
    let reading = PersonReading {
        mass_kg: Some(body.mass_kg),
        ..PersonReading::of(body.sex, 22.0, body.stature_m)
    };
    let ours = player(&reading)?.segments;
    let arm = [(&ours.upper_arm, &body.upper_arm), (&ours.forearm, &body.forearm)];
    let off = |ours: f64, theirs: f64| (ours / theirs - 1.0).abs();
    let lengths = arm.iter().map(|(ours, theirs)| off(ours.length_m, theirs.length_m));
    // The hand's length is not this table's: see the proportions.
    let rest = arm
        .into_iter()
        .chain([(&ours.hand, &body.hand)])
        .flat_map(|(ours, theirs)| of_length(ours, theirs, body.mass_kg));
    let largest = lengths.chain(rest).fold(0.0, f64::max);
    let row = |what: &str, unit, expected, ours, accept| {
        let what = format!("{}: {what}", body.words);
        Row::compared(GROUP, what, SOURCE, unit, (expected, None), ours, accept)
    };
    let exact = Accept::Within(1e-9);
    let mass = body.trunk[0] + body.head[0];
    Ok([
        row("arm, largest error of 17 figures", "share", 0.0, largest, exact),
        row(
            "trunk and head, share of the body",
            "",
            mass,
            ours.trunk.mass_kg / body.mass_kg,
            exact,
        ),
        row(
            "trunk and head, centre of mass above the hips",
            "m",
            centre_m(body, &ours),
            ours.trunk.com_m,
            exact,
        )
        .noted("the published parts put together; the hip's height is ANSUR II's"),
    ])
}

/// Errors of what goes with the length, and of the mass.
fn of_length(ours: &Segment, theirs: &Published, body_kg: f64) -> [f64; 5] {
    let off = |ours: f64, theirs: f64| (ours / theirs - 1.0).abs();
    let gyration = |axis: usize| off(ours.gyration_m[axis] / ours.length_m, theirs.gyration[axis]);
    [
        off(ours.mass_kg / body_kg, theirs.mass),
        off(ours.com_m / ours.length_m, theirs.com),
        gyration(0),
        gyration(1),
        gyration(2),
    ]
}

fn centre_m(body: &Body, ours: &Segments) -> f64 {
    let ([trunk, length_m, com], [head, head_m, head_com]) = (body.trunk, body.head);
    let trunk_m = (1.0 - com) * length_m;
    let head_m = body.stature_m - ours.hip_height_m - head_com * head_m;
    (trunk * trunk_m + head * head_m) / (trunk + head)
}

/// A child's head, taken back out of the trunk.
fn heads() -> Result<Vec<Row>, CheckFault> {
    let man = &BODIES[0];
    [8.0, 12.0, 15.0]
        .into_iter()
        .map(|age_y| {
            let child = player(&PersonReading::of(
                Sex::Male,
                age_y,
                crate::player::growth::median_stature_m(Sex::Male, age_y),
            ))?;
            let both = child.segments.trunk.mass_kg / child.mass_kg.value;
            // Head h and what is left of the adult's trunk: both = h + t (1 − h)/(1 − h of an adult).
            let trunk = man.trunk[0] / (1.0 - man.head[0]);
            let head = (both - trunk) / (1.0 - trunk);
            Ok(Row::compared(
                GROUP,
                format!("boy of {age_y}: head, share of the body"),
                JENSEN,
                "",
                (0.2376 - 0.0114 * age_y, None),
                head,
                if age_y < 14.0 { Accept::Within(1e-9) } else { Accept::Share(0.05) },
            )
            .noted("never less than the adult's 0.0694"))
        })
        .collect()
}

const ANSUR: &str = "ANSUR II, 4082 men and 1986 women (computed from its records)";

/// Ratios to stature: mean and SD of men, of women.
struct Ratio {
    what: &'static str,
    men: (f64, f64),
    women: (f64, f64),
    ours: fn(&Segments) -> f64,
}

/// Shoulder joint under the bony point of the shoulder, over stature: 10.4 % of the upper arm (de Leva 1996,
/// from memory, medium), 0.191 of the stature.
const JOINT_UNDER_POINT: f64 = 0.104 * 0.191;

const RATIOS: [Ratio; 5] = [
    Ratio {
        what: "hand length",
        men: (0.1101, 0.0042),
        women: (0.1112, 0.0047),
        ours: |it| it.hand.length_m,
    },
    Ratio {
        what: "elbow to centre of grip",
        men: (0.1987, 0.0068),
        women: (0.1951, 0.0076),
        ours: |it| it.forearm.length_m + it.wrist_to_grip_m,
    },
    Ratio {
        what: "hip height",
        men: (0.5128, 0.0152),
        women: (0.5190, 0.0144),
        ours: |it| it.hip_height_m,
    },
    Ratio {
        what: "shoulder joint height",
        men: (0.8203 - JOINT_UNDER_POINT, 0.0096),
        women: (0.8198 - JOINT_UNDER_POINT, 0.0087),
        ours: |it| it.shoulder_height_m,
    },
    Ratio {
        what: "upper arm and forearm, joint to joint",
        men: (0.1909 * (1.0 - 0.104) + 0.1525, 0.0122),
        women: (0.1911 * (1.0 - 0.104) + 0.1482, 0.0133),
        ours: |it| it.upper_arm.length_m + it.forearm.length_m,
    },
];

pub(super) fn proportions() -> Result<Checked, CheckFault> {
    let mut rows = Vec::new();
    for (sex, words, stature_m) in [(Sex::Male, "man", 1.756), (Sex::Female, "woman", 1.629)] {
        let ours = player(&PersonReading::of(sex, 30.0, stature_m))?;
        for ratio in &RATIOS {
            let (mean, sd) = if sex == Sex::Male { ratio.men } else { ratio.women };
            rows.push(Row::compared(
                GROUP,
                format!("{words}: {} over stature", ratio.what),
                ANSUR,
                "",
                (mean, Some(sd)),
                (ratio.ours)(&ours.segments) / stature_m,
                Accept::Deviations(1.0),
            ));
        }
    }
    for (words, hand_m, diameter_m) in [("man", 0.1933, 0.0381), ("woman", 0.1811, 0.0357)] {
        rows.push(Row::compared(
            GROUP,
            format!("{words}: handle that feels best at the mean hand"),
            "Kong & Lowe 2005, Int J Ind Ergon 35:495 (read), with the mean hands of ANSUR II; bare cylinders",
            "m",
            (diameter_m, None),
            comfortable_diameter_m(hand_m),
            Accept::Within(5.1e-5),
        ));
    }
    Ok(Checked { rows, curves: vec![] })
}

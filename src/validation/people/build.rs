//! Segments and proportions.

use super::typical::median;
use crate::measurement::person::{PersonReading, Sex};
use crate::player::grip::comfortable_diameter_m;
use crate::player::{Segment, Segments, player};
use crate::validation::{Accept, CheckFault, Checked, Row};

const JENSEN: &str = "Jensen 1986, J Biomech 19:359, 12 boys of 4–15 years (read second-hand, one printed \
                      coefficient corrected)";

/// Segments of the arm are copied here apart from the ones the model uses.
const SOURCE: &str =
    "de Leva 1996, J Biomech 29:1223, Table 4 (read second-hand in two copies that agree)";

/// One segment: length of the reference body's, m; mass over body mass; centre of mass from the upper
/// end and radii of gyration about the sagittal, transverse and long axis, over length.
struct Published {
    length_m: f64,
    mass: f64,
    com: f64,
    gyration: [f64; 3],
}

/// The reference body of one sex.
struct Body {
    sex: Sex,
    words: &'static str,
    stature_m: f64,
    mass_kg: f64,
    upper_arm: Published,
    forearm: Published,
    /// Wrist to the tip of the middle finger.
    hand: Published,
    /// Trunk (middle of the shoulders to middle of the hips) and head (vertex to C7): mass, length of the
    /// trunk, m, and its centre of mass from the shoulders, over that length.
    trunk: [f64; 3],
    /// Mass, length, m, and centre of mass from the vertex, over that length.
    head: [f64; 3],
}

const fn published(length_m: f64, mass: f64, com: f64, gyration: [f64; 3]) -> Published {
    Published { length_m, mass, com, gyration }
}

/// Men and women. The woman's hand turns about its long axis with 0.154, not the man's 0.184 that one copy
/// has: 0.335 × 0.0780/0.1701 = 0.154.
const BODIES: [Body; 2] = [
    Body {
        sex: Sex::Male,
        words: "man",
        stature_m: 1.741,
        mass_kg: 73.0,
        upper_arm: published(0.2817, 0.0271, 0.5772, [0.285, 0.269, 0.158]),
        forearm: published(0.2689, 0.0162, 0.4574, [0.276, 0.265, 0.121]),
        hand: published(0.1879, 0.0061, 0.3624, [0.288, 0.235, 0.184]),
        trunk: [0.4346, 0.5155, 0.4310],
        head: [0.0694, 0.2429, 0.5002],
    },
    Body {
        sex: Sex::Female,
        words: "woman",
        stature_m: 1.735,
        mass_kg: 61.9,
        upper_arm: published(0.2751, 0.0255, 0.5754, [0.278, 0.260, 0.148]),
        forearm: published(0.2643, 0.0138, 0.4559, [0.261, 0.257, 0.094]),
        hand: published(0.1701, 0.0056, 0.3427, [0.244, 0.208, 0.154]),
        trunk: [0.4257, 0.4979, 0.3782],
        head: [0.0668, 0.2437, 0.4841],
    },
];

pub(super) fn segments() -> Result<Checked, CheckFault> {
    let mut rows = Vec::new();
    for body in &BODIES {
        rows.extend(adult(body)?);
    }
    rows.extend(heads()?);
    rows.push(Row::no_data(
        "masses and inertia of a child's arm",
        "",
        None,
        "the tables of 12 boys (Jensen 1986) could not be read; a child has an adult's arm, lighter by what \
         the larger head takes",
    ));
    Ok(rows.into())
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
    let row = |what: &str, unit, expected, ours| {
        let what = format!("{}: {what}", body.words);
        Row::compared(what, SOURCE, unit, expected, ours, Accept::Within(1e-9))
    };
    let (mass, our_mass) = (body.trunk[0] + body.head[0], ours.trunk.mass_kg / body.mass_kg);
    let (centre_m, our_centre_m) = (centre_m(body, &ours), ours.trunk.com_m);
    Ok([
        row("arm, largest error of 17 figures", "share", 0.0, largest),
        row("trunk and head, share of the body", "", mass, our_mass),
        row("trunk and head, centre of mass above the hips", "m", centre_m, our_centre_m)
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
            let child = median(Sex::Male, age_y)?;
            let both = child.segments.trunk.mass_kg / child.mass_kg.value;
            // Head h and what is left of the adult's trunk: both = h + t (1 − h)/(1 − h of an adult).
            let trunk = man.trunk[0] / (1.0 - man.head[0]);
            let head = (both - trunk) / (1.0 - trunk);
            let theirs = 0.2376 - 0.0114 * age_y;
            let accept = if age_y < 14.0 { Accept::Within(1e-9) } else { Accept::Share(0.05) };
            let what = format!("boy of {age_y}: head, share of the body");
            let row = Row::compared(what, JENSEN, "", theirs, head, accept);
            Ok(row.noted("never less than the adult's 0.0694"))
        })
        .collect()
}

const KONG: &str = "Kong & Lowe 2005, Int J Ind Ergon 35:495 (read), with the mean hands of ANSUR II; bare cylinders";
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
            let what = format!("{words}: {} over stature", ratio.what);
            let (theirs, ours) = ((mean, Some(sd)), (ratio.ours)(&ours.segments) / stature_m);
            rows.push(Row::compared(what, ANSUR, "", theirs, ours, Accept::Deviations(1.0)));
        }
    }
    for (words, hand_m, diameter_m) in [("man", 0.1933, 0.0381), ("woman", 0.1811, 0.0357)] {
        let what = format!("{words}: handle that feels best at the mean hand");
        let (ours, accept) = (comfortable_diameter_m(hand_m), Accept::Within(5.1e-5));
        rows.push(Row::compared(what, KONG, "m", diameter_m, ours, accept));
    }
    Ok(rows.into())
}

//! From what was measured to a player ready to swing.

use super::Player;
use super::capacity::{strength, with_wrist_hold};
use super::grip_by_age::expected_grip_n;
use super::growth::{body_mass_index, body_mass_index_z, interpolate, median_stature_m, stature_z};
use super::joints::{GROUP_COUNT, Group};
use super::segments::{ADULT_FROM_Y, expected_hand_length_m, segments};
use crate::bat::notes::EstimatedFigure;
use crate::measurement::nets::Lasting;
use crate::measurement::person::{PersonFault, PersonReading, Sex};
use crate::uncertain::Uncertain;

/// Repeatability of a dynamometer reading, as a share of it (assumption).
const GRIP_READING_RELATIVE_SD: f64 = 0.05;
/// Difference between the two hands of one person, as a share (assumption).
const BETWEEN_HANDS_RELATIVE_SD: f64 = 0.10;
/// Tape at a hand, m (assumption).
const TAPE_SD_M: f64 = 0.003;
/// Bathroom scale, kg (assumption).
const BODY_SCALE_SD_KG: f64 = 0.5;

const GRIP_TABLE: &str = "median for age and sex, corrected for stature (Dodds et al. 2014)";

/// The player behind a reading: measured values as they are, the rest from published tables, each
/// estimate named with its spread.
///
/// Fails on the first figure no player can have; [`PersonReading::faults`] lists them all.
pub fn player(reading: &PersonReading) -> Result<Player, PersonFault> {
    if let Some(fault) = reading.faults().into_iter().next() {
        return Err(fault);
    }
    let mut estimated = Vec::new();
    let mut note = |what: &'static str, from: &str, relative_sd: f64| {
        estimated.push(EstimatedFigure { what, from: from.into(), relative_sd });
    };
    let child = reading.age_y < ADULT_FROM_Y;

    let mass_kg = match reading.mass_kg {
        Some(mass_kg) => Uncertain::measured(mass_kg, BODY_SCALE_SD_KG),
        None => {
            let (bmi, sd) = body_mass_index(reading.sex, reading.age_y);
            let from = if reading.age_y < 19.0 {
                "median body mass index for age and sex (WHO Growth Reference 2007) and the stature"
            } else {
                "a body mass index of 22 to 24 kg/m² and the stature (assumption, no source)"
            };
            let tall_squared = reading.stature_m * reading.stature_m;
            note("body mass", from, sd / bmi);
            Uncertain::estimated(bmi * tall_squared, sd * tall_squared)
        }
    };
    let hand_length_m = match reading.hand_length_m {
        Some(length_m) => Uncertain::measured(length_m, TAPE_SD_M),
        None => {
            let it = expected_hand_length_m(reading.sex, reading.age_y, reading.stature_m);
            note("hand length", "stature, adult proportions (ANSUR II)", it.relative_sd());
            it
        }
    };
    if reading.arm_length_m.is_none() {
        let sd = if child { 0.05 } else { 0.03 };
        note("arm length", "stature, adult proportions (de Leva 1996)", sd);
    }
    note(
        "masses and balance of trunk and arms",
        if child {
            "adult shares with a child's head (de Leva 1996, Jensen 1986): a child's arms were never measured well"
        } else {
            "shares of body mass and length (de Leva 1996)"
        },
        if child { 0.20 } else { 0.10 },
    );

    let expected = expected_grip_n(reading.sex, reading.age_y, reading.stature_m);
    let read = |n: f64| Uncertain::measured(n, GRIP_READING_RELATIVE_SD * n);
    let other_hand = |n: f64| Uncertain::estimated(n, BETWEEN_HANDS_RELATIVE_SD * n);
    let (grip_top_n, grip_bottom_n) = match (reading.grip_top_n, reading.grip_bottom_n) {
        (Some(top), Some(bottom)) => (read(top), read(bottom)),
        (Some(top), None) => {
            note("grip of the bottom hand", "the top hand's", BETWEEN_HANDS_RELATIVE_SD);
            (read(top), other_hand(top))
        }
        (None, Some(bottom)) => {
            note("grip of the top hand", "the bottom hand's", BETWEEN_HANDS_RELATIVE_SD);
            (other_hand(bottom), read(bottom))
        }
        (None, None) => {
            note("grip of both hands", GRIP_TABLE, expected.relative_sd());
            (expected, expected)
        }
    };
    let mut arms = [arms_share(reading.sex, reading.age_y); GROUP_COUNT];
    arms[Group::Trunk as usize] = 1.0;
    let fresh = strength(reading.stature_m, grip_top_n, grip_bottom_n).times(&arms);
    let fresh = match reading.wrist_hold {
        Some(hold) => with_wrist_hold(&fresh, hold),
        None => fresh,
    };
    note(
        "strength of shoulders, elbows and wrists",
        match arms[Group::TopShoulder as usize] < 1.0 {
            true => {
                "published greatest torques of men, scaled by grip strength, stature and girls' arms beside boys'"
            }
            false => "published greatest torques of men, scaled by grip strength and stature",
        },
        fresh.relative_sd[Group::TopShoulder as usize],
    );
    note(
        "strength of the trunk, which limits the pull",
        "no source: an assumption, scaled by grip strength and stature",
        fresh.relative_sd[Group::Trunk as usize],
    );

    Ok(Player {
        age_y: reading.age_y,
        sex: reading.sex,
        handed: reading.handed,
        stature_m: reading.stature_m,
        mass_kg,
        segments: segments(reading, mass_kg.value, hand_length_m.value),
        strength: fresh,
        hand_length_m,
        grip_top_n,
        grip_bottom_n,
        lasting: Lasting::UNKNOWN,
        calibration: None,
        estimated,
    })
}

/// Age in years; arm torques of girls over those of boys of that age: 0.845 SD 0.082 at 5 to 10 years, 0.647 SD
/// 0.061 at 14 to 17, each at the middle of its band, evenly between them (assumption), constant beyond.
/// Source: meta-analysis of 33 studies, 17,263 children, doi 10.51224/SRXIV.451 (preprint, read: abstract).
const GIRLS_OVER_BOYS: [[f64; 2]; 2] = [[7.5, 0.845], [15.5, 0.647]];

/// From this age on grip and stature alone say what a woman's arms can do, years: there they come to the last
/// figure of the children's by themselves (0.647), and later to the men over women of Axelsson et al. 2018.
const GROWN_Y: f64 = 20.0;

/// Arm torques of someone of this sex and age over what grip and stature say.
///
/// Torques are scaled by grip and stature, and by both girls come nearer to boys of their age than measured
/// torques of the arms do: 0.77 at 15.5 years. Whether the grip was read or taken from the table makes no
/// difference: it is the same girl.
fn arms_share(sex: Sex, age_y: f64) -> f64 {
    if sex == Sex::Male || age_y >= GROWN_Y {
        return 1.0;
    }
    let [_, over_boys] = interpolate(&GIRLS_OVER_BOYS, age_y);
    let by_grip_and_stature = |sex: Sex| {
        let stature_m = median_stature_m(sex, age_y);
        expected_grip_n(sex, age_y, stature_m).value * stature_m
    };
    let said = by_grip_and_stature(Sex::Female) / by_grip_and_stature(Sex::Male);
    (over_boys / said).min(1.0)
}

/// Something possible but rare enough to be a slip: the run goes on.
#[derive(Clone, Debug, PartialEq)]
pub struct Unusual {
    /// Field as a scenario spells it.
    pub field: &'static str,
    /// In plain words.
    pub words: String,
}

/// Distance from the median for age at which a figure is asked about, standard deviations.
const UNUSUAL_FROM_SD: f64 = 3.0;

/// Figures that are possible but so rare that a wrong unit or a slip is likelier.
pub fn unusual(reading: &PersonReading) -> Vec<Unusual> {
    let mut out = Vec::new();
    let mut ask = |field: &'static str, z: f64, what: &str| {
        if z.abs() > UNUSUAL_FROM_SD {
            let side = if z > 0.0 { "more" } else { "less" };
            let words =
                format!("{what} is {side} than one in a thousand have at this age; is it right?");
            out.push(Unusual { field, words });
        }
    };
    ask("stature", stature_z(reading.sex, reading.age_y, reading.stature_m), "this stature");
    if let Some(mass_kg) = reading.mass_kg {
        let bmi = mass_kg / (reading.stature_m * reading.stature_m);
        ask(
            "mass",
            body_mass_index_z(reading.sex, reading.age_y, bmi),
            "this body mass for the stature",
        );
    }
    let expected = expected_grip_n(reading.sex, reading.age_y, reading.stature_m);
    for (field, grip) in [("grip_top", reading.grip_top_n), ("grip_bottom", reading.grip_bottom_n)]
    {
        if let Some(grip_n) = grip {
            ask(
                field,
                (grip_n - expected.value) / expected.sd,
                "this grip strength for the stature",
            );
        }
    }
    if let (Some(top), Some(bottom)) = (reading.grip_top_n, reading.grip_bottom_n)
        && !(0.6..=1.0 / 0.6).contains(&(top / bottom))
    {
        let words = "one hand grips less than 0.6 of the other; is it injured, or a slip?".into();
        out.push(Unusual { field: "grip_bottom", words });
    }
    out
}

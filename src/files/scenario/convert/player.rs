//! The player of a scenario.

use super::super::super::document::values::{Values, above_zero_like, age, choice};
use super::super::examples::Examples;
use super::super::{PlayerV1, Text};
use super::bats::labelled;
use super::written;
use crate::frames::STANDARD_GRAVITY_M_S2;
use crate::measurement::bench::{BatReading, PICKUP_AXIS_FROM_TOP_M};
use crate::measurement::person::{Handed, PersonReading, Sex, WristHold};
use crate::units::Quantity::{self, Force, Length, Mass, Time};

/// A wrist hold test stops here, s.
const WRIST_HOLD_LIMIT_S: f64 = 30.0;

pub fn player(
    values: &mut Values,
    v1: &PlayerV1,
    labels: &[String],
    bats: &[Option<BatReading>],
) -> Option<PersonReading> {
    let age_y = values.needed("player.age", &v1.age, age, "\"13\"");
    let sexes: [(&[&str], Sex); 2] = [
        (&["female", "f", "girl", "woman"], Sex::Female),
        (&["male", "m", "boy", "man"], Sex::Male),
    ];
    let like = "\"female\" or \"male\"";
    let sex = values.needed("player.sex", &v1.sex, choice(&sexes), like);
    let taller = |stature_m| Examples::of(age_y, sex, stature_m);
    let like = taller(None).quoted("stature");
    let stature = above_zero_like(Length, &like);
    let stature_m = values.needed("player.stature", &v1.stature, stature, &like);
    let hands: [(&[&str], Handed); 2] = [
        (&["right", "r", "right-handed"], Handed::Right),
        (&["left", "l", "left-handed"], Handed::Left),
    ];
    let handed = values.read("player.handed", &v1.handed, choice(&hands));
    let examples = taller(stature_m);
    let mut read = |name: &str, text: &Option<Text>, quantity: Quantity| {
        let like = examples.quoted(name);
        values.read(&format!("player.{name}"), text, above_zero_like(quantity, &like))
    };
    Some(PersonReading {
        mass_kg: read("mass", &v1.mass, Mass),
        arm_length_m: read("arm_length", &v1.arm_length, Length),
        hand_length_m: read("hand_length", &v1.hand_length, Length),
        grip_top_n: read("grip_top", &v1.grip_top, Force),
        grip_bottom_n: read("grip_bottom", &v1.grip_bottom, Force),
        wrist_hold: wrist_hold(values, v1, labels, bats),
        handed: handed.unwrap_or(Handed::Right),
        age_y: age_y?,
        sex: sex?,
        stature_m: stature_m?,
    })
}

/// The bat held out asks the wrist for its static moment, which needs its balance point.
fn wrist_hold(
    values: &mut Values,
    v1: &PlayerV1,
    labels: &[String],
    bats: &[Option<BatReading>],
) -> Option<WristHold> {
    let time_s = values.quantity("player.wrist_hold", &v1.wrist_hold, Time)?;
    let n = match written(&v1.wrist_hold_bat) {
        None => 0,
        Some(label) => labelled(values, "player.wrist_hold_bat", &label, labels)?,
    };
    let bat = bats.get(n)?.as_ref()?;
    let Some(balance_m) = bat.balance_m else {
        values.fault(
            "player.wrist_hold",
            &format!("the bat held, {:?}, has no balance point", bat.label),
            &format!("measure it and add bats.{n}.balance, or leave the wrist hold test out"),
        );
        return None;
    };
    Some(WristHold {
        hold_moment_n_m: bat.mass_kg * STANDARD_GRAVITY_M_S2 * (balance_m - PICKUP_AXIS_FROM_TOP_M),
        time_s,
        stopped_at_limit: time_s >= WRIST_HOLD_LIMIT_S,
    })
}

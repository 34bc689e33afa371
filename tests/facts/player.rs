//! Facts about the stage `player`.

mod build;
mod curves;
mod published;
mod strength;

use backlift::measurement::person::{Handed, PersonReading, Sex};

fn someone(sex: Sex, age_y: f64, stature_m: f64) -> PersonReading {
    PersonReading {
        age_y,
        sex,
        stature_m,
        handed: Handed::Right,
        mass_kg: None,
        arm_length_m: None,
        hand_length_m: None,
        grip_top_n: None,
        grip_bottom_n: None,
        wrist_hold: None,
    }
}

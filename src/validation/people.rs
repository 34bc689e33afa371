//! Size, strength and swings of people against what was measured on people.

mod build;
mod contacts;
mod de_leva;
mod exponent;
mod grip;
mod growth;
mod one_arm;
mod strength;
mod strength_by_age;
mod strokes;
mod torque_speed;
pub mod typical;

use super::{Check, Group};

const GROUP: Group = Group::People;

/// Every check of players and their swings.
pub fn checks() -> Vec<Check> {
    let check = |name, run| Check { name, group: GROUP, run };
    vec![
        check("segments", build::segments),
        check("proportions", build::proportions),
        check("growth", growth::check),
        check("strength", strength::check),
        check("strength by age and sex", strength_by_age::check),
        check("torque and speed", torque_speed::fall),
        check("torque rise", torque_speed::rise),
        check("grip", grip::check),
        check("published strokes", strokes::published),
        check("unpublished strokes", strokes::unpublished),
        check("speed and swing moment", exponent::adult),
        check("speed and swing moment, feet still", exponent::feet_still),
        check("speed and swing moment, junior", exponent::junior),
        check("good contacts", contacts::good),
        check("dead weight", exponent::dead_weight),
        check("one arm", one_arm::check),
    ]
}

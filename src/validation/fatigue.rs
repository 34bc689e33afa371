//! Holding, repeated effort, and the innings.

mod holds;
mod innings;
mod integrated;
mod repeated;

use super::Checks;

pub(super) const CHECKS: Checks = &[
    ("hold times", holds::exact),
    ("endurance curves", holds::order_of_size),
    ("loads in turn", integrated::check),
    ("repeated grips", repeated::check),
    ("innings", innings::check),
];

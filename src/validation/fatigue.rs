//! Holding, repeated effort, and the innings.

mod holds;
mod innings;
mod integrated;
mod repeated;

use super::{Check, Group};
use crate::innings::compartments::Rates;
use crate::player::endurance::Endurance;

const GROUP: Group = Group::Fatigue;

/// Every check of fatigue.
pub fn checks() -> Vec<Check> {
    let check = |name, run| Check { name, group: GROUP, run };
    vec![
        check("hold times", holds::exact),
        check("endurance curves", holds::order_of_size),
        check("loads in turn", integrated::check),
        check("repeated grips", repeated::check),
        check("innings", innings::check),
    ]
}

/// A joint with both descriptions of how it tires.
struct Joint {
    name: &'static str,
    rates: Rates,
    endurance: Endurance,
}

/// The joints of the model; grip and hand stand in for forearm and wrist.
const JOINTS: [Joint; 4] = [
    Joint { name: "trunk", rates: Rates::TRUNK, endurance: Endurance::TRUNK },
    Joint { name: "shoulder", rates: Rates::SHOULDER, endurance: Endurance::SHOULDER },
    Joint { name: "elbow", rates: Rates::ELBOW, endurance: Endurance::ELBOW },
    Joint { name: "grip and hand", rates: Rates::GRIP, endurance: Endurance::GRIP },
];

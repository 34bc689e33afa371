//! The ball of the reference hits.

use serde::Deserialize;

use crate::impact::ball::Ball;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct BallTable {
    mass_kg: f64,
    radius_m: f64,
    stiffness_n_m15: f64,
    restitution: f64,
}

impl From<BallTable> for Ball {
    fn from(it: BallTable) -> Self {
        Self {
            mass_kg: it.mass_kg,
            radius_m: it.radius_m,
            stiffness_n_m15: it.stiffness_n_m15,
            restitution: it.restitution,
        }
    }
}

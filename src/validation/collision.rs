//! Ball on bat: the formula of rebound in worked cases; the hit over time against another integrator, the
//! formula, and what momentum and energy ask; off the middle against what was measured; the stiffness of the splice.

mod accounts;
mod integrated;
mod off_middle;
mod rigid_limit;
mod splice;
mod worked;

use super::{CheckFault, Checked, Checks, Row};
use crate::bat::shape::BatShape;
use crate::bat::sizes::named;
use crate::comparison::collision::RESTITUTION;
use crate::files::assets;

pub(super) const CHECKS: Checks = &[
    ("worked collisions", worked::check),
    ("hit over time", integrated::check),
    ("rigid limit", rigid_limit::check),
    ("off the middle", off_middle::check),
    ("splice stiffness", splice::check),
    ("hit accounts", accounts::check),
    ("restitution", restitution),
];

/// The reference of a size.
fn shape(size: &str) -> Result<BatShape, CheckFault> {
    let sizes = assets::sizes()?;
    let size = named(&sizes, size).ok_or_else(|| format!("there is no size called {size}"))?;
    Ok(size.reference.clone())
}

fn restitution() -> Result<Checked, CheckFault> {
    let row = Row::no_data(
        "restitution of cricket ball on bat",
        "",
        Some(RESTITUTION.value),
        "no measured restitution of ball on bat by speed was seen; 0.5 ± 0.05 is chosen. It moves all exit \
         speeds together and their order hardly",
    );
    Ok(vec![row].into())
}

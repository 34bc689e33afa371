//! Ball on bat: the formula of rebound in worked cases; the hit over time against another integrator, the
//! formula, and what momentum and energy ask; off the middle against what was measured; the stiffness of the splice.

mod accounts;
mod integrated;
mod off_middle;
mod rigid_limit;
mod splice;
mod worked;

use super::{Check, CheckFault, Checked, Group, Row};
use crate::comparison::collision::RESTITUTION;

const GROUP: Group = Group::Collision;

/// Every check of the collision.
pub fn checks() -> Vec<Check> {
    let check = |name, run| Check { name, group: GROUP, run };
    vec![
        check("worked collisions", worked::check),
        check("hit over time", integrated::check),
        check("rigid limit", rigid_limit::check),
        check("off the middle", off_middle::check),
        check("splice stiffness", splice::check),
        check("hit accounts", accounts::check),
        check("restitution", restitution),
    ]
}

fn restitution() -> Result<Checked, CheckFault> {
    let row = Row::no_data(
        GROUP,
        "restitution of cricket ball on bat",
        "",
        Some(RESTITUTION.value),
        "no measured restitution of ball on bat by speed was seen; 0.5 ± 0.05 is chosen. It moves all exit \
         speeds together and their order hardly",
    );
    Ok(Checked { rows: vec![row], curves: vec![] })
}

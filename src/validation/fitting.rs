//! Wood, and the advice itself.

mod advice;
mod moisture;
mod season;

use super::{Check, Group};

const GROUP: Group = Group::Fitting;

/// Every check of wood and advice.
pub fn checks() -> Vec<Check> {
    let check = |name, run| Check { name, group: GROUP, run };
    vec![
        check("wood moisture", moisture::check),
        check("season", season::check),
        check("advice", advice::check),
    ]
}

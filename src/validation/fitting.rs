//! Wood, and the advice itself.

mod advice;
mod moisture;

use super::{Check, Group};

const GROUP: Group = Group::Fitting;

/// Every check of wood and advice.
pub fn checks() -> Vec<Check> {
    let check = |name, run| Check { name, group: GROUP, run };
    vec![check("wood moisture", moisture::check), check("advice", advice::check)]
}

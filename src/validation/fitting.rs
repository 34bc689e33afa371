//! Wood, and the advice itself.

mod advice;
mod moisture;

use super::{Accept, CheckFault, Checked, Checks, Row};
use crate::workshop::season::uptake::{bare_share, time_constant_s};

pub(super) const CHECKS: Checks =
    &[("wood moisture", moisture::check), ("season", season), ("advice", advice::check)];

/// Half of the way through a plane sheet at D t/L² = 0.049. Printed to two figures: 0.0005 of time is
/// 0.0026 of the way there.
const CRANK: &str =
    "Crank, The Mathematics of Diffusion (1956), plane sheet: half time 0.049 L²/D (from memory)";
const HALF_TIME: f64 = 0.049;
const HALF_ACCEPT: Accept = Accept::Within(0.003);

/// How wood follows its air: the plane sheet.
fn season() -> Result<Checked, CheckFault> {
    let half = bare_share(HALF_TIME, time_constant_s(1.0, 1.0));
    let what = "share of the way of a wooden sheet at its half time";
    let sheet = Row::compared(what, CRANK, "", 0.5, half, HALF_ACCEPT)
        .noted("the law only; how quick willow is was seen nowhere and is an assumption");
    Ok(vec![sheet].into())
}

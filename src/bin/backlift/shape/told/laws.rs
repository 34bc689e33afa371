//! The check against the Laws, in words.

use backlift::bat::shaped::ShapedBat;
use backlift::units::{Quantity, Units, spoken};

use crate::figure::{percent, plain};
use crate::paragraph::{paragraph, set_in};

/// What the Laws say of its sizes, its handle and its rubber, and whether the printed gauge passes.
pub fn told(bat: &ShapedBat, units: Units) -> String {
    let mut out = paragraph(&format!("Size check: {}", bat.law.edition)) + "\n";
    for it in &bat.law.breaches {
        let words = format!(
            "{} {}, limit {}",
            it.dimension.words(),
            spoken(Quantity::Length, it.measured_m, 0.0, units),
            spoken(Quantity::Length, it.limit_m, 0.0, units)
        );
        out += &(set_in(&words) + "\n");
    }
    if !bat.handle_share_allowed {
        out += &(set_in("handle longer than the share of the bat that is allowed") + "\n");
    }
    if let Some(share) = bat.rubber_share.filter(|_| !bat.rubber_share_allowed) {
        let of = match bat.law_type {
            Some(it) => format!("a bat of type {}", it.letter()),
            None => "bats of types A and B; if it is of type C or D, say so (law_type)".to_owned(),
        };
        let words = format!(
            "{} of the handle is rubber, more than is allowed: {} in {of}",
            percent(share, 0),
            percent(bat.rubber_share_limit, 0)
        );
        out += &(set_in(&words) + "\n");
    }
    let gauge = format!(
        "printed gauge, its opening from memory: {} {} to spare {} from the toe",
        if bat.gauge.passes() { "passes with" } else { "sticks, with" },
        plain(1e3 * bat.gauge.room_m, 1, "mm"),
        spoken(Quantity::Length, bat.gauge.tightest_from_toe_m, 0.0, units)
    );
    out + &set_in(&gauge) + "\n"
}

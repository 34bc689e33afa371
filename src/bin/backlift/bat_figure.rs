//! The figures of a bat, each described once: its name and unit in JSON, its words and digits in a table.

use backlift::bat::laws::Breach;
use backlift::uncertain::Uncertain;
use backlift::units::{Quantity, Units, decimals, spoken};
use serde_json::Value;

use crate::figure::{bare, measured, percent};
use crate::json::doubted;

/// How a figure is shown.
#[derive(Clone, Copy)]
pub enum How {
    /// In units of the trade, or SI.
    Of(Quantity),
    /// A number with so many digits at most; its unit stands with its words.
    Bare(usize),
    /// A part of one.
    Share,
}

/// Share from which a joint gives all it has, and its doubt says nothing more.
const AT_ITS_LIMIT: f64 = 0.9995;

pub struct BatFigure {
    name: &'static str,
    unit: &'static str,
    /// What it is called in a table.
    pub words: &'static str,
    /// How it is shown there.
    pub how: How,
}

const fn figure(
    name: &'static str,
    unit: &'static str,
    words: &'static str,
    how: How,
) -> BatFigure {
    BatFigure { name, unit, words, how }
}

pub const LENGTH: BatFigure = figure("length", "m", "length", How::Of(Quantity::Length));
pub const DEAD_WEIGHT: BatFigure = figure("mass", "kg", "dead weight", How::Of(Quantity::Mass));
pub const BALANCE: BatFigure =
    figure("balance", "m", "balance from the top", How::Of(Quantity::Length));
pub const SWING_MOMENT: BatFigure =
    figure("swing_moment", "kg_m2", "swing moment, kg m²", How::Bare(4));
pub const PICKUP_WEIGHT: BatFigure =
    figure("pickup_weight", "kg", "picks up like", How::Of(Quantity::Mass));
pub const HOLD_MOMENT: BatFigure = figure("hold_moment", "n_m", "hold moment, N m", How::Bare(2));
pub const TWIST_MOMENT: BatFigure =
    figure("twist_moment", "kg_m2", "twist moment, kg m²", How::Bare(5));
pub const PERCUSSION: BatFigure =
    figure("percussion", "m", "sweet spot from the top", How::Of(Quantity::Length));

impl How {
    /// With its doubt, for a table.
    pub fn shown(self, it: Uncertain, units: Units) -> String {
        match self {
            Self::Of(quantity) => measured(quantity, it, units),
            Self::Bare(most) => bare(it, most),
            Self::Share if it.value > AT_ITS_LIMIT => "at its limit".into(),
            Self::Share => {
                let digits = decimals(100.0 * it.sd, 1);
                format!("{} ± {}", percent(it.value, digits), percent(it.sd, digits))
            }
        }
    }
}

impl BatFigure {
    pub fn shown(&self, it: Uncertain, units: Units) -> String {
        self.how.shown(it, units)
    }

    /// With its doubt, for other programs.
    pub fn json(&self, it: Uncertain) -> Value {
        doubted(self.name, self.unit, it)
    }
}

/// "width 4.3 in, limit 4.25 in".
pub fn breach_words(it: &Breach, units: Units) -> String {
    let length = |m: f64| spoken(Quantity::Length, m, 0.0, units);
    format!("{} {}, limit {}", it.dimension.words(), length(it.measured_m), length(it.limit_m))
}

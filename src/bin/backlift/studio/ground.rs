//! The ground of the map: what is shown at each weight and balance, in the reader's units.

use backlift::fit::map::{Cell, Grid};
use backlift::fit::on_map::OnMap;
use backlift::innings::score::runs_words;
use backlift::questions::fitted::Fitted;
use backlift::units::{INCH_M, POUND_KG, Units};
use backlift::worth::expected::Worth;

use super::action::ColourBy;
use super::state::Studio;
use crate::figure::speed_unit;
use crate::fitting_files;

/// The map as numbers; across is dead weight, up is the balance point.
#[derive(Clone, Debug)]
pub struct Ground {
    /// Dead weights.
    pub x: Vec<f64>,
    /// Balance points from the top of the handle.
    pub y: Vec<f64>,
    /// What is shown, row by row; none where no bat can be made.
    pub value: Vec<Option<f64>>,
    /// Pickup weight, row by row, in the unit of `x`.
    pub pickup: Vec<Option<f64>>,
    /// What the value is, with its unit.
    pub label: String,
}

/// Weight and length of one unit on the map's axes, kg and m: ounces and inches, or grams and millimetres.
pub fn axis_units(units: Units) -> ([f64; 2], [&'static str; 2]) {
    match units {
        Units::Trade => ([POUND_KG / 16.0, INCH_M], ["oz", "in"]),
        Units::Si => ([0.001, 0.001], ["g", "mm"]),
    }
}

/// What is shown of a bat, and how much of it is one of the core's units.
fn value_words(by: ColourBy, fitted: &Fitted, units: Units) -> (String, f64) {
    let (unit, per_m_s) = speed_unit(units);
    let at = runs_words(fitted.fitting.setting().plan.runs);
    match by {
        ColourBy::Pull => (format!("bat speed of the pull at {at}, {unit}"), per_m_s),
        ColourBy::Worth => (fitting_files::value_label(fitted, unit), per_m_s),
        ColourBy::Gained => {
            (format!("expected ball speed gained over the first bat, {unit}"), per_m_s)
        }
        ColourBy::InTime => (format!("short balls met in time at {at}, of 100"), 100.0),
    }
}

impl Studio {
    /// A weighed bat on the map: simulated if it is one of the fitting's, else by the approximation; none outside what
    /// was swung.
    pub fn weighed_on_map(&self, bat: usize) -> Option<OnMap> {
        let fitting = &self.fitted()?.it.fitting;
        let weighed = self.derived.loaded.as_ref()?.bats.get(bat)?.bat.clone();
        match self.is_fit_stale() {
            true => fitting.on_map(weighed),
            false => fitting.weighed_on_map(bat, weighed),
        }
    }

    /// The map's ground; none before the first fitting.
    pub fn ground(&self) -> Option<Ground> {
        let fitted = self.fitted()?.it;
        let units = self.look.units;
        let picture = fitting_files::map_picture(fitted, units);
        let ([mass, length], _) = axis_units(units);
        let first = self.weighed_on_map(self.playback.bats[0]).map(|it| it.worth);
        let (label, scale) = value_words(self.colour_by, fitted, units);
        let shown = |it: &Cell| shown(fitted, self.colour_by, it, first.as_ref());
        let cells = Grid::of(fitted.fitting.map()).cells;
        let value = cells.iter().map(|it| Some(scale * shown((*it)?)?)).collect();
        Some(Ground {
            x: picture.mass_kg.iter().map(|it| it / mass).collect(),
            y: picture.balance_m.iter().map(|it| it / length).collect(),
            value,
            pickup: picture.pickup_weight_kg.iter().map(|it| it.map(|it| it / mass)).collect(),
            label,
        })
    }
}

/// What the map shows of a bat, SI; `first` is the bat it is held against.
fn shown(fitted: &Fitted, by: ColourBy, cell: &Cell, first: Option<&Worth>) -> Option<f64> {
    match by {
        ColourBy::Pull => fitted.fitting.pull_m_s(&cell.made.bat),
        ColourBy::Worth => Some(cell.worth.mean_m_s()),
        ColourBy::Gained => Some(first?.to(&cell.worth)[0]),
        ColourBy::InTime => Some(cell.worth.chance_in_time),
    }
}

//! The ground of the map: what is shown at each weight and balance, in the reader's units.

use backlift::fit::rule::Worth;
use backlift::innings::score::runs_words;
use backlift::units::{INCH_M, POUND_KG, Units};

use super::action::ColourBy;
use super::live::shown;
use super::state::Studio;
use crate::figure::speed_unit;
use crate::fit::{Fitted, pictures};

/// The map as numbers; across is dead weight, up is the balance point.
#[derive(Clone, Debug)]
pub struct Ground {
    /// Dead weights.
    pub x: Vec<f64>,
    /// Balance points from the top of the handle.
    pub y: Vec<f64>,
    /// What is shown, row by row; none where no bat can be made.
    pub value: Vec<Option<f64>>,
    /// Slack of pull and hook, row by row.
    pub slack: Vec<Option<f64>>,
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

/// What a bat's figure is shown in: its words, and how much of it is one of the core's units.
pub fn value_words(by: ColourBy, runs: f64, units: Units) -> (String, f64) {
    let (unit, per_m_s) = speed_unit(units);
    let at = runs_words(runs);
    match by {
        ColourBy::Pull => (format!("bat speed of the pull at {at}, {unit}"), per_m_s),
        ColourBy::Wrist => (format!("wrist share of the pull at {at}, %"), 100.0),
        ColourBy::BallSpeed => (format!("speed off the bat at {at}, {unit}"), per_m_s),
        ColourBy::Gained => {
            (format!("speed off the bat over the first bat's at {at}, {unit}"), per_m_s)
        }
        ColourBy::Reserve => (format!("time to spare for the short ball at {at}, %"), 100.0),
    }
}

impl Studio {
    /// The map's ground; none before the first fitting.
    pub fn ground(&self) -> Option<Ground> {
        let fitted = &*self.results.fitted.as_ref()?.it;
        let units = self.look.units;
        let picture = pictures::map_picture(fitted, units);
        let ([mass, length], _) = axis_units(units);
        let first = self.first_worth();
        let (label, scale) = value_words(self.colour_by, fitted.fitting.setting.plan.runs, units);
        let mut ground = Ground {
            x: picture.mass_kg.iter().map(|it| it / mass).collect(),
            y: picture.balance_m.iter().map(|it| it / length).collect(),
            value: Vec::new(),
            slack: Vec::new(),
            pickup: picture.pickup_weight_kg.iter().map(|it| it.map(|it| it / mass)).collect(),
            label,
        };
        for balance_m in &picture.balance_m {
            for mass_kg in &picture.mass_kg {
                let worth = cell(fitted, *mass_kg, *balance_m);
                let value = worth.and_then(|it| shown(fitted, self.colour_by, it, first.as_ref()));
                ground.value.push(value.map(|it| it * scale));
                ground.slack.push(worth.map(|it| it.slack));
            }
        }
        Some(ground)
    }

    /// What the first bat is worth at the end of the innings: simulated, if it is one of the fitting's.
    pub fn first_worth(&self) -> Option<Worth> {
        self.bat_worth(self.playback.bats[0])
    }

    /// The same of any bat: simulated where the fitting has it so, else by its approximation.
    pub fn bat_worth(&self, bat: usize) -> Option<Worth> {
        let fitted = self.results.fitted.as_ref()?;
        let known = fitted.it.fitting.given.get(bat).and_then(|it| it.worth.clone());
        let same = fitted.key == self.derived.fit_key;
        known.filter(|_| same).or_else(|| self.live_bat(bat))
    }
}

fn cell(fitted: &Fitted, mass_kg: f64, balance_m: f64) -> Option<&Worth> {
    let near = |a: f64, b: f64| (a - b).abs() < 1e-6;
    let found = |it: &&backlift::fit::fitting::Cell| {
        near(it.worth.bat.mass_kg(), mass_kg) && near(it.worth.bat.balance_m(), balance_m)
    };
    fitted.fitting.map.iter().find(found).map(|it| &it.worth)
}

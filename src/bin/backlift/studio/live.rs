//! Figures in the same picture: what the fitting's own approximation says of a bat, with its error.

use backlift::bat::Bat;
use backlift::fit::rule::Worth;

use super::action::ColourBy;
use super::state::Studio;
use crate::fit::Fitted;

impl Studio {
    /// A bat of the fitted size with this weight and balance and the usual spread of its mass.
    pub fn live(&self, mass_kg: f64, balance_m: f64) -> Option<Worth> {
        let fitted = &self.results.fitted.as_ref()?.it;
        let domain = &fitted.fitting.surrogate.domain;
        let [mass, balance, _] = domain.coded(mass_kg, balance_m, 1.0);
        let inside = |it: f64| (-1.0..=1.0).contains(&it);
        if !inside(mass) || !inside(balance) {
            return None;
        }
        Some(live_of(fitted, domain.bat([mass, balance, 0.0]).ok()?))
    }

    /// A weighed bat; none where it lies outside what was swung.
    pub fn live_bat(&self, bat: usize) -> Option<Worth> {
        let fitted = &self.results.fitted.as_ref()?.it;
        let bat = self.derived.loaded.as_ref()?.bats.get(bat)?.bat.clone();
        let domain = &fitted.fitting.surrogate.domain;
        let coded = domain.coded(bat.mass_kg(), bat.balance_m(), bat.swing_moment_kg_m2());
        let inside = coded.iter().all(|it| it.abs() <= 1.0);
        inside.then(|| live_of(fitted, bat))
    }
}

fn live_of(fitted: &Fitted, bat: Bat) -> Worth {
    let strokes = fitted.fitting.surrogate.at(&bat);
    Worth::new(&fitted.fitting.setting, bat, strokes)
}

/// What the map shows of a bat, SI; `first` is the bat it is held against.
pub fn shown(fitted: &Fitted, by: ColourBy, worth: &Worth, first: Option<&Worth>) -> Option<f64> {
    let pull = fitted.fitting.setting.batter.stroke_index("pull")?;
    let stroke = worth.strokes.get(pull)?;
    match by {
        ColourBy::Pull => Some(stroke.bat_speed_m_s),
        ColourBy::Wrist => Some(stroke.wrist_share),
        ColourBy::BallSpeed => Some(worth.goal_m_s),
        ColourBy::Gained => Some(worth.goal_m_s - first?.goal_m_s),
        ColourBy::Reserve => Some(worth.slack),
    }
}

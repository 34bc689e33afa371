//! Figures in the same picture: what a bat is worth in these hands, by the fitting's own approximation, with its
//! error; simulated where the fitting has it so.

use backlift::bat::Bat;
use backlift::fit::fitting::Fitting;
use backlift::worth::expected::Worth;

use super::state::Studio;

/// A bat on the map, in the hands of everybody this player may be.
#[derive(Clone, Debug)]
pub struct OnMap {
    /// The bat.
    pub bat: Bat,
    /// What it is worth.
    pub worth: Worth,
    /// Bat speed of the likeliest player's pull late in the innings, m/s; none without a pull.
    pub pull_m_s: Option<f64>,
    /// Largest error of that speed, as a share; nought where it was simulated.
    pub pull_error_share: f64,
    /// The same of the speeds and times in the worth; nought where the bat itself was swung.
    pub worth_error_share: f64,
}

impl Studio {
    /// The fitting on the screen, perhaps of an earlier text.
    fn fitting(&self) -> Option<&Fitting> {
        Some(&self.fitted()?.it.fitting)
    }

    /// A bat of the fitted size with this weight and balance, its mass spread as the standard bat's is; none outside
    /// what was swung.
    pub fn bat_at(&self, mass_kg: f64, balance_m: f64) -> Option<Bat> {
        let domain = &self.fitting()?.one.swings.domain;
        domain.plain_bat(mass_kg, balance_m).ok().filter(|it| domain.holds(it))
    }

    /// The same, judged.
    pub fn live(&self, mass_kg: f64, balance_m: f64) -> Option<OnMap> {
        Some(live_of(self.fitting()?, self.bat_at(mass_kg, balance_m)?))
    }

    /// Late in the innings, how long the likeliest player's stroke takes with a bat of the fitted size, s.
    pub fn live_time_s(&self, mass_kg: f64, balance_m: f64, stroke: &str) -> Option<f64> {
        let fitting = self.fitting()?;
        let stroke = fitting.setting().batter.stroke_index(stroke)?;
        let bat = self.bat_at(mass_kg, balance_m)?;
        Some(libm::exp(fitting.one.likely(&fitting.now.today, &bat, stroke)[0]))
    }

    /// A weighed bat: simulated if it is one of the fitting's, else by the approximation; none outside what was
    /// swung.
    pub fn weighed_on_map(&self, bat: usize) -> Option<OnMap> {
        let fitting = self.fitting()?;
        let weighed = self.derived.loaded.as_ref()?.bats.get(bat)?.bat.clone();
        if !self.is_fit_stale() {
            let worth = fitting.now.today.given.get(bat)?.worth.clone()?;
            let strokes = fitting.strokes.get(bat)?.as_ref();
            let pull = fitting.setting().batter.stroke_index("pull");
            let pull_m_s = strokes.zip(pull).and_then(|(it, n)| Some(it.get(n)?.bat_speed_m_s));
            return Some(OnMap {
                bat: weighed,
                worth,
                pull_m_s,
                pull_error_share: 0.0,
                worth_error_share: 0.0,
            });
        }
        fitting.one.swings.domain.holds(&weighed).then(|| live_of(fitting, weighed))
    }

    /// The bat to order, its pull simulated.
    pub fn to_order(&self) -> Option<OnMap> {
        let fitting = self.fitting()?;
        let it = &fitting.recommendation;
        let pull = fitting.setting().batter.stroke_index("pull");
        Some(OnMap {
            bat: it.made.bat.clone(),
            worth: it.worth.clone(),
            pull_m_s: pull.and_then(|n| Some(it.strokes.get(n)?.bat_speed_m_s)),
            pull_error_share: 0.0,
            worth_error_share: fitting.surrogate_error(),
        })
    }
}

fn live_of(fitting: &Fitting, bat: Bat) -> OnMap {
    let worth = fitting.one.worth(&fitting.now.today, &bat);
    let pull_m_s = live_pull_m_s(fitting, &bat);
    let error_share = fitting.surrogate_error();
    OnMap { bat, worth, pull_m_s, pull_error_share: error_share, worth_error_share: error_share }
}

/// Bat speed of the likeliest player's pull late in the innings with a bat of the fitted size, m/s.
pub fn live_pull_m_s(fitting: &Fitting, bat: &Bat) -> Option<f64> {
    let pull = fitting.setting().batter.stroke_index("pull")?;
    Some(libm::exp(fitting.one.likely(&fitting.now.today, bat, pull)[1]))
}

//! Any bat on the map at once: what it is worth in these hands, by the fitting's own approximation, with its error;
//! simulated where the fitting has it so.

use super::fitting::Fitting;
use crate::bat::Bat;
use crate::stroke::PULL;
use crate::worth::expected::Worth;

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

impl Fitting {
    /// A bat of the fitted size with this weight and balance, its mass spread as the standard bat's is; none outside
    /// what was swung.
    pub fn bat_at(&self, mass_kg: f64, balance_m: f64) -> Option<Bat> {
        let domain = &self.one.swings.domain;
        domain.plain_bat(mass_kg, balance_m).ok().filter(|it| domain.holds(it))
    }

    /// A bat by the approximation; none outside what was swung.
    pub fn on_map(&self, bat: Bat) -> Option<OnMap> {
        let error_share = self.surrogate_error();
        self.one.swings.domain.holds(&bat).then(|| OnMap {
            worth: self.one.worth(&self.now.today, &bat),
            pull_m_s: self.pull_m_s(&bat),
            pull_error_share: error_share,
            worth_error_share: error_share,
            bat,
        })
    }

    /// One of the weighed bats as it was simulated; none that was not.
    pub fn weighed_on_map(&self, place: usize, bat: Bat) -> Option<OnMap> {
        let worth = self.now.today.given.get(place)?.worth.clone()?;
        let strokes = self.strokes.get(place)?.as_ref();
        let pull = self.setting().batter.stroke_index(PULL);
        let pull_m_s = strokes.zip(pull).and_then(|(it, n)| Some(it.get(n)?.bat_speed_m_s()));
        Some(OnMap { bat, worth, pull_m_s, pull_error_share: 0.0, worth_error_share: 0.0 })
    }

    /// The bat to order, its pull simulated.
    pub fn ordered_on_map(&self) -> OnMap {
        let it = &self.recommendation;
        let pull = self.setting().batter.stroke_index(PULL);
        OnMap {
            bat: it.made.bat.clone(),
            worth: it.worth.clone(),
            pull_m_s: pull.and_then(|n| Some(it.strokes.get(n)?.bat_speed_m_s())),
            pull_error_share: 0.0,
            worth_error_share: self.surrogate_error(),
        }
    }

    /// Late in the innings, how long the likeliest player's stroke takes with a bat of the fitted size, s.
    pub fn stroke_time_s(&self, bat: &Bat, stroke: &str) -> Option<f64> {
        let stroke = self.setting().batter.stroke_index(stroke)?;
        Some(libm::exp(self.one.likely(&self.now.today, bat, stroke)[0]))
    }

    /// Bat speed of the likeliest player's pull late in the innings with a bat of the fitted size, m/s.
    pub fn pull_m_s(&self, bat: &Bat) -> Option<f64> {
        let pull = self.setting().batter.stroke_index(PULL)?;
        Some(libm::exp(self.one.likely(&self.now.today, bat, pull)[1]))
    }
}

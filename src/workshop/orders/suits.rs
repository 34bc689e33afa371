//! Whether a cleft suits an order, and how well.

use std::collections::BTreeMap;

use super::rack::RackCleft;
use super::willow::{Asked, Willow};
use crate::bat::blade::Blade;
use crate::bat::shape_fault::ShapeFault;
use crate::normal;
use crate::uncertain::Uncertain;

/// A cleft is kept for an order only if the blade comes out of it with this chance at the least: assumption, one thrown
/// away in five is too many.
pub const LEAST_CHANCE: f64 = 0.8;

/// A cleft that suits an order.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Suits {
    /// Density of the blade, kg/m³.
    pub density_kg_m3: Uncertain,
    /// Chance that it lies where the card can be made, weight and moisture of the cleft considered.
    pub chance: f64,
    /// Root mean square distance from the willow that suits the order best, kg/m³: what is made little of in all.
    pub off_kg_m3: f64,
}

/// Why a cleft does not suit an order.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Unfit {
    /// Its willow is too light, or too heavy.
    #[error("{:.0} ± {:.0} kg/m³, where {low_kg_m3:.0} to {high_kg_m3:.0} would do", density_kg_m3.value, density_kg_m3.sd)]
    Density {
        /// Its own, kg/m³.
        density_kg_m3: Uncertain,
        /// Lightest that would do, kg/m³.
        low_kg_m3: f64,
        /// Heaviest, kg/m³.
        high_kg_m3: f64,
    },
    /// The blade cannot be sawn out of it.
    #[error("too small: {0}")]
    Small(ShapeFault),
}

/// An order with the blades that were worked out for it.
pub struct Blades<'a> {
    asked: Asked<'a>,
    willow: &'a Willow,
    /// By density in whole kg/m³: a step moves its depth by less than anybody saws.
    known: BTreeMap<i64, Option<Blade>>,
}

impl<'a> Blades<'a> {
    /// Of an order that can be made out of this willow.
    pub fn of(asked: Asked<'a>, willow: &'a Willow) -> Self {
        Self { asked, willow, known: BTreeMap::new() }
    }

    /// Whether a cleft suits the order, or why it does not.
    pub fn judge(&mut self, it: &RackCleft) -> Result<Suits, Unfit> {
        let density_kg_m3 = it.density_kg_m3();
        let Uncertain { value, sd, .. } = density_kg_m3;
        let [low_kg_m3, high_kg_m3] = self.willow.density_kg_m3;
        let below = |limit: f64| normal::below((limit - value) / sd);
        let chance = below(high_kg_m3) - below(low_kg_m3);
        if chance < LEAST_CHANCE {
            return Err(Unfit::Density { density_kg_m3, low_kg_m3, high_kg_m3 });
        }
        if let Some(blade) = self.blade(value.clamp(low_kg_m3, high_kg_m3)) {
            it.cleft.holds(blade).map_err(Unfit::Small)?;
        }
        let off = value - self.willow.best_kg_m3;
        Ok(Suits { density_kg_m3, chance, off_kg_m3: libm::sqrt(off * off + sd * sd) })
    }

    fn blade(&mut self, density_kg_m3: f64) -> Option<&Blade> {
        let [low, high] = self.willow.density_kg_m3;
        let whole = (density_kg_m3.round() as i64).clamp(low.ceil() as i64, high.floor() as i64);
        let asked = self.asked;
        let found = self
            .known
            .entry(whole)
            .or_insert_with(|| asked.shape(whole as f64).ok().map(|it| it.blade));
        found.as_ref()
    }
}

//! The bats that can be made and are legal: weights and balance points of a size.

use crate::bat::family::Family;
use crate::bat::laws::Limits;
use crate::bat::makeable::{MadeBat, Wanted};
use crate::bat::sizes::Size;
use crate::measurement::plan::FitLimits;

/// Step of the map in weight and in balance point, kg and m.
pub const MAP_STEP: [f64; 2] = [0.015, 0.0025];
/// Step of the search round the best cell of the map, kg and m.
pub const FINE_STEP: [f64; 2] = [0.003, 0.001];
/// Room a maker needs on every side of a bat that is asked for, kg and m: assumption, no source.
const ROOM: [f64; 2] = [0.010, 0.002];
/// How far from the reference's weight and balance point bats are looked for.
const WEIGHT_SHARE: f64 = 0.16;
const BALANCE_M: f64 = 0.018;

/// A size and the bats of it.
#[derive(Clone, Debug)]
pub struct Range {
    /// Size.
    pub size: Size,
    /// Its family.
    pub family: Family,
    lightest_kg: f64,
    heaviest_kg: f64,
    middle: [f64; 2],
}

impl Range {
    /// The range of a size within the limits asked, on handles of this diameter over the grip: the one that the
    /// card will ask.
    pub fn new(size: &Size, limits: &FitLimits, handle_diameter_m: f64) -> Self {
        let shape = size.reference.with_handle_over_grip_m(handle_diameter_m);
        let reference = shape.mass_moments();
        let middle = [reference.mass_kg, reference.com_B().x];
        Self {
            size: size.clone(),
            family: Family::around(shape, size.craft),
            lightest_kg: limits.lightest_kg.unwrap_or(0.0).max(middle[0] * (1.0 - WEIGHT_SHARE)),
            heaviest_kg: limits
                .heaviest_kg
                .unwrap_or(f64::INFINITY)
                .min(middle[0] * (1.0 + WEIGHT_SHARE)),
            middle,
        }
    }

    /// The bat of this weight and balance, if it can be made with room to spare.
    pub fn bat(&self, mass_kg: f64, balance_m: f64, laws: &Limits) -> Option<MadeBat> {
        let wanted = |m: f64, b: f64| Wanted { mass_kg: m, balance_m: b, swell_from_toe_m: None };
        let clear = [(-1.0, 0.0), (1.0, 0.0), (0.0, -1.0), (0.0, 1.0)].iter().all(|(m, b)| {
            let near = wanted(mass_kg + m * ROOM[0], balance_m + b * ROOM[1]);
            self.family.objection(&near, laws).is_none()
        });
        if !clear || mass_kg < self.lightest_kg || mass_kg > self.heaviest_kg {
            return None;
        }
        self.family.make(&self.size.name, &wanted(mass_kg, balance_m), laws).ok()
    }

    /// All bats on the map's grid; both coordinates are whole multiples of the steps.
    pub fn grid(&self, laws: &Limits) -> Vec<MadeBat> {
        self.around(self.middle, [WEIGHT_SHARE * self.middle[0], BALANCE_M], MAP_STEP, laws)
    }

    /// Bats on the fine grid within one cell of the map round a bat.
    pub fn near(&self, mass_kg: f64, balance_m: f64, laws: &Limits) -> Vec<MadeBat> {
        self.around([mass_kg, balance_m], MAP_STEP, FINE_STEP, laws)
    }

    fn around(
        &self,
        middle: [f64; 2],
        reach: [f64; 2],
        step: [f64; 2],
        laws: &Limits,
    ) -> Vec<MadeBat> {
        let ticks = |axis: usize| {
            let first = ((middle[axis] - reach[axis]) / step[axis]).ceil() as i64;
            let last = ((middle[axis] + reach[axis]) / step[axis]).floor() as i64;
            (first..=last).map(move |i| i as f64 * step[axis])
        };
        ticks(0)
            .flat_map(|m| ticks(1).map(move |b| (m, b)))
            .filter_map(|(m, b)| self.bat(m, b, laws))
            .collect()
    }
}

/// Sizes to choose from: those named, or those that suit the stature, or the nearest to it.
pub fn suitable(sizes: &[Size], limits: &FitLimits, stature_m: f64) -> Vec<Size> {
    let named: Vec<Size> = sizes
        .iter()
        .filter(|size| limits.sizes.iter().any(|name| size.is_called(name)))
        .cloned()
        .collect();
    if !named.is_empty() {
        return named;
    }
    let suits: Vec<Size> =
        sizes.iter().filter(|size| size.suits_stature_m(stature_m)).cloned().collect();
    if !suits.is_empty() {
        return suits;
    }
    // Between the tables' bands: the size whose band is nearest.
    let distance = |size: &Size| {
        let low = size.stature_from_m.map_or(0.0, |from| (from - stature_m).max(0.0));
        let high = size.stature_to_m.map_or(0.0, |to| (stature_m - to).max(0.0));
        low.max(high)
    };
    sizes.iter().min_by(|a, b| distance(a).total_cmp(&distance(b))).cloned().into_iter().collect()
}

//! What the errors of the bench do to each stroke.

use super::swings_fault::SwingsFault;
use super::swung_bat::{SwungBat, SwungStroke, moved};
use super::ways::Ways;
use crate::bat::Bat;
use crate::bat::expected::bat_with_swing_moment;
use crate::bat::figures::WeighedBat;
use crate::calibration::limit::FIGURES;
use crate::calibration::response::triangle;
use crate::measurement::nets::PART_COUNT;
use rayon::prelude::*;

/// Steps of weight (kg), balance point (m) and swing moment (kg m²) at which the bench's errors are looked at.
const BENCH_STEPS: [f64; 3] = [0.03, 0.01, 0.008];

/// By axis and stroke: change of the figures for a kilogram, a metre and a kg m².
pub(super) type Slopes = [Vec<[f64; FIGURES]>; 3];

/// What weight, balance point and swing moment do to each stroke, by the base bat: in logarithms nearly the same for
/// any bat. `family` is that of any weighed bat; without one nothing was weighed.
pub(super) fn bench_slopes(
    ways: &Ways,
    base: &SwungBat,
    bat: &Bat,
    family: Option<&WeighedBat>,
) -> Result<Slopes, SwingsFault> {
    let none = vec![[0.0; FIGURES]; base.strokes.len()];
    let Some(family) = family else { return Ok([none.clone(), none.clone(), none]) };
    let middle = [bat.mass_kg(), bat.balance_m(), bat.swing_moment_kg_m2()];
    let slopes: Vec<Vec<[f64; FIGURES]>> = (0..3)
        .into_par_iter()
        .map(|axis| {
            let mut figures = middle;
            figures[axis] += BENCH_STEPS[axis];
            let [mass_kg, balance_m, swing] = figures;
            let moved_bat = bat_with_swing_moment(family.family(), "", mass_kg, balance_m, swing)
                .and_then(|it| {
                    Bat::new("", bat.length_m(), it.mass_kg(), it.com_B(), it.I_Com_B())
                });
            let Ok(moved_bat) = moved_bat else { return Ok(none.clone()) };
            let taken_up = ways.batter.take_up(&moved_bat)?;
            let by = |(swung, held): (&SwungStroke, _)| {
                let here = swung.response.at(&[0.0; PART_COUNT]);
                let near = swung.response.near(here.ln_time);
                moved(held, &here, near).map(|it| it / BENCH_STEPS[axis])
            };
            Ok(base.strokes.iter().zip(&taken_up.held).map(by).collect())
        })
        .collect::<Result<_, SwingsFault>>()?;
    let mut slopes = slopes.into_iter();
    Ok(core::array::from_fn(|_| slopes.next().unwrap_or_else(|| none.clone())))
}

impl SwungBat {
    /// With what the errors of the bench do to each stroke.
    pub(super) fn read_at_bench(mut self, slopes: &Slopes, weighed: &WeighedBat) -> Self {
        let errors = triangle(&weighed.covariance());
        for (k, stroke) in self.strokes.iter_mut().enumerate() {
            // A standard error of the bench moves all three figures together: a column of the triangle.
            stroke.bench = core::array::from_fn(|column| {
                core::array::from_fn(|f| {
                    (0..3).map(|axis| slopes[axis][k][f] * errors[axis][column]).sum()
                })
            });
        }
        self
    }
}

//! Grip strength by age, for whoever was not measured, and the reference every strength is scaled by.
//!
//! Source: Dodds et al. 2014, PLoS ONE 9:e113637, Table 2 (British studies), read second-hand; the rows
//! of 5 and 10 years and of girls of 15 are from memory (medium). Greatest of either hand, kgf.

use super::growth::{by_sex, interpolate, median_stature_m};
use crate::frames::STANDARD_GRAVITY_M_S2;
use crate::measurement::person::Sex;
use crate::uncertain::Uncertain;

/// Age in years; 10th, 50th, 90th centile in kgf.
type Row = [f64; 4];

const MALE: [Row; 18] = [
    [5.0, 6.0, 8.0, 10.0],
    [10.0, 12.0, 17.0, 22.0],
    [15.0, 21.0, 29.0, 38.0],
    [20.0, 30.0, 40.0, 52.0],
    [25.0, 36.0, 48.0, 61.0],
    [30.0, 38.0, 51.0, 64.0],
    [35.0, 39.0, 51.0, 64.0],
    [40.0, 38.0, 50.0, 63.0],
    [45.0, 36.0, 49.0, 61.0],
    [50.0, 35.0, 48.0, 60.0],
    [55.0, 34.0, 47.0, 59.0],
    [60.0, 33.0, 45.0, 56.0],
    [65.0, 31.0, 43.0, 53.0],
    [70.0, 29.0, 39.0, 49.0],
    [75.0, 26.0, 35.0, 45.0],
    [80.0, 23.0, 32.0, 42.0],
    [85.0, 19.0, 29.0, 38.0],
    [90.0, 16.0, 25.0, 33.0],
];

const FEMALE: [Row; 18] = [
    [5.0, 6.0, 8.0, 10.0],
    [10.0, 12.0, 16.0, 21.0],
    [15.0, 17.0, 24.0, 32.0],
    [20.0, 21.0, 28.0, 36.0],
    [25.0, 23.0, 30.0, 38.0],
    [30.0, 24.0, 31.0, 39.0],
    [35.0, 23.0, 31.0, 39.0],
    [40.0, 23.0, 31.0, 39.0],
    [45.0, 22.0, 30.0, 38.0],
    [50.0, 21.0, 29.0, 37.0],
    [55.0, 19.0, 28.0, 35.0],
    [60.0, 18.0, 27.0, 34.0],
    [65.0, 17.0, 25.0, 33.0],
    [70.0, 16.0, 24.0, 31.0],
    [75.0, 14.0, 21.0, 28.0],
    [80.0, 13.0, 19.0, 26.0],
    [85.0, 11.0, 17.0, 23.0],
    [90.0, 9.0, 14.0, 20.0],
];

/// Distance between the 10th and the 90th centile of a normal distribution, in standard deviations.
const P10_TO_P90_SD: f64 = 2.5631;

/// Exponent of grip on stature among people of one age and sex. Adults: men 0.8, women 1.0 (Steiber 2016,
/// PLoS ONE 11:e0163917, read second-hand; slopes computed over six age bands from 17 to 44: men 0.81 SD
/// 0.21, women 1.01 SD 0.07). Children 2.0: assumption, no source; the taller child of an age is also
/// further grown.
fn stature_exponent(sex: Sex, age_y: f64) -> f64 {
    let adult = by_sex(sex, 0.8, 1.0);
    2.0 + (adult - 2.0) * ((age_y - 15.0) / 5.0).clamp(0.0, 1.0)
}

/// Grip strength of someone of this sex, age and stature who was not measured, N, with the spread of
/// the centiles.
pub fn expected_grip_n(sex: Sex, age_y: f64, stature_m: f64) -> Uncertain {
    let [_, p10, p50, p90] = interpolate(by_sex(sex, &MALE, &FEMALE), age_y);
    let tall = libm::pow(stature_m / median_stature_m(sex, age_y), stature_exponent(sex, age_y));
    let newton = tall * STANDARD_GRAVITY_M_S2;
    Uncertain::estimated(p50 * newton, (p90 - p10) / P10_TO_P90_SD * newton)
}

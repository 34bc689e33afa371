//! One trial: a drawn bat, true to the last digit, measured at a drawn bench by the guide.

use super::bench::Hung;
use crate::bat::Bat;
use crate::bat::family::Family;
use crate::bat::figures::{WeighedBat, weigh};
use crate::bat::laws::Limits;
use crate::bat::sizes::Size;
use crate::comparison::difference::difference;
use crate::measurement::bench::{
    BALANCE_SD_M, BatReading, LENGTH_SD_M, PICKUP_AXIS_FROM_TOP_M, PIVOT_SD_M, PendulumReading,
    SCALE_SD_KG,
};
use crate::uncertain::Uncertain;
use rand::rngs::Xoshiro256PlusPlus;
use rand::{RngExt, SeedableRng};

const SEED: u64 = 20_261_125;
/// Half the width of a 90 % interval, in standard deviations.
const NINETY: f64 = 1.645;
/// χ² of 90 % with three degrees of freedom: the joint ellipsoid of weight, balance and swing moment.
const NINETY_OF_THREE: f64 = 6.251;

/// The draws of one trial, the same on every machine and on any number of threads.
struct Chance(Xoshiro256PlusPlus);

impl Chance {
    fn of(trial: u64) -> Self {
        Self(Xoshiro256PlusPlus::seed_from_u64(SEED.wrapping_mul(1_000_003) ^ trial))
    }

    /// Anywhere between two values, each as likely.
    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.0.random::<f64>()
    }

    /// The same on the logarithm: a half is as likely as a double.
    fn log_between(&mut self, low: f64, high: f64) -> f64 {
        libm::exp(self.between(libm::log(low), libm::log(high)))
    }

    /// Normal about nought (Box–Muller).
    fn normal(&mut self, sd: f64) -> f64 {
        let radius = libm::sqrt(-2.0 * libm::log(1.0 - self.0.random::<f64>()));
        sd * radius * libm::cos(self.between(0.0, std::f64::consts::TAU))
    }

    /// One of several.
    fn one_of<'a, T>(&mut self, all: &'a [T]) -> Option<&'a T> {
        all.get(self.0.random_range(0..all.len().max(1)))
    }
}

/// How the rods are carried and how many swings are timed.
pub(super) struct Setup {
    pub(super) swings: u32,
    /// Stiffness of both supports together, sideways, N/m.
    pub(super) stiffness_n_m: [f64; 2],
}

/// Which of the stated intervals held the truth, and how far the swing moment was off.
pub(super) struct Found {
    pub(super) held: [bool; 5],
    pub(super) swing_off: f64,
    pub(super) swing_stated: f64,
}

/// One bench: what all bats measured there share.
struct Bench {
    rolling_radius_m: f64,
    stiffness_n_m: f64,
    press_sd_s: f64,
}

/// Measures one drawn bat, and another on the same bench for the difference.
pub(super) fn measured(
    sizes: &[Size],
    limits: &Limits,
    setup: &Setup,
    trial: u64,
) -> Option<Found> {
    let mut chance = Chance::of(trial);
    let bench = Bench {
        // Needles of 2 to 5 mm; free to roll, or caught by string and splinters.
        rolling_radius_m: chance.between(0.001, 0.0025) * chance.between(0.0, 1.0),
        stiffness_n_m: chance.log_between(setup.stiffness_n_m[0], setup.stiffness_n_m[1]),
        // Of each press of the watch, by person; start and stop add to 0.07–0.21 s.
        press_sd_s: chance.log_between(0.05, 0.15),
    };
    let size = chance.one_of(sizes)?;
    let truths: [Bat; 2] = [drawn_bat(size, &mut chance)?, drawn_bat(size, &mut chance)?];
    let [first, second]: [Option<WeighedBat>; 2] = std::array::from_fn(|n| {
        weigh(&reading(&bench, size, &truths[n], setup, &mut chance)?, sizes, limits).ok()
    });
    let (it, other) = (first?, second?);
    let truth = &truths[0];
    let holds = |found: Uncertain, truth: f64| (found.value - truth).abs() < NINETY * found.sd;
    let off = nalgebra::Vector3::new(
        it.mass_kg.value - truth.mass_kg(),
        it.balance_m.value - truth.balance_m(),
        it.swing_moment_kg_m2.value - truth.swing_moment_kg_m2(),
    );
    let covariance = nalgebra::Matrix3::from_fn(|i, j| it.covariance()[i][j]);
    let distance = off.dot(&(covariance.try_inverse()? * off));
    let apart = difference(it.swing_moment_kg_m2, other.swing_moment_kg_m2);
    let truly_apart = truths[1].swing_moment_kg_m2() - truth.swing_moment_kg_m2();
    Some(Found {
        held: [
            holds(it.swing_moment_kg_m2, truth.swing_moment_kg_m2()),
            holds(it.hold_moment_n_m, truth.hold_moment_n_m()),
            holds(it.percussion_m, truth.percussion_m()),
            distance < NINETY_OF_THREE,
            (apart.value - truly_apart).abs() < NINETY * apart.sd,
        ],
        swing_off: off.z / truth.swing_moment_kg_m2(),
        swing_stated: it.swing_moment_kg_m2.relative_sd(),
    })
}

/// A bat of a size: reference weight ± 12 %, balance ± 15 mm, wood spread otherwise by ± 15 %.
fn drawn_bat(size: &Size, chance: &mut Chance) -> Option<Bat> {
    let family = Family::of(size);
    let middle = size.reference.mass_moments();
    let mass_kg = middle.mass_kg * chance.between(0.88, 1.12);
    let balance_m = middle.com_B().x + chance.between(-0.015, 0.015);
    let moments = family.assumed(mass_kg, balance_m, 0.0)?;
    let mut I_Com_B = moments.I_Com_B();
    let shift = I_Com_B.y_axis.y * chance.between(-0.15, 0.15);
    I_Com_B.y_axis.y += shift;
    I_Com_B.z_axis.z += shift;
    Bat::new("drawn", size.length_m(), moments.mass_kg, moments.com_B(), I_Com_B).ok()
}

/// What a person writes down: grams, millimetres, hundredths of a second.
fn reading(
    bench: &Bench,
    size: &Size,
    bat: &Bat,
    setup: &Setup,
    chance: &mut Chance,
) -> Option<BatReading> {
    let written = |value: f64, step: f64| libm::round(value / step) * step;
    // Rods bound where the tape says six inches.
    let rods_m = PICKUP_AXIS_FROM_TOP_M + chance.normal(PIVOT_SD_M);
    let hung = Hung {
        mass_kg: bat.mass_kg(),
        rod_to_com_m: bat.balance_m() - rods_m,
        com_moment_kg_m2: bat.I_Com_B().y_axis.y,
        rolling_radius_m: bench.rolling_radius_m,
        stiffness_n_m: bench.stiffness_n_m,
        decrement: chance.log_between(0.003, 0.03),
    };
    let release_rad = chance.between(3.0, 8.0).to_radians();
    let time_s = hung.time_for_s(setup.swings, release_rad)?
        + chance.normal(bench.press_sd_s)
        + chance.normal(bench.press_sd_s);
    let length_m = written(bat.length_m() + chance.normal(LENGTH_SD_M), 1e-3);
    let mass_kg = written(bat.mass_kg() + chance.normal(SCALE_SD_KG), 1e-3);
    let balance_m = written(bat.balance_m() + chance.normal(BALANCE_SD_M), 1e-3);
    let ten = PendulumReading::ten(written(time_s, 0.01));
    Some(BatReading {
        size: Some(size.name.clone()),
        length_m: Some(length_m),
        balance_m: Some(balance_m),
        pendulum: Some(PendulumReading { swings: setup.swings, ..ten }),
        ..BatReading::weighed("drawn", mass_kg)
    })
}
